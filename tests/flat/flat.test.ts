import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { examples } from '../../examples/all-exams.ts';
import type { FlatRow, FlatState } from '../../src/flat/index.ts';
import { flatColumns, flatHead, flatLine, fromFlatCell, toFlat } from '../../src/flat/index.ts';
import { type Exam, orThrow, type Statement } from '../../src/index.ts';
import { sampleExam } from '../../src/testing/sample-exam.ts';
import { sampled } from '../sampled.ts';

const names = Object.keys(flatColumns);
const seeds = Array.from({ length: sampled(8, 300) }, (_, at) => at + 1);
const exams = [
  ...examples.values(),
  ...seeds.map((seed) => sampleExam(seed, { size: seed % 2 === 0 ? 'edge' : 'usual' })),
];
const rowsOf = (exam: Exam): readonly FlatRow[] => orThrow('flatten', toFlat(exam));
const allRows = () => exams.map((exam) => ({ exam, rows: rowsOf(exam) }));
const stated = () =>
  allRows().flatMap(({ exam, rows }) => {
    const byKey = new Map(rows.map((row) => [row.statement, row]));
    return exam.statements.flatMap((one) => {
      const row = byKey.get(one.key);
      return row === undefined ? [] : [{ one, row }];
    });
  });
const flat = () => allRows().flatMap(({ rows }) => rows);

/** Parts of a statement, from the exam alone: a sensation has one for each modality. */
function partsOf(statement: Statement): readonly string[] {
  if (statement.kind === 'sensation') return statement.results.map(({ modality }) => modality);
  return [statement.kind === 'sensation-comparison' ? statement.modality : ''];
}

describe('the rows of an exam', () => {
  it('hold every statement exactly once', () => {
    for (const { exam, rows } of allRows()) {
      const parts = exam.statements.flatMap((one) => partsOf(one).map((part) => [one.key, part]));
      expect(rows.map(({ statement, part }) => [statement, part])).toEqual(parts);
    }
  });

  it('keep region and side apart', () => {
    for (const { one, row } of stated()) {
      if ('region' in one && one.region !== undefined) expect(row.region).toBe(one.region);
      if ('side' in one && one.side !== undefined) expect(row.side).toBe(one.side);
    }
  });

  it('give figures with the digits as stated', () => {
    const figures = stated().filter(({ one }) => one.kind === 'measurement');
    expect(figures.length).toBeGreaterThan(50);
    for (const { one, row } of figures) {
      if (one.kind !== 'measurement') continue;
      expect(row).toMatchObject({ value: one.value ?? '', unit: one.unit });
      expect(row.reason).toBe(one.unusable?.code ?? '');
    }
  });

  it('have the same columns, all texts', () => {
    for (const row of flat()) {
      expect(Object.keys(row)).toEqual(names);
      expect(Object.values(row).every((value) => typeof value === 'string')).toBe(true);
    }
  });
});

describe('nothing that is not there is read as there', () => {
  /** Decided from the exam as written, without what the library makes of it. */
  function isThere(statement: Statement): boolean | undefined {
    switch (statement.kind) {
      case 'finding':
        return statement.presence === 'present' && statement.certainty !== 'suspected';
      case 'symptom':
        return statement.answer === 'yes';
      case 'region-state':
        return statement.state === 'abnormal';
      case 'sensation-comparison':
        return statement.result === 'right-less' || statement.result === 'left-less';
      case 'note':
      case 'image':
        return false;
      default:
        return undefined;
    }
  }

  const positive: readonly FlatState[] = ['present', 'abnormal', 'value'];

  it('by state and by said', () => {
    let negatives = 0;
    for (const { one, row } of stated()) {
      const there = isThere(one);
      if (there === undefined) continue;
      expect([row.said === 'states', positive.includes(row.state)]).toEqual([there, there]);
      if (!there) negatives += 1;
    }
    expect(negatives).toBeGreaterThan(500);
  });

  it('a test that was not made and a figure that could not be read have no result', () => {
    const untested = flat().filter(({ answer }) => answer === 'not-tested');
    expect(untested.length).toBeGreaterThan(0);
    for (const row of untested) expect(row).toMatchObject({ said: 'none', state: 'not-examined' });
    const unread = flat().filter(({ state }) => state === 'no-value');
    expect(unread.length).toBeGreaterThan(0);
    for (const { value, reason, said } of unread) {
      expect([value, reason !== '', said]).toEqual(['', true, 'none']);
    }
  });

  it('what was taken over and not looked at again says so', () => {
    const [first] = examples.values();
    if (first === undefined) throw new Error('no example');
    const carried = { exam: 'last', statement: 'x', at: '2024-01-01', confirmed: false };
    const statements = first.statements.slice(0, 1).map((one) => ({ ...one, carried }));
    const { conclusion: _c, prompts: _p, judgements: _j, history: _h, ...rest } = first;
    const [row] = rowsOf({ ...rest, status: 'draft', statements });
    expect(row).toMatchObject({ carried: 'unconfirmed', seen: '2024-01-01' });
  });
});

describe('CSV', () => {
  const read = (text: string): readonly string[][] => parse(text);

  it('reads back as the rows', () => {
    const rows = allRows()
      .slice(0, 8)
      .flatMap((one) => one.rows);
    const [head, ...lines] = read(flatHead + rows.map(flatLine).join(''));
    expect(head).toEqual(names);
    expect(lines.map((line) => line.map(fromFlatCell))).toEqual(
      rows.map((row) => Object.values(row)),
    );
  });

  it('holds no formula, whatever the words, and gives them back', () => {
    const [any] = flat();
    const starts = fc.constantFrom('=', '+', '-', '@', '\t', '\r', '\n', "'", '"');
    const hostile = fc.oneof(
      fc.string(),
      fc.tuple(starts, fc.string()).map(([start, rest]) => `${start}${rest}`),
    );
    fc.assert(
      fc.property(hostile, (note) => {
        if (any === undefined) return false;
        const [line = []] = read(flatLine({ ...any, note }));
        const cell = line[names.indexOf('note')] ?? '';
        const isFormula = /^[=+\-@\t\r\n]/.test(cell) && !/^-?\d+(\.\d+)?$/.test(cell);
        return !isFormula && fromFlatCell(cell) === note;
      }),
      { numRuns: 300, seed: 1 },
    );
  });
});

it('leaves words out where asked', () => {
  const rows = exams
    .slice(0, 8)
    .flatMap((exam) => orThrow('flatten', toFlat(exam, { withoutWords: true })));
  expect(flat().some(({ note }) => note !== '')).toBe(true);
  expect(rows.filter((row) => `${row.note}${row.place}${row.reason_text}` !== '')).toEqual([]);
});

it('an exam that is none gives issues', () => {
  // Data from outside; the compiler would not let it through.
  expect(toFlat({ statements: [{}] } as unknown as Exam).ok).toBe(false);
});
