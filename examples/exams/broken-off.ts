/**
 * An exam broken off half-way: a picker hired for the harvest, with an interpreter, who withdrew her
 * consent to be touched. What had been done is kept, what was withdrawn says so, and what nobody had
 * come to yet is left unsaid: it shows as a gap and never as normal. The person is invented.
 */
import {
  absent,
  conclude,
  type Exam,
  type ExamDraft,
  finishExamOrThrow,
  normal,
  notApplicable,
  notExamined,
  noted,
  partlyExamined,
  present,
  sensation,
  startExam,
  symptom,
} from '../../src/index.ts';
import * as clinic from './clinic.ts';
import { bothSides } from './zones.ts';

const start = startExam({
  id: 'RHS-2025-0909-14',
  subject: {
    identifiers: clinic.patientNumber('P-12990'),
    name: { family: 'Tavoularé', given: ['Ñusta'] },
    birthDate: '2001',
    gender: 'female',
  },
  examiners: [clinic.nurse],
  organization: clinic.clinic,
  encounter: { identifiers: clinic.visitNumber('V-25-0909-14'), class: 'field' },
  performed: { start: '2025-09-09T17:40:00+02:00', end: '2025-09-09T17:52:00+02:00' },
  recorded: '2025-09-09T18:20:00+02:00',
  indication: {
    text: 'Health check on hiring for the harvest',
    visit: 'first',
    urgency: 'routine',
  },
  consents: [
    { to: 'examine', answer: 'given', by: 'patient', at: '2025-09-09T17:40:00+02:00' },
    {
      to: 'touch',
      answer: 'withdrawn',
      by: 'patient',
      at: '2025-09-09T17:50:00+02:00',
      note: 'Through the interpreter: "No more hands on my face, please."',
    },
    { to: 'photograph', answer: 'refused', by: 'patient' },
    { to: 'share', answer: 'not-asked' },
  ],
  conditions: [
    { condition: 'light', value: 'dim', note: 'Shed next to the press, lamp & evening sun' },
    { condition: 'position', value: 'standing' },
    { condition: 'make-up', value: 'worn', regions: ['lid-upper', 'cheek-malar'] },
    { condition: 'head-covering', value: 'worn', regions: ['scalp-margin', 'pinna', 'neck'] },
    { condition: 'piercing', value: 'in-place', regions: ['nose-ala'], side: 'left' },
    { condition: 'interpreter', value: 'present', note: 'By telephone, line poor' },
    { condition: 'companion', value: 'other', note: 'A woman of the same crew' },
    { condition: 'identity', value: 'one-identifier' },
    { condition: 'prior-exam', value: 'none' },
    { condition: 'cooperation', value: 'limited' },
  ],
  instruments: [clinic.loupe, clinic.penlight, clinic.wisp],
  protocol: { id: 'full', version: '1.0.0' },
  history: [
    { action: 'create', by: 'nurse', at: '2025-09-09T17:40:00+02:00', version: 1 },
    { action: 'release', by: 'nurse', at: '2025-09-09T18:20:00+02:00', version: 2 },
  ],
});

function begun(draft: ExamDraft): ExamDraft {
  let exam = symptom(draft, 'sym-skin.itch', 'yes', {
    region: 'forehead',
    side: 'both',
    toldBy: 'interpreter',
    durationText: 'desde la poda <since the pruning>',
  });
  exam = symptom(exam, 'sym-general.fever', 'no', { toldBy: 'interpreter' });
  exam = symptom(exam, 'sym-general.headache', 'declined', { toldBy: 'interpreter' });
  exam = normal(exam, [{ region: 'general', methods: ['inspection'] }]);
  exam = present(exam, 'symmetry-rest.symmetric', { region: 'general', methods: ['inspection'] });
  exam = absent(exam, 'facial-swelling', { region: 'general', methods: ['inspection'] });
  for (const side of bothSides) {
    exam = partlyExamined(
      exam,
      { region: 'forehead', side, methods: ['inspection'] },
      { code: 'poor-light', text: 'Looked at without magnification only' },
    );
    exam = present(exam, 'erythema', { region: 'forehead', side, methods: ['inspection'] });
    exam = absent(exam, 'vesicles', { region: 'forehead', side, methods: ['inspection'] });
    exam = partlyExamined(
      exam,
      { region: 'cheek-malar', side, methods: ['inspection'] },
      'unable-make-up',
    );
    exam = notExamined(exam, { region: 'scalp-margin', side }, 'unable-hair');
    exam = normal(exam, [{ region: 'conjunctiva', side, methods: ['inspection'] }]);
    exam = absent(exam, 'conjunctival-injection', { region: 'conjunctiva', side });
  }
  exam = notApplicable(
    exam,
    { region: 'lid-margin-lower', side: 'left' },
    { code: 'structure-absent', text: 'Notch of the margin since birth, as she tells' },
  );
  return noted(
    exam,
    'Forehead red & scratched under the scarf on both sides; "polvo", dust, she says.',
    {
      region: 'forehead',
    },
  );
}

function brokenOff(draft: ExamDraft): ExamDraft {
  let exam = sensation(
    draft,
    'v1',
    'right',
    {
      'light-touch': 'normal',
      pinprick: { result: 'not-tested', reason: 'consent-withdrawn' },
    },
    { eyesClosed: true, instruments: ['wisp'] },
  );
  exam = sensation(exam, 'v1', 'left', {
    'light-touch': { result: 'unable', reason: 'consent-withdrawn' },
    pinprick: { result: 'not-tested', reason: 'consent-withdrawn' },
  });
  const withdrawn = {
    code: 'consent-withdrawn',
    text: 'Broken off at 17:50 at her wish, nothing more was touched',
  } as const;
  exam = notExamined(exam, { region: 'neck' }, withdrawn);
  exam = notExamined(exam, { region: 'jaw' }, withdrawn);
  exam = notExamined(exam, { region: 'salivary', side: 'both' }, withdrawn);
  exam = notExamined(
    exam,
    { region: 'nose' },
    { code: 'deferred', text: 'Next visit, if she wishes' },
  );
  return noted(exam, 'Calm & friendly at the end. No reason given, none asked for.');
}

const examined = [begun, brokenOff].reduce((draft, part) => part(draft), start);

export const exam: Exam = finishExamOrThrow(
  conclude(examined, {
    text:
      'Broken off by the patient before anything below the brow was touched. Forehead red & itchy on ' +
      'both sides. Nothing can be said of ears, hearing, face movements, neck or nodes.',
    concern: 'watch',
    worries: ['Most of the exam is missing'],
    plan: [
      {
        key: 'again',
        kind: 'review',
        text: 'Offer the rest in the health station, with an interpreter in the room',
        due: '2025-09-16',
        to: 'Nurse of the health station',
      },
      { key: 'scarf', kind: 'advice', text: 'Wash the scarf daily, cool water on the forehead' },
      {
        key: 'nothing',
        kind: 'nothing-further',
        text: 'No restriction for work from what was seen',
      },
    ],
    safetyNet: {
      text: 'Come at any time if the redness spreads or blisters come.',
      returnIf: ['Redness spreads', 'Blisters', 'Sore eye'],
      owner: 'Nurse of the health station',
    },
    told: [{ who: 'Patient', what: 'All of this, through the interpreter' }],
  }),
  'preliminary',
);
