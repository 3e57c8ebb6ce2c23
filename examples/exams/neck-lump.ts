/**
 * A harbour pilot with a lump on the right of the neck. Signed, and corrected a day later because
 * the two diameters had been written down the wrong way round; the correction says so.
 * The person is invented.
 */
import {
  abnormal,
  absent,
  conclude,
  type Exam,
  type ExamDraft,
  finishExamOrThrow,
  indeterminate,
  measured,
  moved,
  normal,
  notExamined,
  noted,
  present,
  scored,
  startExam,
  symptom,
  tested,
} from '../../src/index.ts';
import * as clinic from './clinic.ts';
import { bothSides, leftSkin, nodeLevels, rightSkin } from './zones.ts';

const start = startExam({
  id: 'RHS-2025-1112-05',
  subject: {
    identifiers: clinic.patientNumber('P-03318'),
    name: { family: 'Drømsgard', given: ['Håkon', 'Émile'] },
    birthDate: '1967-01-25',
    gender: 'male',
  },
  examiners: [clinic.physician, clinic.nurse],
  organization: clinic.clinic,
  encounter: { identifiers: clinic.visitNumber('V-25-1112-05'), class: 'ambulatory' },
  performed: { start: '2025-11-12T15:30:00+01:00', end: '2025-11-12T16:02:00+01:00' },
  recorded: '2025-11-12T16:15:00+01:00',
  indication: {
    text: 'Lump on the right of the neck, found while shaving',
    visit: 'first',
    urgency: 'urgent',
    question: 'Wait & see, or refer?',
    background: 'Smoker, 30 years. No cold, no tooth trouble <that he knows of>.',
  },
  consents: [
    { to: 'examine', answer: 'given', by: 'patient' },
    { to: 'touch', answer: 'given', by: 'patient' },
    { to: 'share', answer: 'given', by: 'patient', purpose: 'Referral' },
  ],
  conditions: [
    { condition: 'light', value: 'bright' },
    { condition: 'position', value: 'seated' },
    { condition: 'beard', value: 'none', note: 'Shaved this morning' },
    { condition: 'dentures', value: 'out' },
    { condition: 'hearing-aid', value: 'removed' },
    { condition: 'tobacco', value: 'yes' },
    { condition: 'alcohol', value: 'yes', note: '"A glass with dinner"' },
    { condition: 'radiotherapy', value: 'no' },
    { condition: 'prior-exam', value: 'available', note: 'Nothing felt in the neck in 2024' },
  ],
  instruments: [
    clinic.loupe,
    clinic.ruler,
    clinic.otoscope,
    clinic.headlight,
    clinic.speculum,
    clinic.stethoscope,
    clinic.water,
  ],
  protocol: { id: 'neck-lump', version: '1.0.0' },
  history: [
    { action: 'create', by: 'physician', at: '2025-11-12T15:30:00+01:00', version: 1 },
    { action: 'sign', by: 'physician', at: '2025-11-12T16:15:00+01:00', version: 2 },
    {
      action: 'correct',
      by: 'physician',
      at: '2025-11-13T08:20:00+01:00',
      reason: 'Long and short axis had been written down the wrong way round',
      version: 3,
      changed: ['lump-long', 'lump-short'],
    },
  ],
});

const lump = { region: 'ln-iia', side: 'right' } as const;

function complaints(draft: ExamDraft): ExamDraft {
  let exam = symptom(draft, 'sym-neck.lump', 'yes', {
    ...lump,
    key: 'lump-told',
    toldBy: 'patient',
    onset: '2025-10-06',
    duration: { value: '5', unit: 'wk' },
    course: 'worse',
    severity: 0,
  });
  for (const code of [
    'sym-general.fever',
    'sym-general.night-sweats',
    'sym-throat.hoarseness',
    'sym-throat.odynophagia',
    'sym-skin.non-healing-sore',
  ] as const) {
    exam = symptom(exam, code, 'no', { toldBy: 'patient' });
  }
  exam = symptom(exam, 'sym-ear.pain', 'yes', {
    region: 'eac',
    side: 'right',
    toldBy: 'patient',
    durationText: 'a couple of weeks, on and off',
    course: 'comes-and-goes',
  });
  exam = symptom(exam, 'sym-throat.dysphagia', 'unsure', {
    toldBy: 'patient',
    note: '"Bread, perhaps; not fish & potatoes."',
  });
  return symptom(exam, 'sym-general.weight-loss', 'yes', {
    toldBy: 'relative',
    note: 'His wife says: two holes in the belt; he says «mais non»',
  });
}

function nodes(draft: ExamDraft): ExamDraft {
  const methods = ['inspection', 'palpation'] as const;
  let exam = abnormal(draft, { ...lump, methods });
  exam = present(
    exam,
    'node-enlarged',
    { ...lump, methods, place: 'Below the angle of the jaw, in front of the muscle' },
    {
      key: 'lump',
      tracking: 'P-03318/neck-right',
      attributes: {
        'node-number': 'one',
        'node-consistency': 'firm',
        'node-mobility': 'restricted',
        'node-tender': false,
        'node-skin': 'normal',
      },
    },
  );
  const size = { about: 'lump', instruments: ['ruler'] };
  exam = measured(exam, 'neck-mass', lump, '22.0', 'mm', {
    key: 'lump-greatest',
    ...size,
    readings: ['22.0', '21.5', '22.5'],
    convention: 'mean',
  });
  exam = measured(exam, 'node-size', lump, '22.0', 'mm', {
    key: 'lump-long',
    ...size,
    conditions: ['long-axis'],
  });
  exam = measured(exam, 'node-size', lump, '18', 'mm', {
    key: 'lump-short',
    ...size,
    conditions: ['short-axis'],
    estimated: true,
  });
  for (const region of nodeLevels) {
    for (const side of bothSides) {
      if (region === 'ln-iia' && side === 'right') continue;
      exam = absent(exam, 'node-palpable', { region, side, methods: ['palpation'] });
    }
  }
  exam = absent(exam, 'node-palpable', { region: 'ln-ia', methods: ['palpation'] });
  exam = absent(exam, 'node-palpable', { region: 'ln-vi', methods: ['palpation'] });
  return noted(
    exam,
    'Firm as a hazelnut in its shell; moves side to side, hardly up & down.',
    lump,
  );
}

function neck(draft: ExamDraft): ExamDraft {
  const touch = ['inspection', 'palpation'] as const;
  let exam = normal(draft, [{ region: 'neck-midline', methods: touch }]);
  exam = present(exam, 'trachea.central', { region: 'neck-midline', methods: ['palpation'] });
  exam = absent(exam, 'stridor', { region: 'neck-midline' });
  for (const side of bothSides) {
    exam = normal(exam, [
      { region: 'parotid', side, methods: touch },
      { region: 'submandibular-gland', side, methods: touch },
      { region: 'triangle-posterior', side, methods: touch },
      { region: 'carotid', side, methods: ['inspection', 'palpation', 'auscultation'] },
    ]);
    exam = absent(
      exam,
      'carotid-bruit',
      { region: 'carotid', side, methods: ['auscultation'] },
      { instruments: ['stethoscope'] },
    );
  }
  exam = normal(exam, [{ region: 'triangle-anterior', side: 'left', methods: touch }]);
  exam = abnormal(exam, { region: 'triangle-anterior', side: 'right', methods: touch });
  exam = absent(exam, 'pulsatile-mass', {
    region: 'triangle-anterior',
    side: 'right',
    methods: ['palpation', 'auscultation'],
  });
  const thyroid = ['inspection', 'palpation', 'function-test'] as const;
  const drink = { instruments: ['water'] };
  exam = normal(
    exam,
    [
      { region: 'thyroid-lobe', side: 'right', methods: thyroid },
      { region: 'thyroid-lobe', side: 'left', methods: thyroid },
      { region: 'thyroid-isthmus', methods: thyroid },
    ],
    drink,
  );
  exam = scored(exam, 'goitre', '1992', 'goitre-0');
  exam = tested(exam, 'swallow-water', 'normal', drink);
  return moved(exam, 'cn12', 'central', {});
}

function rest(draft: ExamDraft): ExamDraft {
  let exam = normal(draft, [{ region: 'general', methods: ['inspection'] }]);
  exam = present(exam, 'voice.clear', { region: 'general' });
  exam = normal(exam, rightSkin(), { instruments: ['loupe'] });
  exam = normal(exam, leftSkin(), { instruments: ['loupe'] });
  exam = normal(exam, [
    { region: 'glabella', methods: ['inspection', 'inspection-magnified', 'palpation'] },
  ]);
  exam = absent(exam, 'non-healing-ulcer', { region: 'skin', methods: ['inspection'] });
  const inside = { instruments: ['headlight', 'speculum'] };
  for (const side of bothSides) {
    exam = normal(
      exam,
      [
        { region: 'eac', side, methods: ['otoscopy'] },
        { region: 'tm', side, methods: ['otoscopy'] },
      ],
      { instruments: ['otoscope'] },
    );
    exam = normal(
      exam,
      [{ region: 'vestibule', side, methods: ['inspection', 'anterior-rhinoscopy'] }],
      inside,
    );
    exam = present(exam, 'airflow.free', {
      region: 'nasal-airway',
      side,
      methods: ['function-test'],
    });
  }
  exam = notExamined(
    exam,
    { region: 'septum' },
    { code: 'equipment', text: 'Lamp of the headlight failed; "tomorrow there is a new one"' },
  );
  exam = indeterminate(exam, 'swallow-difficult', { region: 'swallow' });
  return noted(exam, 'Mouth & throat are not part of this exam; the ENT clinic is asked to look.', {
    region: 'swallow',
  });
}

const examined = [complaints, nodes, neck, rest].reduce((draft, part) => part(draft), start);

export const exam: Exam = finishExamOrThrow(
  conclude(examined, {
    text:
      'One firm node of restricted mobility, right level IIA, 22.0 × 18 mm, five weeks, growing; ' +
      'right earache with a usual eardrum. No other node felt. Lining of mouth, throat & larynx not seen here.',
    concern: 'refer-urgent',
    worries: ['Firm & growing for five weeks', 'Earache on the same side', 'Smoker'],
    codings: [
      {
        system: 'https://ravelport-health.example/codes',
        code: 'LUMP-NECK-R',
        display: 'Lump of the neck, right',
      },
    ],
    basedOn: ['lump-told', 'lump', 'lump-long', 'lump-short'],
    plan: [
      {
        key: 'ent',
        kind: 'referral',
        text: 'Lump of the neck for five weeks: please examine the lining of mouth and throat',
        urgency: 'urgent',
        to: 'Ear, nose and throat, neck lump clinic',
        service: 'ear-nose-throat',
        reasons: ['lump'],
      },
      {
        key: 'scan',
        kind: 'investigation',
        text: 'Ultrasound of the neck, with needle sample if the clinic wishes',
        urgency: 'urgent',
        reasons: ['lump'],
      },
      { key: 'smoke', kind: 'advice', text: 'Help to stop smoking offered; "after the harvest"' },
    ],
    safetyNet: {
      text: 'Noisy breathing or not being able to swallow: emergency number at once.',
      returnIf: ['Noisy breathing', 'Cannot swallow', 'Lump grows before the appointment'],
      reviewBy: '2025-11-26',
      owner: 'Nurse of the health station',
    },
    told: [
      { who: 'Patient and his wife', what: 'Why the referral is urgent; all questions answered' },
    ],
  }),
  'corrected',
);
