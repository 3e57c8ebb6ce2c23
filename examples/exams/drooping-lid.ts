/**
 * A vineyard foreman with a lid that droops and a pain in the neck: lids measured on both sides,
 * pupils in light and dark, sweat by side. Released as preliminary and sent on at once.
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
  moved,
  normal,
  notExamined,
  noted,
  present,
  startExam,
  symptom,
  unusable,
} from '../../src/index.ts';
import * as clinic from './clinic.ts';
import { bothSides, facialMovements, nodeLevels } from './zones.ts';

const start = startExam({
  id: 'RHS-2025-1021-03',
  subject: {
    identifiers: clinic.patientNumber('P-09555'),
    name: { family: 'Maróthy-Quay', given: ['Ilse'] },
    birthDate: '1978-06',
    gender: 'female',
  },
  examiners: [clinic.physician, clinic.nurse],
  organization: clinic.clinic,
  encounter: { identifiers: clinic.visitNumber('V-25-1021-03'), class: 'ambulatory' },
  performed: { start: '2025-10-21T08:35:00+02:00', end: '2025-10-21T08:58:00+02:00' },
  recorded: '2025-10-21T09:01:00+02:00',
  indication: {
    text: 'Left lid hangs since Sunday; pain on the left of the neck',
    visit: 'first',
    urgency: 'emergency',
    question: 'Tired eye, or something else?',
    background: 'Lifted barrels all Saturday. No eye operation, no drops.',
  },
  consents: [
    { to: 'examine', answer: 'given', by: 'patient' },
    { to: 'touch', answer: 'given', by: 'patient' },
    { to: 'photograph', answer: 'refused', by: 'patient', note: '"Not with this face."' },
    { to: 'share', answer: 'given', by: 'patient', purpose: 'Emergency department' },
  ],
  conditions: [
    { condition: 'light', value: 'room', note: 'Dimmed for the pupils in the dark' },
    { condition: 'position', value: 'seated' },
    { condition: 'make-up', value: 'none' },
    { condition: 'contact-lens', value: 'none' },
    { condition: 'eye-drops', value: 'no' },
    { condition: 'filler-or-toxin', value: 'no' },
    { condition: 'previous-trauma', value: 'not-asked' },
    { condition: 'anticoagulant', value: 'no' },
    { condition: 'prior-exam', value: 'not-available' },
  ],
  instruments: [clinic.loupe, clinic.ruler, clinic.penlight, clinic.stethoscope],
  protocol: { id: 'droopy-lid', version: '1.0.0' },
  history: [
    { action: 'create', by: 'nurse', at: '2025-10-21T08:35:00+02:00', version: 1 },
    { action: 'release', by: 'physician', at: '2025-10-21T09:01:00+02:00', version: 2 },
  ],
});

function complaints(draft: ExamDraft): ExamDraft {
  let exam = symptom(draft, 'sym-eye.droop', 'yes', {
    region: 'lid-upper',
    side: 'left',
    toldBy: 'patient',
    onset: '2025-10-19',
    duration: { value: '2', unit: 'd' },
    course: 'same',
  });
  exam = symptom(exam, 'sym-neck.pain', 'yes', {
    region: 'triangle-anterior',
    side: 'left',
    toldBy: 'patient',
    onset: '2025-10-18',
    severity: 6,
    note: '"From the jaw down, like a wire"; began <after> the barrels',
  });
  exam = symptom(exam, 'sym-general.headache', 'yes', { toldBy: 'patient', severity: 4 });
  for (const code of ['sym-eye.double-vision', 'sym-eye.visual-loss', 'sym-eye.pain'] as const) {
    exam = symptom(exam, code, 'no', { toldBy: 'patient' });
  }
  exam = symptom(exam, 'sym-motor.weakness', 'no', { toldBy: 'patient' });
  exam = symptom(exam, 'sym-throat.hoarseness', 'no', { toldBy: 'patient' });
  return symptom(exam, 'sym-general.weight-loss', 'not-asked');
}

/** The two sides apart: the figures differ. In the dark the pupils differ more than in light. */
const figures = {
  right: { mrd1: '4.5', mrd2: '5.0', pfh: '9.5', levator: '14.0', light: '3.5', dark: '6.0' },
  left: { mrd1: '2.5', mrd2: '4.5', pfh: '7.0', levator: '13.5', light: '3.0', dark: '4.5' },
} as const;

function lidsAndPupils(draft: ExamDraft): ExamDraft {
  const ruler = { instruments: ['ruler'] };
  let exam = draft;
  for (const side of bothSides) {
    const of = figures[side];
    const upper = { region: 'lid-upper', side } as const;
    const pupil = { region: 'pupil', side } as const;
    exam = measured(exam, 'mrd1', upper, of.mrd1, 'mm', {
      key: `mrd1-${side}`,
      ...ruler,
      conditions: ['primary-gaze', 'brow-fixed'],
    });
    exam = measured(exam, 'mrd2', { region: 'lid-lower', side }, of.mrd2, 'mm', ruler);
    exam = measured(exam, 'pfh', { region: 'eyes', side }, of.pfh, 'mm', ruler);
    exam = measured(exam, 'levator', upper, of.levator, 'mm', {
      ...ruler,
      conditions: ['brow-fixed'],
    });
    exam = measured(exam, 'pupil-diam', pupil, of.light, 'mm', {
      key: `pupil-light-${side}`,
      ...ruler,
      conditions: ['light', 'distance-gaze'],
    });
    exam = measured(exam, 'pupil-diam', pupil, of.dark, 'mm', {
      key: `pupil-dark-${side}`,
      ...ruler,
      conditions: ['dark', 'distance-gaze'],
    });
    exam = present(exam, 'pupil-equality.unequal', { ...pupil, methods: ['inspection'] });
    exam = present(exam, 'pupil-light.brisk', { ...pupil, methods: ['reflex'] });
    exam = absent(exam, 'lid-swelling', { ...upper, methods: ['inspection', 'palpation'] });
  }
  exam = measured(exam, 'lid-crease', { region: 'lid-upper', side: 'right' }, '8.0', 'mm', ruler);
  exam = unusable(exam, 'lid-crease', { region: 'lid-upper', side: 'left' }, 'mm', {
    code: 'reading-unusable',
    text: 'Blinked at each try',
  });
  const touch = ['inspection', 'palpation'] as const;
  exam = normal(exam, [
    { region: 'lid-upper', side: 'right', methods: touch },
    { region: 'globe', side: 'right', methods: touch },
    { region: 'globe', side: 'left', methods: touch },
    { region: 'lid-lower', side: 'right', methods: touch },
    { region: 'lid-lower', side: 'left', methods: touch },
  ]);
  const left = { region: 'lid-upper', side: 'left', methods: touch } as const;
  exam = abnormal(exam, left);
  exam = present(exam, 'lid-position.ptosis', left, { key: 'ptosis-left' });
  exam = abnormal(exam, { region: 'pupil', side: 'left', methods: ['inspection', 'reflex'] });
  exam = present(
    exam,
    'pupil-small',
    { region: 'pupil', side: 'left', methods: ['inspection'] },
    { key: 'pupil-small-left', instruments: ['penlight'] },
  );
  exam = present(exam, 'pupil-dilation-lag', {
    region: 'pupil',
    side: 'left',
    methods: ['inspection'],
  });
  exam = absent(exam, 'iris-lighter', { region: 'pupil', side: 'left' });
  return noted(
    exam,
    'Both pupils round & brisk; the left one slow to widen when the lamp goes out.',
    {
      region: 'pupil',
      side: 'both',
    },
  );
}

function faceAndNeck(draft: ExamDraft): ExamDraft {
  let exam = normal(draft, [{ region: 'general', methods: ['inspection'] }]);
  const brow = ['inspection', 'inspection-magnified', 'palpation'] as const;
  for (const side of bothSides) {
    exam = normal(exam, [{ region: 'eyebrow', side, methods: brow }], { instruments: ['loupe'] });
    for (const test of facialMovements) exam = moved(exam, test, 'normal', { side });
    exam = present(exam, 'sweating.usual', { region: 'forehead', side, methods: ['palpation'] });
  }
  const carotid = ['inspection', 'palpation', 'auscultation'] as const;
  exam = normal(exam, [{ region: 'carotid', side: 'right', methods: carotid }]);
  const left = { region: 'carotid', side: 'left', methods: carotid } as const;
  exam = abnormal(exam, left);
  exam = present(exam, 'tender', left, {
    key: 'carotid-tender',
    note: 'Along the vessel, not hard',
  });
  for (const side of bothSides) {
    exam = absent(
      exam,
      'carotid-bruit',
      { region: 'carotid', side, methods: ['auscultation'] },
      { instruments: ['stethoscope'] },
    );
    exam = absent(exam, 'scar', { region: 'neck-lat-skin', side, methods: ['inspection'] });
    for (const region of nodeLevels) {
      exam = absent(exam, 'node-palpable', { region, side, methods: ['palpation'] });
    }
  }
  exam = absent(exam, 'node-palpable', { region: 'ln-ia', methods: ['palpation'] });
  exam = absent(exam, 'node-palpable', { region: 'ln-vi', methods: ['palpation'] });
  exam = notExamined(
    exam,
    { region: 'neck-motion' },
    { code: 'safety', text: 'Not turned or bent with this pain' },
  );
  return noted(exam, 'Neck held still; «ça tire» on turning left. Not turned further.', {
    region: 'neck',
  });
}

const examined = [complaints, lidsAndPupils, faceAndNeck].reduce(
  (draft, part) => part(draft),
  start,
);

export const exam: Exam = finishExamOrThrow(
  conclude(examined, {
    text:
      'Left upper lid 2.0 mm lower than the right, left pupil smaller, more so in the dark (1.5 mm) ' +
      'than in light (0.5 mm); sweat alike on both sides. Pain & tenderness along the left carotid.',
    concern: 'emergency',
    worries: ['Lid, pupil and neck pain on one side, new within days'],
    basedOn: ['ptosis-left', 'pupil-small-left', 'pupil-dark-left', 'carotid-tender'],
    plan: [
      {
        key: 'emergency',
        kind: 'referral',
        text: 'Sent by ambulance: drooping lid with small pupil and neck pain, new since 2 days',
        urgency: 'stat',
        to: 'Emergency department, stroke-ready',
        service: 'emergency',
        reasons: ['ptosis-left', 'pupil-small-left', 'carotid-tender'],
      },
    ],
    told: [
      {
        who: 'Patient',
        what: 'That lid, pupil & neck pain together must be looked into today',
        at: '2025-10-21T08:57:00+02:00',
      },
      { who: 'Emergency department', what: 'By telephone, figures read out & repeated back' },
    ],
  }),
  'preliminary',
);
