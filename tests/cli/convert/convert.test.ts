import { copyFileSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { cli } from '../../../src/cli/cli.ts';
import { validateBundle } from '../../../src/validate/versions/r4.ts';
import { zipOf } from '../../convert/bulk/archive.ts';
import { messyDocuments } from '../../convert/cda/messy-documents.ts';
import { cdaSuite } from '../../convert/cda/suite.ts';
import { messyRows } from '../../convert/csv/messy-rows.ts';
import { csvMapping } from '../../convert/csv/suite.ts';
import { inFolder, run } from '../in-process.ts';

const example = join(import.meta.dirname, '../../../examples/convert');
const mapping = join(example, 'vineyard.mapping.json');
const table = readFileSync(join(example, 'vineyard.csv'), 'utf8');
const [header = '', ...rows] = table.trimEnd().split('\n');

const json = (text: string) =>
  text
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line));

describe('convert --lines', () => {
  const line = (raw: string, id: number): string =>
    JSON.stringify({ id, raw, header: header.split(';') });

  it('answers each record by one line, whatever it holds', async () => {
    const stdin = [...rows.map(line), 'no JSON', '{"id":99}'].join('\n');
    const { code, out, err } = await run(['convert', '--lines', '--mapping', mapping], { stdin });
    expect({ code, err }).toEqual({ code: 4, err: '' });
    const answers = json(out);
    expect(answers.map(({ id }) => id)).toEqual([0, 1, 2, 3, 4, 5, undefined, 99]);
    expect(answers.filter(({ result }) => result !== undefined).length).toBe(4);
    for (const { result, quarantine } of answers) {
      if (quarantine === undefined) expect(validateBundle(result).valid).toBe(true);
      else expect(quarantine.issues.length).toBeGreaterThan(0);
    }
  });

  it('answers before the next record comes', async () => {
    const out: string[] = [];
    async function* stdin(): AsyncGenerator<Uint8Array> {
      for (const [at, row] of rows.entries()) {
        expect(out.length).toBe(at);
        yield Buffer.from(`${line(row, at)}\n`);
      }
    }
    await cli(['convert', '--lines', '--mapping', mapping, '--to', 'exams'], {
      stdin: stdin(),
      interactive: false,
      out: async (text) => void out.push(text),
      err: async () => {},
      errIsTerminal: false,
      now: () => new Date(0),
      cwd: '/',
    });
    expect(out.length).toBe(rows.length);
  });

  it('speaks the language asked for', async () => {
    const argv = ['convert', '--lines', '--mapping', mapping, '--language', 'de'];
    const { out } = await run(argv, { stdin: line(rows[0] ?? '', 1) });
    expect(out).toContain('"language":"de"');
  });

  it.each([
    [['--out', 'x'], '--lines does not go with --out'],
    [['--jobs', '2'], '--lines does not go with --jobs'],
    [['--suggest'], '--lines does not go with --suggest'],
    [['file.csv'], 'with --lines, only standard input is read'],
  ])('%j is a wrong call', async (more, text) => {
    const argv = ['convert', '--lines', '--mapping', mapping, ...more];
    const { code, err } = await run(argv, { stdin: '' });
    expect(code).toBe(2);
    expect(err).toContain(text);
  });
});

describe('convert --suggest', () => {
  it('writes a mapping, with what is open beside it, and no value of the sample', async () => {
    await inFolder(async (cwd) => {
      copyFileSync(join(example, 'vineyard.csv'), join(cwd, 'sample.csv'));
      const { code, out, err } = await run(['convert', 'sample.csv', '--suggest'], { cwd });
      expect(code).toBe(1);
      expect(out).toContain('// Still open:');
      expect(err).toMatch(/^sample\.csv: warning .*unmapped-field/m);
      const made = JSON.parse(out.replace(/^\/\/.*$/gm, ''));
      expect(made.source).toEqual({ syntax: 'csv', delimiter: ';' });
      expect(made.fields.MRD1_R).toMatchObject({ kind: 'measurement', side: 'right' });
      expect(out + err).not.toContain('press house');
    });
  });

  it('sees what kind of export it is', async () => {
    await inFolder(async (cwd) => {
      const suggest = async (text: string, ...more: string[]): Promise<unknown> => {
        writeFileSync(join(cwd, 'sample'), text);
        const { out } = await run(['convert', 'sample', '--suggest', ...more], { cwd });
        return JSON.parse(out.replace(/^\/\/.*$/gm, '')).source;
      };
      expect(await suggest('\x0bMSH|^~\\&|A|B|||202402050930||ORU^R01|1|P|2.5\r')).toEqual({
        syntax: 'hl7v2',
      });
      expect(await suggest(messyDocuments(1, 2).text)).toEqual({ syntax: 'cda' });
      expect(await suggest('<export><exam/></export>')).toEqual({ syntax: 'xml', exam: '' });
      const source = { syntax: 'xml', exam: 'export/exam' };
      writeFileSync(join(cwd, 'source.json'), JSON.stringify({ source }));
      const xml = '<export><exam><MRD1_R>4</MRD1_R></exam></export>';
      expect(await suggest(xml, '--mapping', 'source.json')).toEqual(source);
    });
    expect(cdaSuite.mapping.source).toEqual({ syntax: 'cda' });
  });
});

describe('convert', () => {
  it('takes a mended quarantine file back in', async () => {
    await inFolder(async (cwd) => {
      const call = ['convert', '--mapping', mapping, '--to', 'exams'];
      const first = await run([...call, join(example, 'vineyard.csv'), '--out', 'out'], { cwd });
      expect(first.out).toContain('6 exam(s) read: 4 converted, 2 in quarantine');
      const quarantine = readFileSync(join(cwd, 'out/quarantine.ndjson'), 'utf8');
      const mended = quarantine.replace('31/02/2024', '29/02/2024').replace('V420', 'V0420');
      writeFileSync(join(cwd, 'mended.ndjson'), mended);
      const second = await run([...call, 'mended.ndjson', '--quarantine', '--out', 'again'], {
        cwd,
      });
      expect(second.out).toContain('2 exam(s) read: 2 converted, 0 in quarantine');
      expect(second.code).toBe(0);
      const ids = json(readFileSync(join(cwd, 'again/exams.ndjson'), 'utf8')).map(({ id }) => id);
      expect(ids).toEqual(['vineyard.K-104', 'vineyard.K-105']);
    });
  });

  it('says in one line that its output can not stand there', async () => {
    await inFolder(async (cwd) => {
      writeFileSync(join(cwd, 'a-file'), '');
      const call = ['convert', join(example, 'vineyard.csv'), '--mapping', mapping, '--out'];
      for (const out of ['a-file', 'a-file/below', 'x'.repeat(300)]) {
        const { code, err } = await run([...call, out], { cwd });
        expect(code).toBe(2);
        expect(err).toMatch(/^face-neck-fhir: cannot [^\n]+\n$/);
        expect(err).not.toContain('fault');
      }
    });
  });

  it('sums up as text and as JSON', async () => {
    await inFolder(async (cwd) => {
      const argv = ['convert', join(example, 'vineyard.csv'), '--mapping', mapping, '--out', 'out'];
      const { out } = await run(argv, { cwd });
      expect(readFileSync(join(cwd, 'out/summary.txt'), 'utf8')).toBe(out);
      const summary = JSON.parse(readFileSync(join(cwd, 'out/summary.json'), 'utf8'));
      const { read, converted, quarantined } = summary.exams;
      expect(converted + quarantined).toBe(read);
      const { fields, ...fates } = summary.fields;
      expect(Object.values<number>(fates).reduce((sum, count) => sum + count, 0)).toBe(fields);
      expect(summary.reasons).toEqual({ 'damaged-value': 1, 'impossible-date': 1 });
      expect(out).toContain('1  impossible-date');
    });
  });

  it('goes on past inputs that are made to harm', async () => {
    await inFolder(async (cwd) => {
      const bomb = Buffer.alloc(24 * 1024 * 1024, `${'x'.repeat(4095)}\n`);
      const files = new Map<string, Buffer>([
        ['a-bomb.csv.gz', gzipSync(bomb)],
        ['b-bomb.zip', zipOf([{ name: 'bomb.csv', content: bomb }])],
        ['c-slip.zip', zipOf([{ name: '../../slip.csv', content: Buffer.from(table) }])],
        ['d-quote.csv', Buffer.from(`${header}\n"open;V0417\n`)],
        ['e-good.csv', Buffer.from(table)],
      ]);
      mkdirSync(join(cwd, 'in'));
      for (const [name, content] of files) writeFileSync(join(cwd, 'in', name), content);
      const argv = ['convert', 'in', '--mapping', mapping, '--to', 'exams', '--out', 'out'];
      const { code, out } = await run(argv, { cwd });
      expect(code).toBe(1);
      expect(out).toContain('unclosed-quote');
      const { issues, exams } = JSON.parse(readFileSync(join(cwd, 'out/summary.json'), 'utf8'));
      const unreadable = Object.keys(issues).filter((name) => name.includes('unreadable-input'));
      expect(unreadable.length).toBe(3);
      expect(exams.converted).toBe(4);
      const quarantine = json(readFileSync(join(cwd, 'out/quarantine.ndjson'), 'utf8'));
      expect(quarantine.find(({ file }) => file === 'd-quote.csv').raw).toBe('"open;V0417\n');
      expect(readdirSync(cwd).sort()).toEqual(['in', 'out']);
    });
  });

  it.each([
    [true, 250, /^\r\[[#.]{20}\] \d+ % {2}\d+ exams {2}\d+\/s {2}.* left./],
    [false, 60_000, /^\d+ % {2}\d+ exams {2}\d+\/s {2}.* left\n/],
    [false, 250, /^$/],
  ])('progress: terminal %s, a look at the clock each %i ms', async (errIsTerminal, step, told) => {
    await inFolder(async (cwd) => {
      writeFileSync(join(cwd, 'a.csv'), messyRows(1, 100).text);
      writeFileSync(join(cwd, 'm.json'), JSON.stringify(csvMapping));
      let time = 0;
      let err = '';
      await cli(['convert', 'a.csv', '--mapping', 'm.json', '--out', 'out', '--to', 'exams'], {
        stdin: (async function* () {})(),
        interactive: true,
        out: async () => {},
        err: async (text) => {
          err += text;
        },
        errIsTerminal,
        now: () => {
          time += step;
          return new Date(time);
        },
        cwd,
      });
      expect(err).toMatch(told);
    });
  });
});
