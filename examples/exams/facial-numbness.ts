/**
 * A docker whose right cheek has been numb since a blow: sensation point by point, light touch and
 * pinprick apart, sides compared, movements by branch. One test declined, one ear full of wax.
 * The person is invented.
 */
import {
  abnormal,
  absent,
  comparedSides,
  conclude,
  type Exam,
  type ExamDraft,
  finishExamOrThrow,
  moved,
  normal,
  notExamined,
  noted,
  present,
  scored,
  sensation,
  startExam,
  symptom,
  tested,
} from '../../src/index.ts';
import * as clinic from './clinic.ts';
import {
  bothSides,
  facialMovements,
  leftSkin,
  nodeLevels,
  rightSkin,
  sensationPoints,
} from './zones.ts';

const start = startExam({
  id: 'RHS-2025-0917-11',
  subject: {
    identifiers: clinic.patientNumber('P-11206'),
    name: { family: 'Ostrevant', given: ['Pépin'] },
    birthDate: '1987-04-30',
    gender: 'male',
  },
  examiners: [clinic.physician],
  organization: clinic.clinic,
  encounter: { identifiers: clinic.visitNumber('V-25-0917-11'), class: 'ambulatory' },
  performed: { start: '2025-09-17T11:20:00+02:00', end: '2025-09-17T11:55:00+02:00' },
  recorded: '2025-09-17T12:05:00+02:00',
  indication: {
    text: 'Numb right cheek since a knock with a crate hook three weeks ago',
    visit: 'first',
    urgency: 'urgent',
    background: 'No eye complaint <at the time>; did not go to hospital ("no time & no need").',
  },
  consents: [
    { to: 'examine', answer: 'given', by: 'patient' },
    { to: 'touch', answer: 'given', by: 'patient' },
    { to: 'photograph', answer: 'not-asked' },
  ],
  conditions: [
    { condition: 'light', value: 'bright' },
    { condition: 'position', value: 'seated' },
    {
      condition: 'beard',
      value: 'worn',
      regions: ['chin', 'jawline'],
      note: 'Short, parted by hand',
    },
    { condition: 'previous-trauma', value: 'yes' },
    { condition: 'topical-anaesthetic', value: 'no' },
    { condition: 'wax', value: 'occluding', regions: ['eac'], side: 'left' },
    { condition: 'dentures', value: 'none' },
    { condition: 'prior-exam', value: 'none' },
  ],
  instruments: [clinic.loupe, clinic.wisp, clinic.neurotip, clinic.otoscope],
  protocol: { id: 'numbness', version: '1.0.0' },
  history: [
    { action: 'create', by: 'physician', at: '2025-09-17T11:20:00+02:00', version: 1 },
    { action: 'sign', by: 'physician', at: '2025-09-17T12:05:00+02:00', version: 2 },
  ],
});

function complaints(draft: ExamDraft): ExamDraft {
  const cheek = { region: 'cheek-malar', side: 'right' } as const;
  let exam = symptom(draft, 'sym-sensory.numbness', 'yes', {
    ...cheek,
    toldBy: 'patient',
    onset: '2025-08-27',
    duration: { value: '3', unit: 'wk' },
    course: 'same',
    trigger: 'Blow with the flat of a crate hook',
    note: '"Comme chez le dentiste": cheek, side of the nose & upper lip',
  });
  exam = symptom(exam, 'sym-sensory.tingling', 'yes', { ...cheek, toldBy: 'patient', severity: 3 });
  exam = symptom(exam, 'sym-sensory.shooting-pain', 'no', { toldBy: 'patient' });
  exam = symptom(exam, 'sym-eye.double-vision', 'no', { toldBy: 'patient' });
  exam = symptom(exam, 'sym-eye.visual-loss', 'no', { toldBy: 'patient' });
  exam = symptom(exam, 'sym-jaw.limited-opening', 'no', { toldBy: 'patient' });
  exam = symptom(exam, 'sym-jaw.bite-change', 'unsure', { toldBy: 'patient' });
  exam = symptom(exam, 'sym-motor.weakness', 'no', { toldBy: 'patient' });
  return symptom(exam, 'sym-general.headache', 'no', { toldBy: 'patient' });
}

function touchAndPin(draft: ExamDraft): ExamDraft {
  const eyesClosed = { eyesClosed: true, instruments: ['wisp', 'neurotip'] };
  let exam = draft;
  for (const point of sensationPoints) {
    if (point === 'v2' || point === 'v3') continue;
    for (const side of bothSides) {
      const both = { 'light-touch': 'normal', pinprick: 'normal' } as const;
      exam = sensation(exam, point, side, both, eyesClosed);
    }
    exam = comparedSides(exam, point, 'light-touch', 'equal');
    exam = comparedSides(exam, point, 'pinprick', 'equal');
  }
  exam = sensation(
    exam,
    'v2',
    'right',
    { 'light-touch': 'reduced', pinprick: 'reduced' },
    { key: 'v2-right', ...eyesClosed, note: 'Pin felt as blunt in 4 of 5; edge at the lower lid' },
  );
  exam = sensation(exam, 'v2', 'left', { 'light-touch': 'normal', pinprick: 'normal' }, eyesClosed);
  exam = comparedSides(exam, 'v2', 'light-touch', 'right-less', { key: 'v2-touch-compared' });
  exam = comparedSides(exam, 'v2', 'pinprick', 'right-less', { key: 'v2-pin-compared' });
  for (const side of bothSides) {
    exam = sensation(
      exam,
      'v3',
      side,
      {
        'light-touch': 'normal',
        pinprick: {
          result: 'not-tested',
          reason: { code: 'declined', text: 'Did not want the pin in his beard' },
        },
      },
      { eyesClosed: true, instruments: ['wisp'] },
    );
  }
  exam = comparedSides(exam, 'v3', 'light-touch', 'equal');
  exam = comparedSides(exam, 'v3', 'pinprick', 'not-compared', { reason: 'declined' });
  for (const side of bothSides) {
    exam = tested(exam, 'corneal-reflex', 'present', { side, instruments: ['wisp'] });
  }
  return exam;
}

function movements(draft: ExamDraft): ExamDraft {
  let exam = draft;
  for (const side of bothSides) {
    for (const test of facialMovements) exam = moved(exam, test, 'normal', { side });
    exam = moved(exam, 'cn5-masseter', 'normal', { side });
    exam = scored(exam, 'hb', '1985', 'hb-1', { side });
    exam = normal(exam, [
      { region: 'masseter', side, methods: ['inspection', 'palpation', 'motor-test'] },
      { region: 'temporalis', side, methods: ['inspection', 'palpation', 'motor-test'] },
    ]);
  }
  return moved(exam, 'cn5-open', 'straight', {});
}

function skinEarsAndNodes(draft: ExamDraft): ExamDraft {
  const methods = ['inspection', 'inspection-magnified', 'palpation'] as const;
  const seen = { instruments: ['loupe'] };
  let exam = normal(draft, rightSkin(['cheek-malar']), seen);
  exam = normal(exam, leftSkin(), seen);
  exam = normal(exam, [{ region: 'glabella', methods }], seen);
  const cheek = { region: 'cheek-malar', side: 'right', methods } as const;
  exam = abnormal(exam, cheek, seen);
  exam = present(exam, 'swelling', cheek, { key: 'cheek-swollen', note: 'Slight, over the bone' });
  exam = present(exam, 'skin-tender', cheek);
  exam = absent(exam, 'emphysema-skin', cheek);
  exam = absent(exam, 'vesicles', { region: 'skin', methods: ['inspection'] });
  const otoscopy = { methods: ['otoscopy'] } as const;
  const scope = { instruments: ['otoscope'] };
  exam = normal(
    exam,
    [
      { region: 'eac', side: 'right', ...otoscopy },
      { region: 'tm', side: 'right', ...otoscopy },
    ],
    scope,
  );
  const leftCanal = { region: 'eac', side: 'left', ...otoscopy } as const;
  exam = abnormal(exam, leftCanal, scope);
  exam = present(exam, 'eac-wax-amount.occluding', leftCanal, scope);
  exam = notExamined(exam, { region: 'tm', side: 'left' }, 'unable-wax');
  for (const region of nodeLevels) {
    for (const side of bothSides) {
      exam = absent(exam, 'node-palpable', { region, side, methods: ['palpation'] });
    }
  }
  exam = absent(exam, 'node-palpable', { region: 'ln-ia', methods: ['palpation'] });
  exam = absent(exam, 'node-palpable', { region: 'ln-vi', methods: ['palpation'] });
  return noted(
    exam,
    'Rim of the right orbit: no step felt; tender & a little full. Left side free.',
    {
      region: 'cheek-malar',
      side: 'right',
    },
  );
}

const parts = [complaints, touchAndPin, movements, skinEarsAndNodes];
const examined = parts.reduce((draft, part) => part(draft), start);

export const exam: Exam = finishExamOrThrow(
  conclude(examined, {
    text:
      'Light touch & pinprick reduced over the right cheek since a blow three weeks ago; forehead, ' +
      'chin and angle of the jaw alike on both sides. Facial and chewing muscles strong. ' +
      'Cheek slightly swollen & tender. Pinprick of the chin declined, left eardrum not seen (wax).',
    concern: 'refer-urgent',
    worries: ['Numbness after a blow, never imaged'],
    basedOn: ['v2-right', 'v2-touch-compared', 'v2-pin-compared', 'cheek-swollen'],
    plan: [
      {
        key: 'imaging',
        kind: 'investigation',
        text: 'Imaging of the right cheek bone and floor of the orbit, as the unit decides',
        urgency: 'urgent',
        reasons: ['v2-right', 'cheek-swollen'],
      },
      {
        key: 'jaw-unit',
        kind: 'referral',
        text: 'Numb right cheek three weeks after a blow; please assess',
        urgency: 'urgent',
        to: 'Jaw and face surgery, injury clinic',
        service: 'oral-maxillofacial',
        reasons: ['v2-right', 'cheek-swollen'],
      },
      {
        key: 'wax',
        kind: 'treatment',
        text: 'Softening drops for the left ear, then look again',
        due: '2025-10-01',
      },
    ],
    safetyNet: {
      text: 'Straight to the emergency department with any change of sight.',
      returnIf: ['Double vision', 'Loss of sight', 'Weak face', 'Rash on the numb cheek'],
      reviewBy: '2025-10-01',
      owner: 'Occupational physician of the health station',
    },
    told: [{ who: 'Patient', what: 'Why a picture of the bone is needed even three weeks on' }],
  }),
  'final',
);
