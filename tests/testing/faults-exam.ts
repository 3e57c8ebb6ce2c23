import {
  abnormal,
  absent,
  comparedSides,
  conclude,
  type Exam,
  finishExam,
  IssueError,
  indeterminate,
  measured,
  moved,
  normal,
  notExamined,
  noted,
  pictured,
  present,
  scored,
  sensation,
  startExam,
  symptom,
} from '../../src/index.ts';

/** An invented exam of a harbour worker that has every kind of resource and statement, and is short. */
export function faultsExam(): Exam {
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
      { key: 'nurse', name: { text: 'B. Marl' } },
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
    indication: { text: 'Yearly check', visit: 'follow-up', urgency: 'routine' },
    consents: [{ to: 'examine', answer: 'given', by: 'patient', at: '2031-04-17T09:29:00+02:00' }],
    conditions: [{ condition: 'light', value: 'bright' }],
    instruments: [
      {
        key: 'dermatoscope',
        type: 'dermatoscope',
        magnification: '10',
        detail: 'polarised',
        serial: 'D-77',
      },
      { key: 'rule', type: 'ruler-caliper', resolution: { value: '0.5', unit: 'mm' } },
    ],
    protocol: { id: 'skin-lesion', version: '1.0.0' },
    history: [
      { action: 'create', by: 'doctor', at: '2031-04-17T10:10:00+02:00', version: 1 },
      { action: 'sign', by: 'doctor', at: '2031-04-17T10:20:00+02:00', version: 2 },
    ],
  });
  draft = present(
    draft,
    'pigmented-lesion',
    { region: 'cheek-malar', side: 'left', methods: ['inspection', 'inspection-magnified'] },
    {
      key: 'mole',
      tracking: 'mole-1',
      instruments: ['dermatoscope'],
      attributes: { 'lesion-type': 'macule', 'lesion-border': 'irregular' },
      note: 'Known for years.',
    },
  );
  draft = absent(draft, 'skin-ulcer', { region: 'forehead', side: 'midline' });
  draft = indeterminate(draft, 'scar', { region: 'chin', side: 'midline' }, { examiner: 'nurse' });
  draft = normal(draft, [{ region: 'cheek-malar', side: 'right', methods: ['inspection'] }]);
  draft = abnormal(draft, { region: 'cheek-malar', side: 'left', methods: ['inspection'] });
  draft = notExamined(draft, { region: 'eac', side: 'right' }, 'unable-wax');
  draft = sensation(draft, 'v2', 'right', { 'light-touch': 'normal', pinprick: 'reduced' });
  draft = sensation(draft, 'v2', 'left', {
    'light-touch': 'normal',
    pinprick: { result: 'not-tested', reason: 'declined' },
  });
  draft = comparedSides(draft, 'v2', 'light-touch', 'equal');
  draft = moved(draft, 'frontalis', 'normal', { side: 'right' });
  draft = measured(draft, 'lesion-max', { region: 'cheek-malar', side: 'left' }, '4.0', 'mm', {
    about: 'mole',
    instruments: ['rule'],
    readings: ['3.9', '4.1'],
    convention: 'mean',
  });
  draft = measured(draft, 'mio', { region: 'jaw-motion' }, '50', 'mm', { comparator: '>' });
  draft = scored(draft, 'hb', '1985', 'hb-1', { side: 'right' });
  draft = symptom(draft, 'sym-general.fever', 'no', { toldBy: 'patient' });
  draft = noted(draft, 'Skin looks weathered.', { region: 'skin' });
  draft = pictured(draft, {
    key: 'picture',
    region: 'cheek-malar',
    side: 'left',
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
      { key: 'look-again', kind: 'review', text: 'Look again in a year', due: '2032-04' },
      { key: 'sun', kind: 'advice', text: 'Sun cream' },
    ],
    safetyNet: { text: 'Come back when it grows', returnIf: ['it grows', 'it bleeds'] },
    told: [{ who: 'patient', what: 'What was found' }],
  });
  const { value, issues } = finishExam(draft, 'final');
  if (value === undefined) throw new IssueError('make the exam for the faults', issues);
  return value;
}
