import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { workbookText } from '../../src/convert/bulk/from-xlsx.ts';
import { readSample } from '../../src/convert/suggest/guess/sample.ts';
import { xlsxReader } from '../../src/convert/xlsx/reader.ts';
import { ask, type Program, workbookWriter } from './programs.ts';

// Workbooks that openpyxl writes, read by it and by us: the same cells.

interface Written {
  readonly id: string;
  readonly base64: string;
  readonly read: readonly (readonly string[])[];
}

let writer: Program;
beforeAll(async () => {
  writer = await workbookWriter();
});

const texts = fc.string({ unit: 'grapheme', maxLength: 20 }).filter(canBeWritten);
const numbers = fc.oneof(
  fc.integer({ min: -1_000_000, max: 1_000_000 }),
  fc.integer({ min: -99_999, max: 99_999 }).map((whole) => whole / 100),
);
const days = fc
  .date({
    min: new Date('1904-01-02T00:00:00Z'),
    max: new Date('2100-01-01T00:00:00Z'),
    noInvalidDate: true,
  })
  .map((date) => ({
    date: date.toISOString().slice(0, 19),
    format: 'yyyy\\-mm\\-dd\\ hh:mm:ss',
  }));
const cells = fc.oneof(texts, numbers, fc.boolean(), days, fc.constant(null));

/** XML 1.0 has no control characters, and a text that begins with `=` would be a formula. */
function canBeWritten(text: string): boolean {
  return !/[\p{Cc}\p{Cs}\uFFFE\uFFFF]|^=|_x[0-9A-Fa-f]{4}_/u.test(text) && text.trim() !== '';
}

async function cellsOf({ base64 }: Written): Promise<string[][]> {
  const { text, issues } = await workbookText(Buffer.from(base64, 'base64'));
  expect(issues.filter(({ severity }) => severity === 'error')).toEqual([]);
  // Read with the first row as data: each row has as many cells as the widest.
  const header = Array.from({ length: 6 }, (_, at) => `c${at}`);
  return readSample(text, xlsxReader({ syntax: 'xlsx', header })).records.map(({ fields }) =>
    fields.map((field) => field.text),
  );
}

describe.each([1900, 1904])('the %s system', (epoch) => {
  it('gives the cells that openpyxl reads', async () => {
    const rows = fc.array(fc.tuple(fc.constant('row'), cells, cells, cells, cells, cells), {
      minLength: 1,
      maxLength: 8,
    });
    const requests = fc
      .sample(rows, { numRuns: 300, seed: 7 })
      .map((table, id) => ({ id: String(id), epoch, rows: table }));
    const answers = await ask<Written>(writer, requests);
    expect(answers).toHaveLength(requests.length);
    for (const answer of answers) {
      // openpyxl reads as many cells as the widest row has.
      const read = answer.read.map((row) => [...row, '', '', '', '', ''].slice(0, 6));
      expect(await cellsOf(answer)).toEqual(read);
    }
  });
});

describe('formats that a workbook names by number', () => {
  // openpyxl writes these codes as the numbers 14 to 22 and 45 to 47.
  it.each([
    ['mm-dd-yy', '2024-05-06'],
    ['d-mmm-yy', '2024-05-06'],
    ['mmm-yy', '2024-05'],
    ['m/d/yy h:mm', '2024-05-06T10:30:00'],
  ])('%s shows %s', async (format, expected) => {
    const date = expected.includes('T') ? '2024-05-06T10:30:00' : '2024-05-06';
    const rows = [[{ date, format }]];
    const [answer] = await ask<Written>(writer, [{ id: 'a', epoch: 1900, rows }]);
    const { text } = await workbookText(Buffer.from(answer?.base64 ?? '', 'base64'));
    expect(text).toBe(`#at {"sheet":"Sheet"}\n${expected}\n`);
  });

  it('are known for what they are', async () => {
    const rows = [[{ time: '10:05:00' }, { formula: '=A1' }, { error: '#N/A' }]];
    const [answer] = await ask<Written>(writer, [{ id: 'a', epoch: 1900, rows }]);
    const { text } = await workbookText(Buffer.from(answer?.base64 ?? '', 'base64'));
    expect(text).toBe(
      '#at {"sheet":"Sheet","notes":{"no-result":[2],"error-cell":[3]}}\n10:05:00,=A1,#N/A\n',
    );
  });
});
