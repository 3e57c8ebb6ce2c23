import {
  abnormal,
  absent,
  comparedSides,
  conclude,
  type Exam,
  type ExamDraft,
  finishExam,
  IssueError,
  indeterminate,
  measured,
  moved,
  normal,
  notExamined,
  noted,
  partlyExamined,
  pictured,
  present,
  scored,
  sensation,
  startExam,
  symptom,
} from '../../src/index.ts';

/**
 * Invented exams of harbour workers, short, so that many mutants of their bundles can be looked at.
 * Between them they have every kind of statement and every type of resource that the library writes.
 */
export const faultsExams: readonly { readonly name: string; readonly exam: Exam }[] = [
  { name: 'skin', exam: skinExam() },
  { name: 'nerves', exam: nerveExam() },
  { name: 'neck', exam: neckExam() },
];

function skinExam(): Exam {
  let draft = startExam({
    id: 'harbour-check-2031-0417',
    subject: {
      identifiers: [
        { system: 'https://harbour-clinic.example/patients', value: 'P-0417', use: 'official' },
      ],
      name: { family: 'Tern', given: ['Ada', 'Wil'], prefix: 'Ms' },
      birthDate: '1979-04-02',
      gender: 'female',
    },
    examiners: [
      {
        key: 'doctor',
        identifiers: [{ system: 'https://harbour-clinic.example/staff', value: 'S-11' }],
        name: { family: 'Quay', given: ['Mori'] },
        role: 'occupational physician',
      },
    ],
    organization: {
      identifiers: [{ system: 'https://harbour-clinic.example/sites', value: 'H-1' }],
      name: 'Harbour clinic',
    },
    encounter: {
      identifiers: [{ system: 'https://harbour-clinic.example/visits', value: 'V-9' }],
      class: 'ambulatory',
    },
    performed: { start: '2031-04-17T09:30:00+02:00', end: '2031-04-17T10:05:00+02:00' },
    recorded: '2031-04-17T10:20:00+02:00',
    conditions: [{ condition: 'light', value: 'bright' }],
    instruments: [
      { key: 'dermatoscope', type: 'dermatoscope', magnification: '10', detail: 'polarised' },
    ],
    protocol: { id: 'skin-lesion', version: '1.0.0' },
    history: [
      { action: 'create', by: 'doctor', at: '2031-04-17T10:10:00+02:00', version: 1 },
      { action: 'sign', by: 'doctor', at: '2031-04-17T10:20:00+02:00', version: 2 },
    ],
  });
  const cheek = { region: 'cheek-malar', side: 'left' } as const;
  draft = present(
    draft,
    'pigmented-lesion',
    { ...cheek, methods: ['inspection', 'inspection-magnified'] },
    {
      key: 'mole',
      tracking: 'mole-1',
      instruments: ['dermatoscope'],
      attributes: { 'lesion-type': 'macule', 'lesion-border': 'irregular' },
      note: 'Known for years.',
    },
  );
  draft = absent(draft, 'skin-ulcer', { region: 'forehead', side: 'midline' });
  draft = abnormal(draft, { ...cheek, methods: ['inspection'] });
  draft = measured(draft, 'lesion-max', cheek, '4.0', 'mm', {
    about: 'mole',
    readings: ['3.9', '4.1'],
    convention: 'mean',
  });
  draft = pictured(draft, {
    key: 'picture',
    ...cheek,
    title: 'Mole of the left cheek',
    contentType: 'image/jpeg',
    url: 'https://harbour-clinic.example/pictures/417',
    consent: 'given',
    about: ['mole'],
  });
  draft = conclude(draft, {
    text: 'One mole to be watched.',
    concern: 'watch',
    basedOn: ['mole'],
    plan: [
      {
        key: 'look-again',
        kind: 'review',
        text: 'Look again in a year',
        due: '2032-04',
        urgency: 'routine',
      },
    ],
  });
  return finished(draft);
}

function nerveExam(): Exam {
  let draft = startExam({
    id: 'harbour-check-2031-0502',
    subject: {
      identifiers: [{ system: 'https://harbour-clinic.example/patients', value: 'P-0502' }],
    },
    examiners: [{ key: 'nurse', name: { text: 'B. Marl' } }],
    performed: { start: '2031-05-02' },
    recorded: '2031-05-02T15:00:00Z',
    protocol: { id: 'numbness', version: '1.0.0' },
  });
  draft = sensation(
    draft,
    'v2',
    'right',
    { 'light-touch': 'normal', pinprick: 'reduced' },
    { eyesClosed: true },
  );
  draft = sensation(draft, 'v2', 'left', {
    'light-touch': 'normal',
    pinprick: { result: 'not-tested', reason: 'declined' },
  });
  draft = comparedSides(draft, 'v2', 'light-touch', 'equal');
  draft = moved(draft, 'frontalis', 'normal', { side: 'right' });
  draft = scored(draft, 'hb', '1985', 'hb-1', { side: 'right' });
  return finished(draft);
}

function neckExam(): Exam {
  let draft = startExam({
    id: 'harbour-check-2031-0611',
    subject: {
      identifiers: [{ system: 'https://harbour-clinic.example/patients', value: 'P-0611' }],
      name: { text: 'Q. Dorn' },
      birthDate: '1962',
    },
    examiners: [
      { key: 'doctor', name: { family: 'Quay' } },
      { key: 'nurse', name: { text: 'B. Marl' } },
    ],
    organization: { name: 'Harbour clinic' },
    performed: { start: '2031-06-11T08:05:00.250+02:00' },
    recorded: '2031-06-11T08:40:00+02:00',
    indication: { text: 'Yearly check', visit: 'follow-up', urgency: 'routine' },
    instruments: [{ key: 'rule', type: 'ruler-caliper', resolution: { value: '0.5', unit: 'mm' } }],
    protocol: { id: 'neck-lump', version: '1.0.0' },
  });
  draft = indeterminate(
    draft,
    'scar',
    { region: 'neck-ant-skin', side: 'midline' },
    { examiner: 'nurse' },
  );
  draft = normal(draft, [{ region: 'ln-iii', side: 'right', methods: ['palpation'] }]);
  draft = partlyExamined(
    draft,
    { region: 'ln-iii', side: 'left', methods: ['palpation'] },
    'unable-dressing',
  );
  draft = notExamined(draft, { region: 'eac', side: 'right' }, 'unable-wax');
  draft = measured(draft, 'mio', { region: 'jaw-motion' }, '50', 'mm', {
    comparator: '>',
    instruments: ['rule'],
  });
  draft = symptom(draft, 'sym-general.fever', 'no', { toldBy: 'patient' });
  draft = noted(draft, 'Skin looks weathered & dry: "salt, wind" <all year>.', { region: 'skin' });
  return finished(draft);
}

function finished(draft: ExamDraft): Exam {
  const { value, issues } = finishExam(draft, 'final');
  if (value === undefined) throw new IssueError('make an exam for the faults', issues);
  return value;
}
