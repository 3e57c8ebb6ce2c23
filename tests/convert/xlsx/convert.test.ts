import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { fromXlsx, workbookText } from '../../../src/convert/bulk/from-xlsx.ts';
import { misfitsOfFile } from '../../../src/convert/bulk/scan/misfits-of-file.ts';
import { scanFile } from '../../../src/convert/bulk/scan/scan-file.ts';
import { suggestFromFile } from '../../../src/convert/bulk/scan/suggest-from-file.ts';
import { fromCsv } from '../../../src/convert/csv/from-csv.ts';
import { dryRun } from '../../../src/convert/dry-run/dry-run.ts';
import type { Mapping } from '../../../src/convert/mapping/mapping.ts';
import { testMapping } from '../../../src/convert/mapping-tests/test-mapping.ts';
import { convert, lines, temporaryFolder } from '../bulk/folder.ts';
import { csvMapping } from '../csv/suite.ts';
import { tableWorkbook } from './workbook.ts';

const mapping: Mapping = { ...csvMapping, source: { syntax: 'xlsx' } };
const heading = ['exam_no', 'worker_no', 'exam_date', 'MRD1_R', 'cheek_L', 'node_R', 'remark'];

/** The vineyard's table, with days as a spreadsheet has them. */
const table = [
  heading,
  ['E1', 'V0001', '<c s="1"><v>45418</v></c>', 3.5, 'WNL', '-ve', 'first'],
  ['E2', 'V0002', '<c s="1"><v>45419</v></c>', '4.0', '', '+', 'second'],
];
const formats = ['yyyy-mm-dd'];
const csv = [
  heading.join(','),
  'E1,V0001,2024-05-06,3.5,WNL,-ve,first',
  'E2,V0002,2024-05-07,4.0,,+,second',
].join('\n');

function fileOf(bytes: Buffer): string {
  const path = join(temporaryFolder(), 'exams.xlsx');
  writeFileSync(path, bytes);
  return path;
}

describe('a workbook as a source', () => {
  it('gives the exams that the same table gives as CSV, and the ledger names sheet and cell', async () => {
    const inCsv = fromCsv(csv, { ...mapping, source: { syntax: 'csv' } });
    const result = await fromXlsx(tableWorkbook(table, { formats }), mapping);
    expect(inCsv.exams).toHaveLength(2);
    expect(result.exams.map(({ exam }) => exam)).toEqual(inCsv.exams.map(({ exam }) => exam));
    expect(result.ledger).toEqual(inCsv.ledger);
    expect(result.exams[1]?.ledger[3]).toMatchObject({
      name: 'MRD1_R',
      at: { sheet: 'Exams', line: 3, column: 4, cell: 'D3' },
      fate: 'coded',
    });
  });

  it('does not code errors and formulas without value, and marks values of formulas', async () => {
    const bytes = tableWorkbook(
      [
        heading,
        ['E1', 'V0001', '<c s="1"><v>45418</v></c>', '<c t="e"><v>#N/A</v></c>', 'WNL', '-ve'],
        ['E2', 'V0002', '<c s="1"><v>45418</v></c>', '<c><f>D2+1</f></c>', 'WNL', '-ve'],
        ['E3', 'V0003', '<c s="1"><v>45418</v></c>', '<c><f>3+1</f><v>4</v></c>', 'WNL', '-ve'],
      ],
      { formats },
    );
    const { exams } = await fromXlsx(bytes, mapping);
    const told = exams.map(({ exam, issues, ledger }) => ({
      measured: exam.statements.filter(({ kind }) => kind === 'measurement').length,
      reasons: issues.map(({ facts }) => facts.reason),
      entry: ledger.find(({ name }) => name === 'MRD1_R'),
    }));
    expect(told).toMatchObject([
      { measured: 0, reasons: expect.arrayContaining(['error-cell']), entry: { fate: 'verbatim' } },
      { measured: 0, reasons: expect.arrayContaining(['no-result']), entry: { fate: 'verbatim' } },
      { measured: 1, entry: { fate: 'coded', origin: 'formula' } },
    ]);
    expect(JSON.stringify(exams[1]?.exam)).toContain('=D2+1');
  });

  it('sets aside a row whose exam id is an error or a formula without value, whole', async () => {
    for (const id of ['<c t="e"><v>#REF!</v></c>', '<c><f>A2</f></c>']) {
      const bytes = tableWorkbook([heading, [id, 'V0001', '<c s="1"><v>45418</v></c>', 3.5]], {
        formats,
      });
      const { exams, quarantine } = await fromXlsx(bytes, mapping);
      expect(exams).toEqual([]);
      expect(quarantine).toMatchObject([{ reason: 'missing-field', fields: 7 }]);
    }
  });

  it('takes headings further down, several rows for an exam, merged cells and columns without heading', async () => {
    const bytes = tableWorkbook(
      [
        ['Yearly check of the harbour'],
        heading,
        ['E1', 'V0001', '<c s="1"><v>45418</v></c>', 3.5, 'WNL', '', '', 'beside'],
        ['', '', '', '', '', '-ve', 'more'],
      ],
      { formats },
    );
    const source = {
      syntax: 'xlsx',
      skip: 1,
      groupBy: ['exam_no'],
      fillDown: ['exam_no', 'worker_no', 'exam_date'],
    } as const;
    const { exams } = await fromXlsx(bytes, { ...mapping, source });
    expect(exams).toHaveLength(1);
    expect(exams[0]?.ledger.find(({ name }) => name === '#8')).toMatchObject({
      fate: 'verbatim',
      at: { cell: 'H3' },
    });
    const unskipped = await fromXlsx(bytes, mapping);
    expect(unskipped.exams).toEqual([]);
    expect(unskipped.issues).toContainEqual(expect.objectContaining({ code: 'missing-field' }));
  });

  it('is converted from files, and its quarantine can be mended', async () => {
    const bytes = tableWorkbook(
      [...table, ['', 'V0003', '<c s="1"><v>45419</v></c>', '<c t="e"><v>#N/A</v></c>']],
      { formats },
    );
    const out = join(temporaryFolder(), 'out');
    const { summary } = await convert({
      mapping: mapping,
      inputs: [fileOf(bytes)],
      out,
      to: 'exams',
      ledger: true,
    });
    expect(summary?.exams).toEqual({ read: 3, converted: 2, quarantined: 1 });
    const [entry] = lines(out, 'quarantine.ndjson') as { raw: string; at: object; notes: object }[];
    expect(entry).toMatchObject({
      raw: ',V0003,2024-05-07,#N/A\n',
      at: { sheet: 'Exams', line: 4 },
    });
    expect(lines(out, 'issues.ndjson')).toContainEqual(
      expect.objectContaining({ code: 'workbook-feature', file: 'exams.xlsx' }),
    );
    const mended = join(temporaryFolder(), 'mended.ndjson');
    writeFileSync(mended, `${JSON.stringify({ ...entry, raw: 'E3,V0003,2024-05-07,#N/A\n' })}\n`);
    const again = join(temporaryFolder(), 'again');
    await convert({
      mapping: mapping,
      inputs: [mended],
      inputKind: 'quarantine',
      out: again,
      to: 'exams',
      ledger: true,
    });
    expect(lines(again, 'exams.ndjson')).toHaveLength(1);
    expect(lines(again, 'ledger.ndjson')).toMatchObject([
      {
        fields: expect.arrayContaining([
          expect.objectContaining({
            name: 'MRD1_R',
            fate: 'verbatim',
            at: { sheet: 'Exams', line: 4, column: 4, cell: 'D4' },
          }),
        ]),
      },
    ]);
  });

  it('is scanned, suggested for, compared, tried and tested like any table', async () => {
    const bytes = tableWorkbook(table, { formats });
    const file = fileOf(bytes);
    const scan = await scanFile(file);
    expect(scan.source).toEqual({ syntax: 'xlsx', sheet: 'Exams' });
    expect(scan.fields.map(({ name }) => name)).toEqual(heading);
    expect((await suggestFromFile(file)).mapping).toMatchObject({ source: { syntax: 'xlsx' } });
    expect((await misfitsOfFile(file, mapping)).missing).toEqual([]);
    const { text } = await workbookText(bytes);
    expect(dryRun(text, mapping).exams.map(({ exam }) => exam?.id)).toHaveLength(2);
    const tests = [{ source: csv.split('\n'), expect: { exams: 2 } }];
    expect(testMapping({ ...mapping, tests }).results[0]?.failures).toEqual([]);
  });

  it('says for which syntax a mapping is', async () => {
    const { issues } = await fromXlsx(tableWorkbook(table), csvMapping);
    expect(issues).toMatchObject([{ facts: { reason: 'syntax', code: 'xlsx' } }]);
  });
});
