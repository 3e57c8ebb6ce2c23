/**
 * A vineyard worker with a mark on the right cheek that has grown: skin protocol, a checklist score,
 * an older mole taken over from the last exam and looked at again, one zone hidden by a dressing.
 * The person is invented.
 */
import {
  abnormal,
  absent,
  conclude,
  type Exam,
  type ExamDraft,
  finishExamOrThrow,
  measured,
  normal,
  notExamined,
  noted,
  pictured,
  present,
  scored,
  startExam,
  symptom,
} from '../../src/index.ts';
import * as clinic from './clinic.ts';
import { bothSides, leftSkin, nodeLevels, rightSkin } from './zones.ts';

const start = startExam({
  id: 'RHS-2025-0604-02',
  subject: {
    identifiers: clinic.patientNumber('P-07731'),
    name: { family: 'Quelborn', given: ['Amaïs'] },
    birthDate: '1963-12-02',
    gender: 'female',
  },
  examiners: [clinic.physician],
  organization: clinic.clinic,
  encounter: { identifiers: clinic.visitNumber('V-25-0604-02'), class: 'ambulatory' },
  performed: { start: '2025-06-04T14:10:00+02:00', end: '2025-06-04T14:41:00+02:00' },
  recorded: '2025-06-04T14:50:00+02:00',
  indication: {
    text: 'Brown mark on the right cheek, "bigger since the pruning"',
    visit: 'follow-up',
    urgency: 'urgent',
    question: 'Harmless, or to the skin clinic?',
    background: 'Forty summers in the rows; mother had «une tache» removed.',
  },
  consents: [
    { to: 'examine', answer: 'given', by: 'patient' },
    { to: 'touch', answer: 'given', by: 'patient' },
    { to: 'photograph', answer: 'given', by: 'patient', purpose: 'To go with the referral' },
    { to: 'share', answer: 'given', by: 'patient', purpose: 'Referral to the skin clinic' },
  ],
  conditions: [
    { condition: 'light', value: 'bright' },
    { condition: 'position', value: 'supine' },
    { condition: 'make-up', value: 'removed', note: 'Tinted sun cream wiped off before' },
    { condition: 'hair', value: 'moved-aside', regions: ['scalp-margin', 'temple'] },
    { condition: 'dressing', value: 'in-place', regions: ['jaw-angle'], side: 'left' },
    { condition: 'anticoagulant', value: 'yes', note: 'Since 2022, for the heart' },
    { condition: 'immunosuppression', value: 'no' },
    { condition: 'skin-cancer', value: 'no' },
    { condition: 'sun-exposure', value: 'yes' },
    { condition: 'prior-exam', value: 'available' },
    { condition: 'chaperone', value: 'present' },
  ],
  instruments: [clinic.loupe, clinic.dermatoscope, clinic.ruler, clinic.camera],
  protocol: { id: 'skin-lesion', version: '1.0.0' },
  history: [
    { action: 'create', by: 'physician', at: '2025-06-04T14:10:00+02:00', version: 1 },
    { action: 'sign', by: 'physician', at: '2025-06-04T14:50:00+02:00', version: 2 },
  ],
});

const methods = ['inspection', 'inspection-magnified', 'palpation'] as const;
const cheek = { region: 'cheek-malar', side: 'right' } as const;

function complaints(draft: ExamDraft): ExamDraft {
  let exam = symptom(draft, 'sym-skin.changing-lesion', 'yes', {
    ...cheek,
    toldBy: 'patient',
    onset: '2025-02',
    duration: { value: '4', unit: 'mo' },
    course: 'worse',
    note: '"It was a freckle, now it has a coast & islands."',
  });
  exam = symptom(exam, 'sym-skin.itch', 'yes', { ...cheek, toldBy: 'patient', severity: 2 });
  exam = symptom(exam, 'sym-skin.bleeding', 'no', { ...cheek, toldBy: 'patient' });
  exam = symptom(exam, 'sym-skin.pain', 'no', { ...cheek, toldBy: 'patient' });
  exam = symptom(exam, 'sym-general.weight-loss', 'no', { toldBy: 'patient' });
  return symptom(exam, 'sym-neck.lump', 'no', { toldBy: 'patient' });
}

function lesion(draft: ExamDraft): ExamDraft {
  const seen = { instruments: ['dermatoscope', 'loupe'] };
  let exam = abnormal(draft, { ...cheek, methods }, seen);
  exam = present(
    exam,
    'suspicious-pigmented-lesion',
    { ...cheek, methods, place: '18 mm below the outer canthus, 31 mm in front of the tragus' },
    {
      key: 'cheek-lesion',
      tracking: 'P-07731/cheek-right',
      ...seen,
      attributes: {
        'lesion-type': 'plaque',
        'lesion-size-rule': { value: '5', unit: 'mm' },
        'lesion-border': 'irregular',
        'lesion-colour': 'variegated',
        'lesion-surface': 'smooth',
        'lesion-tender': false,
        'lesion-fixed': 'mobile',
        'lesion-symptom': ['itch', 'change'],
      },
      note: 'Brown with a blue-black corner <below, towards the nose>',
    },
  );
  const ruler = { about: 'cheek-lesion', instruments: ['ruler'] };
  exam = measured(exam, 'lesion-max', cheek, '8.5', 'mm', {
    ...ruler,
    readings: ['8.5', '8.5', '9.0'],
    convention: 'median',
  });
  exam = measured(exam, 'lesion-perp', cheek, '6.0', 'mm', ruler);
  exam = measured(exam, 'lesion-elev', cheek, '0.5', 'mm', { ...ruler, estimated: true });
  exam = scored(exam, '7pcl', 'weighted-2013', 8, {
    ...cheek,
    about: 'cheek-lesion',
    items: [
      { item: '7pcl-change-in-size', value: true },
      { item: '7pcl-irregular-shape', value: true },
      { item: '7pcl-irregular-colour', value: true },
      { item: '7pcl-diameter', value: true },
      { item: '7pcl-inflammation', value: false },
      { item: '7pcl-oozing-crusting', value: false },
      { item: '7pcl-change-in-sensation', value: true },
    ],
  });
  exam = scored(exam, 'abcde', '2004', 5, { ...cheek, about: 'cheek-lesion' });
  return pictured(exam, {
    ...cheek,
    title: 'Right cheek through the dermatoscope',
    contentType: 'image/jpeg',
    url: clinic.picture('RHS-2025-0604-02-1.jpg'),
    scaleBar: true,
    consent: 'given',
    purpose: 'To go with the referral',
    about: ['cheek-lesion'],
    instruments: ['camera', 'dermatoscope'],
  });
}

function otherSkin(draft: ExamDraft): ExamDraft {
  const seen = { instruments: ['loupe'] };
  let exam = normal(draft, rightSkin(['cheek-malar', 'forehead']), seen);
  exam = normal(exam, leftSkin(['jaw-angle', 'neck-lat-skin']), seen);
  exam = normal(exam, [{ region: 'glabella', methods }], seen);
  const forehead = { region: 'forehead', side: 'right', methods } as const;
  exam = abnormal(exam, forehead, seen);
  exam = present(exam, 'actinic-keratosis', forehead, {
    key: 'forehead-rough',
    certainty: 'suspected',
    tracking: 'P-07731/forehead-right',
    attributes: {
      'lesion-type': 'patch',
      'lesion-secondary': 'scale',
      'lesion-surface': 'rough',
      'lesion-colour': 'red',
      'lesion-tender': false,
    },
  });
  exam = measured(exam, 'lesion-max', { region: 'forehead', side: 'right' }, '5.0', 'mm', {
    about: 'forehead-rough',
    instruments: ['ruler'],
  });
  exam = notExamined(
    exam,
    { region: 'jaw-angle', side: 'left' },
    { code: 'unable-dressing', text: 'Dressing over a vine-wire scratch of yesterday' },
  );
  const neckSide = { region: 'neck-lat-skin', side: 'left', methods } as const;
  exam = abnormal(exam, neckSide, seen);
  exam = present(exam, 'naevus', neckSide, {
    key: 'neck-mole',
    tracking: 'P-07731/neck-left',
    carried: {
      exam: 'RHS-2024-0529-04',
      statement: 'neck-mole',
      at: '2024-05-29T09:20:00+02:00',
      confirmed: true,
    },
    attributes: {
      'lesion-type': 'papule',
      'lesion-border': 'well-defined',
      'lesion-colour': 'brown',
      'lesion-surface': 'smooth',
    },
    note: 'Looked at again today: as described in 2024',
  });
  for (const sign of ['non-healing-ulcer', 'vesicles', 'spreading-erythema'] as const) {
    exam = absent(
      exam,
      sign,
      { region: 'skin', methods: ['inspection'] },
      { except: [{ region: 'jaw-angle', side: 'left' }] },
    );
  }
  for (const side of bothSides) {
    exam = normal(exam, [
      { region: 'pinna', side, methods: ['inspection', 'palpation'] },
      { region: 'lid-upper', side, methods: ['inspection', 'palpation'] },
      { region: 'lid-lower', side, methods: ['inspection', 'palpation'] },
    ]);
  }
  exam = scored(exam, 'fitz', '1988', 'fitz-2');
  return noted(exam, 'Skin freckled & dry throughout. Nape: collar line «brûlée» but smooth.', {
    region: 'skin',
  });
}

function nodes(draft: ExamDraft): ExamDraft {
  let exam = draft;
  for (const region of nodeLevels) {
    for (const side of bothSides) {
      exam = absent(exam, 'node-palpable', { region, side, methods: ['palpation'] });
    }
  }
  exam = absent(exam, 'node-palpable', { region: 'ln-ia', methods: ['palpation'] });
  return absent(exam, 'node-palpable', { region: 'ln-vi', methods: ['palpation'] });
}

const examined = [complaints, lesion, otherSkin, nodes].reduce((draft, part) => part(draft), start);

export const exam: Exam = finishExamOrThrow(
  conclude(examined, {
    text:
      'Pigmented mark of the right cheek, 8.5 × 6.0 mm, grown in four months, irregular in shape ' +
      '& colour. No node felt. Rough patch of the right forehead, thought to be sun damage.',
    concern: 'refer-urgent',
    worries: ['Growth within months', 'Several colours', 'Itch'],
    basedOn: ['cheek-lesion', 'forehead-rough'],
    plan: [
      {
        key: 'skin-clinic',
        kind: 'referral',
        text: 'Please see and treat: mark of the right cheek, and the rough patch of the forehead',
        urgency: 'urgent',
        to: 'Skin clinic, suspected skin cancer pathway',
        service: 'dermatology',
        reasons: ['cheek-lesion', 'forehead-rough'],
        guideline: 'Weighted 7-point checklist, as the local pathway asks',
      },
      {
        key: 'call',
        kind: 'review',
        text: 'Ring her if no date has come',
        due: '2025-06-13',
        to: 'Nurse of the health station',
      },
      { key: 'shade', kind: 'advice', text: 'Hat & long sleeves; leave the mark alone' },
    ],
    safetyNet: {
      text: 'Do not wait for the appointment if it bleeds or a lump comes up in the neck.',
      returnIf: ['Bleeding that does not stop', 'A lump below the jaw or in the neck'],
      reviewBy: '2025-06-13',
      owner: 'Occupational physician of the health station',
    },
    told: [
      { who: 'Patient', what: 'That it must be looked at soon, & why; not that it is cancer' },
      { who: 'Daughter', what: 'The same, at the wish of the patient' },
    ],
  }),
  'final',
);
