import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { scanFile } from '../../../src/convert/bulk/scan/scan-file.ts';
import { fromCsv } from '../../../src/convert/csv/from-csv.ts';
import { dryRun } from '../../../src/convert/dry-run/dry-run.ts';
import { fromFixedWidth } from '../../../src/convert/fixed/from-fixed-width.ts';
import { lineRows } from '../../../src/convert/fixed/line-rows.ts';
import type { Mapping } from '../../../src/convert/mapping/mapping.ts';
import type { FixedSource } from '../../../src/convert/mapping/source.ts';
import { testMapping } from '../../../src/convert/mapping-tests/test-mapping.ts';
import { prepareMapping } from '../../../src/convert/prepare/prepare-mapping.ts';
import { convert, lines, temporaryFolder } from '../bulk/folder.ts';
import { csvMapping } from '../csv/suite.ts';

const names = ['exam_no', 'worker_no', 'exam_date', 'MRD1_R', 'cheek_L', 'node_R', 'remark'];
const widths = [6, 6, 11, 5, 5, 4, 12];

const columns: FixedSource['columns'] = names.map((name, at) => ({
  name,
  start: 1 + widths.slice(0, at).reduce((sum, width) => sum + width, 0),
  length: widths[at] ?? 0,
}));
const source: FixedSource = { syntax: 'fixed', columns };
const mapping: Mapping = { ...csvMapping, source };

const rows = [
  ['E1', 'V0001', '06/05/2024', '3.5', 'WNL', '-ve', 'first'],
  ['E2', 'V0002', '07/05/2024', '4.0', '', '+', 'müde'],
];
const lineOf = (cells: readonly string[]): string =>
  cells.map((cell, at) => cell.padEnd(widths[at] ?? 0)).join('');
const text = rows.map((cells) => `${lineOf(cells)}\n`).join('');
const csv = [names, ...rows].map((cells) => cells.join(',')).join('\n');

const reasons = (line: string, more: Partial<FixedSource> = {}): unknown[] => {
  const result = fromFixedWidth(`${line}\n`, { ...mapping, source: { ...source, ...more } });
  return result.quarantine.map(({ issues }) => issues[0]?.facts.reason);
};

describe('lines in which each column has its place', () => {
  it('give the exams that the same table gives as CSV', () => {
    const inCsv = fromCsv(csv, csvMapping);
    const result = fromFixedWidth(text, mapping);
    expect(inCsv.exams).toHaveLength(2);
    expect(result.exams.map(({ exam }) => exam)).toEqual(inCsv.exams.map(({ exam }) => exam));
    expect(result.ledger).toEqual(inCsv.ledger);
    expect(result.exams[1]?.ledger[3]).toMatchObject({
      name: 'MRD1_R',
      at: { line: 2, column: 24 },
      fate: 'coded',
    });
  });

  it('end where they end: short, long and shifted lines, and tabs, are set aside whole', () => {
    const line = lineOf(rows[0] ?? []);
    expect(reasons(line.trimEnd())).toEqual(['short-line']);
    expect(reasons(line.trimEnd(), { trimmed: true })).toEqual([]);
    expect(reasons(`${line}   `)).toEqual([]);
    expect(reasons(` ${line.slice(0, -1)}x`.padEnd(50, 'y'))).toEqual(['long-line']);
    expect(reasons(line.replace('E1 ', 'E1\t'))).toEqual(['tab']);
  });

  it('keep what stands between the columns', () => {
    const some = columns.filter(({ name }) => name !== 'cheek_L');
    const { fields: { cheek_L: _, ...fields } = {} } = mapping;
    const { exams } = fromFixedWidth(text, {
      ...mapping,
      fields,
      source: { ...source, columns: some },
    });
    expect(exams[0]?.ledger.at(-1)).toMatchObject({
      name: '#29-33',
      fate: 'verbatim',
      at: { line: 1, column: 29 },
    });
    expect(exams[0]?.issues).toContainEqual(expect.objectContaining({ code: 'unmapped-field' }));
    expect(JSON.stringify(exams[0]?.exam.statements)).toContain('WNL');
  });

  it('belong together by groupBy and fillDown, in any character set', async () => {
    const grouped: Mapping = {
      ...mapping,
      source: {
        ...source,
        ...{ encoding: 'utf-8', skip: 1, groupBy: ['exam_no'] },
        fillDown: ['exam_no', 'worker_no', 'exam_date'],
      },
    };
    const second = lineOf(['', '', '', '', 'WNL', '', 'äöü']);
    const path = join(temporaryFolder(), 'a.txt');
    writeFileSync(path, `Übersicht\n${text}${second}\n\u001a`);
    const out = join(temporaryFolder(), 'out');
    const { summary } = await convert({
      mapping: grouped,
      inputs: [path],
      out,
      to: 'exams',
      ledger: true,
    });
    expect(summary?.exams).toEqual({ read: 2, converted: 2, quarantined: 0 });
    expect(JSON.stringify(lines(out, 'exams.ndjson'))).toContain('äöü');
  });

  it('are scanned, tried and tested like any table', async () => {
    const path = join(temporaryFolder(), 'a.txt');
    writeFileSync(path, text);
    const scan = await scanFile(path, { source });
    expect(scan.fields.map(({ name }) => name)).toEqual(names);
    expect(dryRun(text, mapping).exams.map(({ exam }) => exam?.id)).toHaveLength(2);
    const tests = [{ source: text, expect: { exams: 2 } }];
    expect(testMapping({ ...mapping, tests }).results[0]?.failures).toEqual([]);
  });

  it('have columns that share no place and no name', () => {
    const issuesOf = (list: FixedSource['columns']): unknown[] =>
      prepareMapping({ ...mapping, source: { ...source, columns: list } }).issues.map(
        ({ path, facts }) => [path.join('.'), facts.reason],
      );
    expect(issuesOf([...columns, { name: 'more', start: 3, end: 4 }])).toContainEqual([
      'source.columns.7',
      'column',
    ]);
    expect(issuesOf([...columns, { name: 'remark', start: 100, end: 104 }])).toContainEqual([
      'source.columns.7',
      'column',
    ]);
    expect(issuesOf([...columns, { name: 'more', start: 100, end: 99 }])).toContainEqual([
      'source.columns.7',
      'column-end',
    ]);
  });

  it('are cut the same wherever the text is cut, and bounded', () => {
    const whole = `a\r\nbb\n\n${'c'.repeat(20)}\nd`;
    const all = lineRows();
    const expected = [...all.push(whole), ...all.end()];
    expect(expected.map(({ text: one, line }) => [line, one.trimEnd().length])).toEqual([
      [1, 1],
      [2, 2],
      [3, 0],
      [4, 20],
      [5, 1],
    ]);
    const each = lineRows();
    expect([...[...whole].flatMap((mark) => each.push(mark)), ...each.end()]).toEqual(expected);
    const long = lineRows();
    const found = [...long.push('x'.repeat(1_500_000)), ...long.push('\nz\n'), ...long.end()];
    expect(found.map(({ fault }) => fault)).toEqual(['too-large', 'too-large', undefined]);
  });
});
