import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Mapping } from '../../../src/convert/csv/index.ts';
import { matches, unmatched } from '../../../src/convert/mapping-tests/matches.ts';
import {
  type MappingTest,
  mappingTestText,
  parseMappingText,
  testMapping,
} from '../../../src/convert/suggest/index.ts';
import { sampleMapping, writeExams } from '../../../src/testing/formats/formats.ts';
import { sampleExam } from '../../../src/testing/sample-exam.ts';
import { inFolder, run } from '../../cli/in-process.ts';

const guide = readFileSync(
  join(import.meta.dirname, '../../../examples/guides/convert.md'),
  'utf8',
);

const mapping: Mapping = {
  format: 'face-neck-mapping/1',
  source: { syntax: 'csv', delimiter: ';' },
  exam: {
    id: { prefix: 'vineyard', from: ['check'] },
    status: { value: 'final' },
    subject: { identifiers: [{ from: 'worker', system: 'https://vineyard.example/workers' }] },
    performed: { start: 'day' },
    recorded: { value: '2024-03-01T08:00:00Z' },
    examiner: { name: 'doctor' },
    protocol: { id: 'full', version: '1.0.0' },
  },
  fields: { left_ear: { kind: 'finding', region: 'eac', side: 'left', words: 'canal' } },
  words: { canal: { clear: 'eac-clear', wax: 'eac-wax' } },
  dates: { formats: ['YYYY-MM-DD'], zone: 'Europe/Lisbon' },
};

const heading = 'check;worker;day;doctor;left_ear';
const wax = { kind: 'finding', finding: 'eac-wax', side: 'left' };

/** What fails of one test. */
function failuresOf(rows: readonly string[], wanted: MappingTest['expect']): readonly string[] {
  const tests = [{ source: [heading, ...rows], expect: wanted }];
  const { results, issues } = testMapping({ ...mapping, tests });
  expect(issues).toEqual([]);
  return (results[0]?.failures ?? []).map(({ failure }) => failure);
}

describe('tests that a mapping carries', () => {
  const row = 'K-1;V1;2024-02-05;M. Weinlaub;wax';

  it.each<[string, MappingTest['expect']]>([
    ['statements with some of their properties', { statements: [wax] }],
    ['no other statement', { statements: [{ kind: 'finding' }], only: true }],
    ['parts of the exam', { exam: { status: 'final', performed: { start: '2024-02-05' } } }],
    ['how many exams', { exams: 1 }],
    ['what never comes', { never: [{ side: 'right' }, { kind: 'note' }] }],
  ])('hold %s', (_, wanted) => {
    expect(failuresOf([row], wanted)).toEqual([]);
  });

  it.each<[string, MappingTest['expect'], string]>([
    ['another side', { statements: [{ ...wax, side: 'right' }] }, 'missing-statement'],
    ['one statement for two', { statements: [wax, wax] }, 'missing-statement'],
    ['a further statement', { only: true }, 'further-statement'],
    ['one that must not be', { never: [{ side: 'left' }] }, 'forbidden-statement'],
    ['another status', { exam: { status: 'draft' } }, 'other-exam'],
    ['another number of exams', { exams: 2 }, 'exams'],
    ['a quarantine that is none', { quarantine: ['duplicate-exam'] }, 'quarantine'],
  ])('tell %s', (_, wanted, failure) => {
    expect(failuresOf([row], wanted)).toEqual([failure]);
  });

  it('tell an exam that is set aside, unless that is expected', () => {
    const bad = 'K-1;V1;2024-02-31;M. Weinlaub;wax';
    expect(failuresOf([bad], {})).toEqual(['quarantine']);
    expect(failuresOf([row, row], { exams: 1, quarantine: ['duplicate-exam'] })).toEqual([]);
  });

  it.each(['csv', 'hl7v2', 'xml', 'cda'] as const)('run for %s', (format) => {
    const exam = sampleExam(3, { size: 'usual' });
    const tests = [{ source: writeExams([exam], format), expect: { exams: 1 } }];
    const { results } = testMapping({ ...sampleMapping(format), tests });
    expect(results).toEqual([{ title: 'test 1', failures: [] }]);
  });

  it('are refused where they are not of the form, and end where the budget is spent', () => {
    // A mapping from a file is of any form.
    const wrong = testMapping({ ...mapping, tests: [{ source: 3, expect: {} }] } as never);
    expect(wrong.results).toEqual([]);
    expect(wrong.issues[0]?.path.slice(0, 2)).toEqual(['tests', 0]);
    const tests = [{ source: [heading, row], expect: {} }];
    expect(testMapping({ ...mapping, tests }, { budget: { work: 3 } }).issues).toHaveLength(1);
  });

  it('do not change what the mapping does', async () => {
    const { fromCsv } = await import('../../../src/convert/csv/index.ts');
    const tests = [{ source: [heading, row], expect: {} }];
    const text = `${heading}\n${row}\n`;
    expect(fromCsv(text, { ...mapping, tests })).toEqual(fromCsv(text, mapping));
  });

  it('stand in the guide as they hold', () => {
    const [, block = ''] = /```json\n(\{\n {2}"tests"[\s\S]*?)```/.exec(guide) ?? [];
    const { tests } = parseMappingText(block).value as Pick<Mapping, 'tests'>; // read by the mapping below
    const { results, issues } = testMapping({ ...mapping, ...(tests && { tests }) });
    expect(issues).toEqual([]);
    expect(results).toEqual([{ title: 'wax in the left ear', failures: [] }]);
  });
});

describe('expected parts', () => {
  it('match by what they name', () => {
    expect(matches({ a: 1, b: { c: [1, 2] } }, { b: { c: [1, 2] } })).toBe(true);
    expect(matches({ a: 1 }, { a: '1' })).toBe(false);
    expect(matches([1, 2], [1])).toBe(false);
    expect(matches({}, { constructor: {} })).toBe(false);
    expect(matches(undefined, {})).toBe(false);
  });

  it('are assigned so that most find a value', () => {
    const values = [{ a: 1, b: 1 }, { a: 1 }];
    expect(unmatched(values, [{ a: 1 }, { b: 1 }]).missing).toEqual([]);
    expect(unmatched(values, [{ b: 1 }, { a: 1 }, { a: 1 }]).missing).toEqual([{ a: 1 }]);
  });
});

it('convert --test tells each, and ends with 1 where one fails or there is none', async () => {
  await inFolder(async (cwd) => {
    const source = [heading, 'K-1;V1;2024-02-05;M. Weinlaub;wax'];
    const good = { title: 'wax', source, expect: { statements: [wax] } };
    const bad = { source, expect: { statements: [{ ...wax, side: 'right' }] } };
    const call = ['convert', '--test', '--mapping', 'm.json'];
    const write = (tests: readonly unknown[]): void =>
      writeFileSync(join(cwd, 'm.json'), JSON.stringify({ ...mapping, tests }));
    write([good]);
    expect(await run(call, { cwd })).toEqual({
      code: 0,
      out: 'holds  wax\n1 tests, 0 failed\n',
      err: '',
    });
    write([good, bad]);
    const { code, out } = await run(call, { cwd });
    expect(code).toBe(1);
    expect(out).toContain('fails  test 2\n  not there: {"kind":"finding"');
    writeFileSync(join(cwd, 'm.json'), JSON.stringify(mapping));
    expect((await run(call, { cwd })).code).toBe(1);
    expect(mappingTestText({ results: [], issues: [] })).toBe('0 tests, 0 failed\n');
  });
});
