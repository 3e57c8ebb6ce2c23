import { describe, expect, it } from 'vitest';
import { workbookText } from '../../../src/convert/bulk/from-xlsx.ts';
import { zipOf } from '../bulk/archive.ts';
import { rowsOf, tableWorkbook, workbookOf } from './workbook.ts';

async function reasonsOf(bytes: Uint8Array): Promise<unknown[]> {
  const { issues } = await workbookText(bytes);
  return issues.filter(({ severity }) => severity === 'error').map(({ facts }) => facts.reason);
}

/** The signature of a compound file (MS-CFB 2.2) and the name of a stream. */
function compoundFile(stream: string): Buffer {
  const signature = Buffer.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]);
  return Buffer.concat([signature, Buffer.alloc(1024), Buffer.from(stream, 'utf16le')]);
}

const sheet = (rows: string, after = '') => ({ name: 'Exams', rows, after });

describe('a workbook that cannot be read', () => {
  it.each([
    ['with a password', compoundFile('EncryptedPackage'), 'encrypted-workbook'],
    ['of the older binary form', compoundFile('Workbook'), 'binary-workbook'],
    ['that is a compound file of another kind', compoundFile('WordDocument'), 'not-workbook'],
    ['that is a text', Buffer.from('id,date\n1,2\n'), 'not-workbook'],
    ['that is nothing', Buffer.alloc(0), 'not-workbook'],
    [
      'that is another archive',
      zipOf([{ name: 'a.txt', content: Buffer.from('a') }]),
      'not-workbook',
    ],
    ['without any cell', workbookOf({ sheets: [sheet('')] }), 'empty-workbook'],
    ['without its sheet', workbookOf({ sheets: [] }), 'not-workbook'],
    [
      'of the newer binary form',
      tableWorkbook([['a']], {
        entries: {
          '_rels/.rels':
            '<Relationships><Relationship Id="a" Type="x/officeDocument" Target="xl/workbook.bin"/></Relationships>',
        },
      }),
      'binary-workbook',
    ],
    [
      'with rows out of order',
      workbookOf({ sheets: [sheet('<row r="2"><c><v>1</v></c></row><row r="1"/>')] }),
      'damaged-workbook',
    ],
    [
      'with a cell of another row',
      workbookOf({ sheets: [sheet('<row r="2"><c r="A1"><v>1</v></c></row>')] }),
      'damaged-workbook',
    ],
    [
      'with two cells in one place',
      workbookOf({
        sheets: [sheet('<row r="1"><c r="A1"><v>1</v></c><c r="A1"><v>2</v></c></row>')],
      }),
      'damaged-workbook',
    ],
    [
      'that breaks off',
      workbookOf({ sheets: [sheet('<row r="1"><c><v>1</v></c></row><row>')] }),
      'damaged-workbook',
    ],
    [
      'with more rows than there can be',
      workbookOf({ sheets: [sheet('<row r="1"><c><v>1</v></c></row><row r="1048577"/>')] }),
      'sheet-rows',
    ],
    [
      'with a document type',
      workbookOf({
        sheets: [sheet('')],
        entries: {
          'xl/worksheets/sheet1.xml':
            '<!DOCTYPE x [<!ENTITY a "aaaa">]><worksheet><sheetData><row><c><v>&a;</v></c></row></sheetData></worksheet>',
        },
      }),
      'damaged-workbook',
    ],
    [
      'with an entity of its own',
      workbookOf({ sheets: [sheet('<row><c><v>1</v></c><c><v>&own;</v></c></row>')] }),
      'damaged-workbook',
    ],
  ])('%s', async (_, bytes, reason) => {
    expect(await reasonsOf(bytes)).toEqual([reason]);
  });

  it('damaged anywhere gives issues and no throw, and what came before stands', async () => {
    const whole = tableWorkbook(Array.from({ length: 40 }, (_, at) => [`id-${at}`, at, 'present']));
    for (let at = 0; at < whole.length; at += 17) {
      const bytes = Buffer.from(whole);
      bytes[at] = (bytes[at] ?? 0) ^ 0x55;
      await workbookText(bytes);
      await workbookText(whole.subarray(0, at));
    }
    const rows = `${rowsOf([['id'], ['1'], ['2']])}<row><c`;
    const { text, issues } = await workbookText(workbookOf({ sheets: [sheet(rows)] }));
    expect(text).toBe('#at {"sheet":"Exams"}\nid\n1\n2\n');
    expect(issues.map(({ facts }) => facts.reason)).toEqual(['sheet-read', 'damaged-workbook']);
  });

  it('that grows beyond any text, or holds little in very much space, ends with an issue', async () => {
    const large = `<row><c t="inlineStr"><is><t>a</t></is></c></row>${`<!--${' '.repeat(100_000)}-->`.repeat(100)}`;
    expect(await reasonsOf(workbookOf({ sheets: [sheet(large)] }))).toEqual(['input']);
    const corner = Array.from(
      { length: 200 },
      (_, at) => `<row r="${at + 1}"><c r="XFD${at + 1}"><v>1</v></c></row>`,
    );
    expect(await reasonsOf(workbookOf({ sheets: [sheet(corner.join(''))] }))).toEqual([
      'damaged-workbook',
    ]);
  });

  it('has a budget', async () => {
    const bytes = tableWorkbook([['a'.repeat(200)]]);
    const { text, issues } = await workbookText(bytes, {}, { budget: { characters: 100 } });
    expect(text).toBe('');
    expect(issues.at(-1)).toMatchObject({
      code: 'too-large',
      facts: { reason: 'sheet', maximum: 100 },
    });
  });
});
