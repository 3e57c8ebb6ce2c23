import { describe, expect, it } from 'vitest';
import { workbookText } from '../../../src/convert/bulk/from-xlsx.ts';
import { numberForm } from '../../../src/convert/xlsx/number-format.ts';
import { serialDate } from '../../../src/convert/xlsx/serial-date.ts';
import { rowsOf, tableWorkbook, workbookOf } from './workbook.ts';

const cell = (attributes: string, inside: string): string => `<c ${attributes}>${inside}</c>`;

async function textOf(
  table: readonly (readonly (string | number)[])[],
  more: Parameters<typeof tableWorkbook>[1] = {},
): Promise<string> {
  return (await workbookText(tableWorkbook(table, more))).text;
}

const head = '#at {"sheet":"Exams"}\n';

describe('cells of a sheet', () => {
  it('keeps texts, digits of texts, and the shortest form of numbers', async () => {
    const table = [
      ['00123', 9.5, '<c><v>36.600000000000001</v></c>', '<c><v>5.0000000000000001E-3</v></c>'],
      ['a, "b"', '<c t="b"><v>1</v></c>', '<c t="d"><v>2024-05-06</v></c>', ' c '],
    ];
    expect(await textOf(table)).toBe(
      `${head}00123,9.5,36.6,0.005\n"a, ""b""",TRUE,2024-05-06, c \n`,
    );
  });

  it('reads shared strings with runs, escapes and without pronunciation', async () => {
    const strings = [
      '<r><t>Mole </t></r><r><t xml:space="preserve">left</t></r>',
      '<t>one_x000A_two</t><rPh sb="0" eb="1"><t>WAN</t></rPh>',
    ];
    const table = [[cell('t="s"', '<v>0</v>'), cell('t="s"', '<v>1</v>')]];
    expect(await textOf(table, { strings })).toBe(`${head}Mole left,"one\ntwo"\n`);
  });

  it('takes what a format shows: percent, leading zeros, time that goes on', async () => {
    const formats = ['0.0%', '00000', '[h]:mm', '0.0&quot; mm&quot;'];
    const table = [
      [
        cell('s="1"', '<v>0.125</v>'),
        cell('s="2"', '<v>42</v>'),
        cell('s="3"', '<v>1.5</v>'),
        cell('s="4"', '<v>9.50</v>'),
      ],
    ];
    expect(await textOf(table, { formats })).toBe(`${head}12.5%,00042,36:00:00,9.50\n`);
  });

  it('never takes an error, a formula without value, lost digits or a made-up day for a value', async () => {
    const formats = ['d-mmm', 'yyyy-mm-dd'];
    const table = [
      [
        cell('t="e"', '<v>#N/A</v>'),
        cell('', '<f>B1*2</f><v></v>'),
        cell('', '<v>12345678901234567</v>'),
        cell('s="1"', '<v>45352</v>'),
        cell('s="2"', '<v>60</v>'),
        cell('t="s"', '<v>7</v>'),
        cell('', '<f>1+1</f><v>2</v>'),
        cell('t="str"', '<f>A1&amp;""</f><v></v>'),
      ],
    ];
    expect(await textOf(table, { formats })).toBe(
      `#at {"sheet":"Exams","notes":{"error-cell":[1,6],"no-result":[2],"lost-digits":[3],"no-date":[4,5],"formula":[7,8]}}\n#N/A,=B1*2,12345678901234567,45352,60,[shared string 7],2\n`,
    );
  });

  it('says in which row a row stands, and reads cells without places', async () => {
    const rows = '<row r="3"><c r="B3"><v>1</v></c></row><row><c><v>2</v></c></row>';
    const { text } = await workbookText(workbookOf({ sheets: [{ name: 'Exams', rows }] }));
    expect(text).toBe('#at {"sheet":"Exams","row":3}\n,1\n2\n');
  });
});

// Worked examples of ECMA-376 part 1, 18.17.4.1 (from memory): 1900 has day 1 on 1 January 1900, 1904 day
// 0 on 1 January 1904. tests/readers holds many more to another reader.
describe('days', () => {
  const shown = { form: 'date', year: true, month: true, day: true, time: false } as const;
  it.each([
    [1, false, '1900-01-01'],
    [59, false, '1900-02-28'],
    [61, false, '1900-03-01'],
    [45418, false, '2024-05-06'],
    [45418.4375, false, '2024-05-06T10:30:00'],
    [0, true, '1904-01-01'],
    [43956, true, '2024-05-06'],
    [0, false, undefined],
    [60, false, undefined],
    [-1, false, undefined],
    [2958466, false, undefined],
  ])('day %s, 1904 %s, is %s', (serial, is1904, expected) => {
    expect(serialDate(serial, shown, is1904)).toBe(expected);
  });

  it('is as precise as its format', () => {
    const day = 45418;
    expect(serialDate(day, { ...shown, day: false }, false)).toBe('2024-05');
    expect(serialDate(day, { ...shown, day: false, month: false }, false)).toBe('2024');
    expect(serialDate(day, { ...shown, time: true }, false)).toBe('2024-05-06T00:00:00');
    // A day and month without a year: the spreadsheet has added the year.
    expect(serialDate(day, { ...shown, year: false }, false)).toBeUndefined();
  });

  it.each([
    ['General', 'number'],
    ['0.00E+00', 'number'],
    ['#,##0.0;[Red]-#,##0.0', 'number'],
    ['0.0" mm"', 'number'],
    ['[$-409]d-mmm-yy', 'date'],
    ['yyyy\\-mm\\-dd\\ hh:mm', 'date'],
    ['h:mm AM/PM', 'date'],
    ['[mm]:ss', 'elapsed'],
    ['0%', 'percent'],
  ])('%s is a %s', (code, form) => {
    expect(numberForm(code).form).toBe(form);
  });

  it('tells minutes from months', () => {
    expect(numberForm('h:mm')).toMatchObject({ month: false, time: true });
    expect(numberForm('mm:ss')).toMatchObject({ month: false, time: true });
    expect(numberForm('dd/mm/yyyy hh:mm')).toMatchObject({ month: true, time: true });
  });
});

describe('what is told of a workbook', () => {
  it('tells the sheet, formulas, merged areas, hidden rows and columns with the first place', async () => {
    const rows =
      '<row r="1"><c r="A1"><v>1</v></c><c r="C1"><v>3</v></c></row>' +
      '<row r="2" hidden="1"><c r="A2"><f>A1</f><v>1</v></c></row>';
    const sheet = {
      name: 'Exams',
      rows,
      before: '<cols><col min="3" max="3" hidden="1"/></cols>',
      after: '<mergeCells count="1"><mergeCell ref="A1:B1"/></mergeCells>',
    };
    const { issues } = await workbookText(workbookOf({ sheets: [sheet] }));
    expect(issues.map(({ facts, source }) => [facts?.reason, source])).toEqual([
      ['sheet-read', { sheet: 'Exams', line: 1 }],
      ['formulas', { sheet: 'Exams', line: 2, cell: 'A2' }],
      ['merged-cells', { sheet: 'Exams', line: 1, cell: 'A1' }],
      ['hidden-rows', { sheet: 'Exams', line: 2, cell: 'A2' }],
      ['hidden-columns', { sheet: 'Exams', line: 1, cell: 'C' }],
    ]);
  });

  it('reads no sheet where several hold cells and none is named; empty ones do not count', async () => {
    const one = { name: 'One', rows: rowsOf([['a']]) };
    const two = { name: 'Two', rows: rowsOf([['b']]), hidden: true };
    const empty = { name: 'Empty', rows: '<row r="1"><c r="A1" s="0"/></row>' };
    const both = workbookOf({ sheets: [one, empty, two] });
    expect(await workbookText(both)).toMatchObject({
      text: '',
      issues: [{ facts: { reason: 'several-sheets', count: 2 }, severity: 'error' }, {}, {}],
    });
    expect((await workbookText(both, { sheet: 'Two' })).text).toBe('#at {"sheet":"Two"}\nb\n');
    expect((await workbookText(both, { sheet: 1 })).text).toBe('#at {"sheet":"One"}\na\n');
    expect((await workbookText(workbookOf({ sheets: [empty, two] }))).issues).toMatchObject([
      { facts: { reason: 'hidden-sheet' }, severity: 'warning' },
    ]);
    for (const sheet of ['Three', 9]) {
      expect((await workbookText(both, { sheet })).issues).toMatchObject([
        { facts: { reason: 'no-sheet' } },
      ]);
    }
    expect((await workbookText(both, { sheet: 2 })).issues).toMatchObject([
      { facts: { reason: 'empty-workbook' } },
    ]);
  });
});
