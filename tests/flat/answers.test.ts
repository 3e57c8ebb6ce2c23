import { describe, expect, it } from 'vitest';
import type { FlatRow } from '../../src/flat/index.ts';
import { toFlat } from '../../src/flat/index.ts';
import { type Exam, orThrow } from '../../src/index.ts';
import { emptyExam } from '../report/empty-exam.ts';

const cheek = { region: 'cheek-malar', side: 'left' };
const methods = ['inspection'];
const reason = { code: 'time', text: 'Ship sailed' };
const why = { reason: 'time', reason_text: 'Ship sailed' };
const naevus = { kind: 'finding', finding: 'naevus', ...cheek };
const region = { kind: 'region-state', ...cheek };
const compared = { kind: 'sensation-comparison', point: 'v2', modality: 'pinprick' };
const brow = { kind: 'movement', test: 'frontalis', side: 'left' };
const whisper = { kind: 'function-test', test: 'cn8-whisper', side: 'left' };
const ears = { kind: 'symptom', symptom: 'sym-ear.tinnitus', side: 'left' };
const mm = { kind: 'measurement', measure: 'pfh', ...cheek, unit: 'mm' };

/** Columns of the answer, as far as they are not empty; what each holds: `flatColumns`. */
const answer = [
  'part',
  'state',
  'said',
  'answer',
  'answer_display',
  'value',
  'comparator',
  'unit',
  'readings',
  'reason',
  'reason_text',
  'attributes',
  'note',
] as const satisfies readonly (keyof FlatRow)[];

const cases: readonly (readonly [string, object, readonly object[]])[] = [
  [
    'a sign',
    { ...naevus, presence: 'present' },
    [{ state: 'present', said: 'states', answer: 'present' }],
  ],
  [
    'a sign that is not there',
    { ...naevus, presence: 'absent' },
    [{ state: 'absent', said: 'denies', answer: 'absent' }],
  ],
  [
    'a sign not decided',
    { ...naevus, presence: 'indeterminate' },
    [{ state: 'undecided', said: 'open', answer: 'indeterminate' }],
  ],
  [
    'a sign suspected, with attributes',
    {
      ...naevus,
      presence: 'present',
      certainty: 'suspected',
      attributes: [
        { attribute: 'lesion-border', value: 'irregular' },
        { attribute: 'lesion-size-rule', value: { value: '2', unit: 'mm', comparator: '>' } },
      ],
    },
    [
      {
        state: 'suspected',
        said: 'open',
        answer: 'present',
        attributes: 'lesion-border=irregular; lesion-size-rule=>2 mm',
      },
    ],
  ],
  [
    'a region that is normal',
    { ...region, state: 'normal', methods },
    [{ state: 'normal', said: 'denies', answer: 'normal' }],
  ],
  [
    'a region that is abnormal',
    { ...region, state: 'abnormal', methods },
    [{ state: 'abnormal', said: 'states', answer: 'abnormal' }],
  ],
  [
    'a region seen in part',
    { ...region, state: 'partial', methods, limit: reason },
    [{ state: 'partly-examined', said: 'open', answer: 'partial', ...why }],
  ],
  [
    'a region that was not examined',
    { ...region, state: 'not-examined', reason },
    [{ state: 'not-examined', said: 'none', answer: 'not-examined', ...why }],
  ],
  [
    'a region that is not there',
    { ...region, state: 'not-applicable', reason },
    [{ state: 'not-applicable', said: 'none', answer: 'not-applicable', ...why }],
  ],
  [
    'a point by two modalities',
    {
      kind: 'sensation',
      point: 'v2',
      side: 'left',
      results: [
        { modality: 'light-touch', result: 'reduced' },
        { modality: 'pinprick', result: 'not-tested', reason },
      ],
    },
    [
      {
        part: 'light-touch',
        state: 'abnormal',
        said: 'states',
        answer: 'reduced',
        answer_display: 'Reduced',
      },
      {
        part: 'pinprick',
        state: 'not-examined',
        said: 'none',
        answer: 'not-tested',
        answer_display: 'Not tested',
        ...why,
      },
    ],
  ],
  [
    'sides that feel alike',
    { ...compared, result: 'equal' },
    [{ part: 'pinprick', state: 'normal', said: 'denies', answer: 'equal' }],
  ],
  [
    'a side that feels less',
    { ...compared, result: 'right-less' },
    [{ part: 'pinprick', state: 'abnormal', said: 'states', answer: 'right-less' }],
  ],
  [
    'sides that were not compared',
    { ...compared, result: 'not-compared', reason },
    [{ part: 'pinprick', state: 'not-examined', said: 'none', answer: 'not-compared', ...why }],
  ],
  [
    'a weak movement with synkinesis',
    { ...brow, grade: 'trace', synkinesis: true },
    [
      {
        state: 'abnormal',
        said: 'states',
        answer: 'trace',
        answer_display: 'Trace of movement',
        attributes: 'synkinesis=true',
      },
    ],
  ],
  [
    'a movement that was not tested',
    { ...brow, grade: 'not-tested', reason },
    [
      {
        state: 'not-examined',
        said: 'none',
        answer: 'not-tested',
        answer_display: 'Not tested',
        ...why,
      },
    ],
  ],
  [
    'a test that was failed',
    { ...whisper, result: 'fail' },
    [{ state: 'abnormal', said: 'states', answer: 'fail', answer_display: 'Fail' }],
  ],
  [
    'a complaint',
    { ...ears, answer: 'yes' },
    [{ state: 'present', said: 'states', answer: 'yes' }],
  ],
  [
    'a complaint denied',
    { ...ears, answer: 'no' },
    [{ state: 'absent', said: 'denies', answer: 'no' }],
  ],
  [
    'a complaint not asked for',
    { ...ears, answer: 'not-asked' },
    [{ state: 'not-asked', said: 'none', answer: 'not-asked' }],
  ],
  [
    'a figure with readings',
    {
      ...mm,
      value: '9',
      comparator: '<',
      readings: ['8', '9'],
      convention: 'maximum',
      estimated: true,
    },
    [
      {
        state: 'value',
        said: 'states',
        value: '9',
        comparator: '<',
        unit: 'mm',
        readings: '8; 9',
        attributes: 'convention=maximum; estimated=true',
      },
    ],
  ],
  [
    'a figure that could not be read',
    { ...mm, unusable: reason },
    [{ state: 'no-value', said: 'none', unit: 'mm', ...why }],
  ],
  ['a note', { kind: 'note', text: 'Tanned.' }, [{ state: 'kept', said: 'none', note: 'Tanned.' }]],
];

describe('the row of', () => {
  it.each(cases)('%s', (_, statement, expected) => {
    const exam = {
      ...emptyExam('full'),
      status: 'draft',
      statements: [{ key: 's1', ...statement }],
    };
    const rows = orThrow('flatten', toFlat(exam as unknown as Exam)); // one statement of the table
    const found = rows.map((row) =>
      Object.fromEntries(answer.flatMap((name) => (row[name] === '' ? [] : [[name, row[name]]]))),
    );
    expect(found).toEqual(expected);
  });
});
