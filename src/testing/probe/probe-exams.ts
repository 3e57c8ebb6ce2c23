import {
  abnormal,
  absent,
  comparedSides,
  measured,
  moved,
  normal,
  notExamined,
  noted,
  present,
  sensation,
  symptom,
} from '../../kinds/registries/builders.ts';
import { type ExamDraft, startExam } from '../../model/builder/draft.ts';
import { conclude, finishExamOrThrow } from '../../model/builder/finish-exam.ts';
import type { Exam } from '../../model/exam.ts';
import type { RecordEvent, RecordStatus } from '../../model/record-event.ts';

/** The states of one exam that a probe sends, in their order. */
export interface ProbeExams {
  readonly first: Exam;
  /** Signed, with two statements changed. */
  readonly updated: Exam;
  readonly corrected: Exam;
  readonly retracted: Exam;
  /** Another exam of another patient, in which faults are planted. */
  readonly forFaults: Exam;
  /** Of a third patient, who is sent alone, to be matched. */
  readonly matched: Exam;
  /** Of a fourth patient, with as many remarks as asked for. */
  readonly large: Exam;
}

const IDENTIFIERS = 'https://harbour-clinic.example/probe';

/** Below it stand the ids of what a probe stores, apart from those of any clinic. */
export const PROBE_IDENTITY = `${IDENTIFIERS}/records`;

/** Invented exams of a harbour worker; ids follow from the name of the run. */
export function probeExams(run: string, entries = 0): ProbeExams {
  const noteOf = (text: string) => (draft: ExamDraft) =>
    noted(draft, text, { key: 'remark', region: 'skin' });
  const before = noteOf('Skin weathered & dry: "salt, wind" <all year>. Größe wie 2030. 顔面');
  const after = noteOf('Skin weathered and dry, less than last year.');
  const noScar = (draft: ExamDraft): ExamDraft => absent(draft, 'scar', skin, { key: 'scar' });
  const scar = (draft: ExamDraft): ExamDraft => present(draft, 'scar', skin, { key: 'scar' });
  const size = (value: string) => (draft: ExamDraft) => lesion(draft, value);
  return {
    first: made(`probe-${run}`, 'preliminary', 2, [size('4.0'), before, noScar]),
    updated: made(`probe-${run}`, 'final', 3, [size('4.0'), after, scar]),
    corrected: made(`probe-${run}`, 'corrected', 4, [size('4.5'), after, scar]),
    retracted: made(`probe-${run}`, 'entered-in-error', 5, [size('4.5'), after, scar]),
    matched: made(`probe-${run}-match`, 'preliminary', 2, [size('4.0')]),
    large: made(`probe-${run}-large`, 'preliminary', 2, [size('4.0'), remarks(entries)]),
    forFaults: made(`probe-${run}-fault`, 'preliminary', 2, [size('4.0'), before, noScar]),
  };
}

/** Each remark is an entry of its own. */
function remarks(count: number): (draft: ExamDraft) => ExamDraft {
  return (draft) => {
    let so = draft;
    for (let at = 1; at <= count; at++) {
      so = noted(so, `Remark ${at}.`, { key: `remark-${at}`, region: 'skin' });
    }
    return so;
  };
}

const skin = { region: 'neck-ant-skin', side: 'midline', methods: ['inspection'] } as const;
const cheek = { region: 'cheek-malar', side: 'left' } as const;

const life: readonly RecordEvent[] = [
  { action: 'create', by: 'doctor', at: '2031-04-17T10:10:00+02:00', version: 1 },
  { action: 'release', by: 'doctor', at: '2031-04-17T10:20:00+02:00', version: 2 },
  { action: 'sign', by: 'doctor', at: '2031-04-17T11:00:00+02:00', version: 3 },
  {
    action: 'correct',
    by: 'doctor',
    at: '2031-04-18T08:00:00+02:00',
    reason: 'A figure was written down wrongly.',
    version: 4,
    changed: ['size'],
  },
  {
    action: 'retract',
    by: 'doctor',
    at: '2031-04-18T09:00:00+02:00',
    reason: 'Entered for the wrong person.',
    version: 5,
  },
];

function made(
  id: string,
  status: Exclude<RecordStatus, 'draft'>,
  version: number,
  additions: readonly ((draft: ExamDraft) => ExamDraft)[],
): Exam {
  const history = life.slice(0, version);
  const start = startExam({
    id,
    subject: {
      identifiers: [{ system: `${IDENTIFIERS}/patients`, value: id }],
      name: { family: 'Tern', given: ['Ada'] },
      birthDate: '1979-04-02',
      gender: 'female',
    },
    examiners: [
      {
        key: 'doctor',
        identifiers: [{ system: `${IDENTIFIERS}/staff`, value: `${id}-doctor` }],
        name: { family: 'Quay', given: ['Mori'] },
        role: 'occupational physician',
      },
    ],
    organization: {
      identifiers: [{ system: `${IDENTIFIERS}/sites`, value: id }],
      name: 'Harbour clinic',
    },
    encounter: {
      identifiers: [{ system: `${IDENTIFIERS}/visits`, value: id }],
      class: 'ambulatory',
    },
    performed: { start: '2031-04-17T09:30:00+02:00', end: '2031-04-17T10:05:00+02:00' },
    recorded: history.at(-1)?.at ?? '2031-04-17T10:10:00+02:00',
    conditions: [{ condition: 'light', value: 'bright' }],
    // With a number, so that its Device is nobody else's and can be deleted.
    instruments: [{ key: 'lens', type: 'dermatoscope', magnification: '10', serial: id }],
    protocol: { id: 'skin-lesion', version: '1.0.0' },
    history,
  });
  const draft = additions.reduce((so, add) => add(so), statements(start));
  return finishExamOrThrow(
    conclude(draft, {
      text: 'One mole to be watched.',
      concern: 'watch',
      basedOn: ['mole'],
      plan: [{ key: 'again', kind: 'review', text: 'Look again in a year', due: '2032-04' }],
    }),
    status,
  );
}

/** One of each kind of statement that a clinic sends every day. */
function statements(start: ExamDraft): ExamDraft {
  let draft = normal(start, [{ region: 'ln-iii', side: 'right', methods: ['palpation'] }]);
  draft = notExamined(draft, { region: 'eac', side: 'right' }, 'unable-wax');
  draft = sensation(draft, 'v2', 'right', { 'light-touch': 'normal', pinprick: 'reduced' });
  draft = comparedSides(draft, 'v2', 'light-touch', 'equal');
  draft = moved(draft, 'frontalis', 'normal', { side: 'right' });
  return symptom(draft, 'sym-general.fever', 'no', { toldBy: 'patient' });
}

function lesion(draft: ExamDraft, size: string): ExamDraft {
  const found = present(
    abnormal(draft, { ...cheek, methods: ['inspection'] }),
    'pigmented-lesion',
    { ...cheek, methods: ['inspection', 'inspection-magnified'] },
    { key: 'mole', tracking: 'mole-1', instruments: ['lens'] },
  );
  return measured(found, 'lesion-max', cheek, size, 'mm', { key: 'size', about: 'mole' });
}
