import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { scanExport, scanText } from '../../../src/convert/suggest/index.ts';
import { sampleMapping, writeExams } from '../../../src/testing/formats/formats.ts';
import { sampleExam } from '../../../src/testing/sample-exam.ts';
import { inFolder, run } from '../../cli/in-process.ts';
import { heldOutTables } from '../suggest/tables.ts';

const table = [
  'exam no;Patient;Nachname;dob;day;MRD1 R (mm);MRD1 L (mm);Seite;Ptosis R;Kommentar;shoe',
  'E1;V07;Weinlaub;1980-02-03;03/02/2024;4,5;4;R;yes;müde seit dem Umzug, sonst gut, will bald wieder kommen und fragen;42',
  'E2;V08;Hafer;1981-02-03;04/02/2024;3,5;4;L;yes;;43',
  'E3;V09;Hafer;1982-02-03;05/02/2024;;4;L;odd;;43',
].join('\n');

/** Every text of the cells, without those that are a side, a unit or a digit. */
const cells = table
  .split('\n')
  .slice(1)
  .flatMap((row) => row.split(';'))
  .filter((cell) => cell.length > 2);

describe('scan of an export', () => {
  const scan = scanExport(table);
  const field = (name: string) => scan.fields.find((one) => one.name === name);

  it('counts what each field holds', () => {
    expect(scan).toMatchObject({ exams: 3, records: 3, unread: 0, headless: false });
    expect(field('MRD1 R (mm)')).toMatchObject({
      ...{ filled: 2, blank: 1, different: 2, looks: 'numbers', shortest: 3, longest: 3 },
      shapes: [{ text: '9,9', count: 2 }],
      frequencies: [1, 1],
    });
    expect(field('Nachname')).toMatchObject({ frequencies: [2, 1], looks: 'words' });
    expect(field('Kommentar')).toMatchObject({ blank: 2, looks: 'long-texts' });
  });

  it('tells likely dates and sides, and leaves day and month open', () => {
    expect(field('dob')).toMatchObject({ looks: 'dates', dates: ['YYYY-MM-DD'] });
    expect(field('day')?.dates).toEqual(['DD/MM/YYYY', 'MM/DD/YYYY']);
    expect(field('Seite')?.looks).toBe('sides');
    expect(scan.proposals.find(({ name }) => name === 'day')?.questions).toEqual([
      { question: 'day-or-month', forms: ['DD/MM/YYYY', 'MM/DD/YYYY'] },
    ]);
  });

  it('tells languages and what nothing is proposed for', () => {
    expect(scan.languages.map(({ language }) => language)).toContain('en');
    expect(scan.leftovers).toEqual(['Seite', 'shoe']);
    const german = scanExport('Untersuchungsnr;Augenbraue;Schläfe rechts\n1;normal;auffällig\n');
    expect(german.languages[0]?.language).toBe('de');
  });

  it('holds no value unless that is asked, and then none that says who somebody is', () => {
    const told = JSON.stringify(scan) + scanText(scan);
    expect(cells.filter((cell) => told.includes(cell))).toEqual([]);
    const shown = JSON.stringify(scanExport(table, { values: true }));
    expect(cells.filter((cell) => shown.includes(JSON.stringify(cell)))).toEqual(
      expect.arrayContaining(['4,5', 'yes', 'odd']),
    );
    expect(shown).not.toMatch(/Weinlaub|Hafer|V07|1980-02-03|Umzug/);
  });

  it('sees that a table has no headings, and calls columns by their place', () => {
    const scan = scanExport('E1;Weinlaub;4,5;yes\nE2;Hafer;3,5;yes\n');
    expect(scan).toMatchObject({ headless: true, exams: 2 });
    expect(scan.fields.map(({ name }) => name)).toEqual(['#1', '#2', '#3', '#4']);
    expect(JSON.stringify(scan)).not.toContain('Weinlaub');
  });

  it.each(['hl7v2', 'cda', 'xml'] as const)('scans %s', (format) => {
    const exams = [sampleExam(3, { size: 'usual' }), sampleExam(4, { size: 'usual' })];
    const { source } = sampleMapping(format);
    const scan = scanExport(writeExams(exams, format), { source });
    expect(scan.exams).toBe(2);
    expect(scan.fields.length).toBeGreaterThan(10);
    expect(scan.unread).toBe(0);
  });

  it('gives every table of the bank a line for each column, and no cell of it', () => {
    for (const { name, text, columns } of heldOutTables) {
      const scan = scanExport(text);
      const names = scan.fields.map((one) => one.name);
      expect({ name, missing: Object.keys(columns).filter((one) => !names.includes(one)) }).toEqual(
        {
          name,
          missing: [],
        },
      );
    }
  });

  it('ends where its budget is spent, and throws for no text', () => {
    expect(scanExport(table, { budget: { work: 5 } }).issues[0]?.facts).toMatchObject({
      reason: 'work',
    });
    expect(scanExport(table, { budget: { characters: 5 } }).issues[0]?.code).toBe('too-large');
    for (const text of ['', '\n\n', '"', '<', '<a', 'MSH|', '\u0000', ';;;\n;;;']) {
      expect(scanExport(text).proposals.filter(({ target }) => target)).toEqual([]);
    }
  });
});

describe('convert --scan', () => {
  it('writes the scan as text and as JSON', async () => {
    await inFolder(async (cwd) => {
      writeFileSync(join(cwd, 'a.csv'), table);
      const text = await run(['convert', 'a.csv', '--scan'], { cwd });
      expect(text).toMatchObject({ code: 0, err: '' });
      expect(text.out).toContain('could be: measurement mrd1 right mm (1.00)');
      const json = await run(['convert', 'a.csv', '--scan', '--format', 'json', '--values'], {
        cwd,
      });
      expect(JSON.parse(json.out)).toEqual(
        JSON.parse(JSON.stringify(scanExport(table, { values: true }))),
      );
      expect((await run(['convert', '--scan'], { cwd })).code).toBe(2);
    });
  });
});
