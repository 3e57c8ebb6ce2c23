import { describe, expect, it } from 'vitest';
import { fromCsv } from '../../../src/convert/csv/index.ts';
import type { Mapping } from '../../../src/convert/mapping/mapping.ts';
import type { Target } from '../../../src/convert/mapping/target.ts';
import { oneRow } from './one-row.ts';

const state = (code: 'not-examined' | 'partial' | 'not-applicable') =>
  ({ state: code, reason: 'time', text: 'Ship sailed' }) as const;
const words = {
  N: 'normal',
  R: 'right-less',
  L: 'left-less',
  E: 'equal',
  P: 'present',
  A: 'absent',
  U: 'indeterminate',
  S: 'suspected',
  X: state('not-examined'),
  H: state('partial'),
  M: 'septum.midline',
  T: 'trace',
  F: 'fail',
  Y: 'yes',
  B: 'abnormal',
  D: 'reduced',
} as const;

/** Words of the table above by their letters. */
function of(letters: string): Record<string, unknown> {
  return Object.fromEntries(Object.entries(words).filter(([letter]) => letters.includes(letter)));
}

function converted(target: object, word: string): { statements: unknown[]; issues: string[] } {
  const mapping: Mapping = {
    ...oneRow,
    source: { syntax: 'csv' },
    fields: { said: target as Target }, // one of the cases below
  };
  const { exams, issues, quarantine } = fromCsv(`id,day,said\n1,20240205,${word}\n`, mapping);
  const told = [...issues, ...exams.flatMap((one) => one.issues), ...quarantine];
  return {
    statements: exams.flatMap(({ exam }) =>
      exam.statements.map((one) => ({ ...one, key: undefined })),
    ),
    issues: told.flatMap((one) => ('code' in one ? [one.code] : ['quarantine'])),
  };
}

const reason = { code: 'time', text: 'Ship sailed' };
const compared = { kind: 'sensation-comparison', point: 'v2', modality: 'pinprick' };
const felt = { kind: 'sensation', point: 'v2', side: 'left' };
const whisper = { kind: 'function-test', test: 'cn8-whisper', side: 'left' };
const brow = { kind: 'movement', test: 'frontalis', side: 'left' };
const septum = { kind: 'finding', region: 'septum' };
const skin = { region: 'forehead', side: 'left' };
const seen = { ...skin, methods: ['inspection'] };
const naevus = { kind: 'finding', finding: 'naevus', ...seen };
const tinnitus = { kind: 'symptom', symptom: 'sym-ear.tinnitus' };

/** A target, the letters of its words, and what each word says of it. */
const cases: readonly (readonly [object, string, Readonly<Record<string, object>>])[] = [
  [
    compared,
    'ERLX',
    {
      E: { ...compared, result: 'equal' },
      R: { ...compared, result: 'right-less' },
      L: { ...compared, result: 'left-less' },
      X: { ...compared, result: 'not-compared', reason },
    },
  ],
  [
    { ...felt, modality: 'pinprick' },
    'NDX',
    {
      N: { ...felt, results: [{ modality: 'pinprick', result: 'normal' }] },
      D: { ...felt, results: [{ modality: 'pinprick', result: 'reduced' }] },
      X: { ...felt, results: [{ modality: 'pinprick', result: 'not-tested', reason }] },
    },
  ],
  [
    whisper,
    'FX',
    { F: { ...whisper, result: 'fail' }, X: { ...whisper, result: 'not-tested', reason } },
  ],
  [
    brow,
    'NTX',
    {
      N: { ...brow, grade: 'normal' },
      T: { ...brow, grade: 'trace' },
      X: { ...brow, grade: 'not-tested', reason },
    },
  ],
  [
    naevus,
    'PAUSXH',
    {
      P: { ...naevus, presence: 'present' },
      A: { ...naevus, presence: 'absent' },
      U: { ...naevus, presence: 'indeterminate' },
      S: { ...naevus, presence: 'present', certainty: 'suspected' },
      X: { ...seen, kind: 'region-state', state: 'not-examined', reason },
      H: { ...seen, kind: 'region-state', state: 'partial', limit: reason },
    },
  ],
  [septum, 'M', { M: { ...septum, finding: 'septum.midline', presence: 'present' } }],
  [
    { ...septum, presence: 'absent' },
    'M',
    { M: { ...septum, finding: 'septum.midline', presence: 'absent' } },
  ],
  [tinnitus, 'Y', { Y: { ...tinnitus, answer: 'yes' } }],
];
const rows = cases.flatMap(([target, letters, said]) =>
  Object.entries(said).map(([letter, statement]) => ({
    target: { ...target, words: of(letters) },
    name: Object.values(target).join(' '),
    letter,
    statement,
  })),
);

describe('a word of an export', () => {
  it.each(rows)('$name: $letter', ({ target, letter, statement }) => {
    expect(converted(target, letter)).toEqual({ statements: [statement], issues: [] });
  });

  it.each(cases.map(([target, letters]) => ({ ...target, words: of(letters) })))(
    'that the mapping does not know says nothing of $kind, and is told',
    (target) => {
      const { statements, issues } = converted(target, 'Q');
      expect(statements.filter((one) => (one as { kind: string }).kind !== 'note')).toEqual([]);
      expect(issues).toContain('unknown-word');
    },
  );
});
