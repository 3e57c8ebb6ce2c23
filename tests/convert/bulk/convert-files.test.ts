import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { convertFiles } from '../../../src/convert/bulk/convert-files.ts';
import { fromCsv } from '../../../src/convert/csv/from-csv.ts';
import { parseExam } from '../../../src/model/parse-exam.ts';
import { validateBundle } from '../../../src/validate/versions/r4.ts';
import { sampled } from '../../sampled.ts';
import { messyRows } from '../csv/messy-rows.ts';
import { csvMapping } from '../csv/suite.ts';
import { contents, convert, io, lines, temporaryFolder } from './folder.ts';

const heading = 'exam_no,worker_no,exam_date,MRD1_R,cheek_L,node_R,remark';

function input(name: string, content: string | Buffer): string {
  const path = join(temporaryFolder(), name);
  writeFileSync(path, content);
  return path;
}

function out(): string {
  return join(temporaryFolder(), 'out');
}

describe('convertFiles', () => {
  it('gives what fromCsv gives, and accounts for every exam and field', async () => {
    const { text, units } = messyRows(7, 300);
    const whole = fromCsv(text, csvMapping);
    const folder = out();
    const { summary } = await convert({
      mapping: csvMapping,
      inputs: [input('a.csv', text)],
      out: folder,
      to: 'exams',
      ledger: true,
    });
    expect(summary?.exams).toEqual({
      read: units,
      converted: whole.exams.length,
      quarantined: whole.quarantine.length,
    });
    expect(summary?.fields).toEqual(whole.ledger);
    expect(lines(folder, 'exams.ndjson')).toEqual(whole.exams.map(({ exam }) => exam));
    expect(lines(folder, 'ledger.ndjson')).toEqual(
      whole.exams.map(({ exam, ledger }) => ({ exam: exam.id, fields: ledger })),
    );
    expect(lines(folder, 'quarantine.ndjson')).toEqual(
      whole.quarantine.map((entry) => ({ file: 'a.csv', ...entry })),
    );
    const told = whole.exams.reduce((sum, { issues }) => sum + issues.length, 0);
    expect(lines(folder, 'issues.ndjson').length).toBe(told + whole.issues.length);
    expect(JSON.parse(readFileSync(join(folder, 'summary.json'), 'utf8'))).toEqual(summary);
    expect(readFileSync(join(folder, 'summary.txt'), 'utf8')).toContain(
      `${units} exam(s) read: ${whole.exams.length} converted`,
    );
  });

  it('writes valid bundles, or a file for each resource type', async () => {
    const path = input('a.csv', messyRows(8, 60).text);
    const [bundles, resources] = [out(), out()];
    const first = await convert({ mapping: csvMapping, inputs: [path], out: bundles });
    const found = lines(bundles, 'bundles.ndjson');
    expect(found.length).toBe(first.summary?.exams.converted);
    for (const bundle of found) expect(validateBundle(bundle).valid).toBe(true);
    const second = await convert({
      mapping: csvMapping,
      inputs: [path],
      out: resources,
      to: 'resources',
    });
    // An exam has one report.
    expect(lines(resources, 'DiagnosticReport.ndjson').length).toBe(first.summary?.exams.converted);
    const entries = found.flatMap((bundle) => (bundle as { entry: object[] }).entry);
    const written = Object.entries(second.summary?.lines ?? {}).reduce(
      (sum, [, count]) => sum + count,
      0,
    );
    expect(written).toBe(entries.length);
  });

  it('puts an exam that an earlier file had into quarantine', async () => {
    const text = `${heading}\nX1,V0417,05/02/2024,4.5,WNL,+,fine\n`;
    const folder = out();
    const { summary } = await convert({
      mapping: csvMapping,
      inputs: [input('a.csv', text), input('b.csv', text)],
      out: folder,
      to: 'exams',
    });
    expect(summary?.exams).toEqual({ read: 2, converted: 1, quarantined: 1 });
    expect(summary?.reasons).toEqual({ 'duplicate-exam': 1 });
    expect(summary?.fields).toMatchObject({ fields: 14, coded: 7, quarantined: 7 });
  });

  it('takes a mended quarantine file back in', async () => {
    const text = `${heading}\nX1,V0417,5th of February,4.5,WNL,+,fine\nX2,V0417,05/02/2024,"4.5",WNL,+,"dry\n`;
    const first = out();
    await convert({ mapping: csvMapping, inputs: [input('a.csv', text)], out: first, to: 'exams' });
    const entries = lines(first, 'quarantine.ndjson') as { raw: string }[];
    expect(entries.map(({ raw }) => raw)).toEqual([
      'X1,V0417,5th of February,4.5,WNL,+,fine\n',
      'X2,V0417,05/02/2024,"4.5",WNL,+,"dry\n',
    ]);
    const mended = entries.map((entry) => ({
      ...entry,
      raw: entry.raw.replace('5th of February', '05/02/2024').replace('"dry', '"dry"'),
    }));
    const file = [...mended.map((entry) => JSON.stringify(entry)), 'no entry', ''].join('\n');
    const second = out();
    const { summary } = await convert({
      mapping: csvMapping,
      inputs: [input('quarantine.ndjson', file)],
      inputKind: 'quarantine',
      out: second,
      to: 'exams',
    });
    expect(summary?.exams).toEqual({ read: 3, converted: 2, quarantined: 1 });
    const exams = lines(second, 'exams.ndjson') as { id: string; statements: unknown[] }[];
    expect(exams.map(({ id, statements }) => [id, statements.length])).toEqual([
      ['vineyard.X1', 4],
      ['vineyard.X2', 4],
    ]);
    expect(lines(second, 'quarantine.ndjson')).toMatchObject([
      { reason: 'malformed-record', raw: 'no entry' },
    ]);
  });

  it('decodes each exam by itself: one wrong byte does not spoil a file', async () => {
    const rows = [
      Buffer.from(`${heading}\nX1,V0417,05/02/2024,4.5,WNL,+,café\n`),
      Buffer.from('X2,V0417,05/02/2024,4.5,WNL,+,caf\u00e9 \u0096 dry\n', 'latin1'),
    ];
    const folder = out();
    const { summary } = await convert({
      mapping: csvMapping,
      inputs: [input('a.csv', Buffer.concat(rows))],
      out: folder,
      to: 'exams',
    });
    const notes = (lines(folder, 'exams.ndjson') as { statements: { text?: string }[] }[]).map(
      ({ statements }) => statements.at(-1)?.text,
    );
    expect(notes).toEqual(['café', 'café – dry']);
    expect(summary?.issues).toEqual({ 'warning undeclared-encoding': 1 });
  });

  it('keeps what came before the end of a file that is cut off', async () => {
    const { text } = messyRows(9, sampled(600, 3000));
    const packed = gzipSync(text);
    const folder = out();
    const { summary, issues } = await convert({
      mapping: csvMapping,
      inputs: [input('a.csv.gz', packed.subarray(0, packed.length - 2000))],
      out: folder,
      to: 'exams',
    });
    expect(issues).toEqual([]);
    expect(summary?.exams.read).toBeGreaterThan(200);
    expect(lines(folder, 'issues.ndjson')).toContainEqual(
      expect.objectContaining({ code: 'unreadable-input', severity: 'error', path: ['a.csv.gz'] }),
    );
  });

  it('does not begin with a wrong mapping or in a folder that is not empty', async () => {
    const path = input('a.csv', heading);
    const wrong = await convert({
      mapping: { ...csvMapping, fields: { x: 1 } },
      inputs: [path],
      out: out(),
    });
    expect(wrong.summary).toBeUndefined();
    expect(wrong.issues.map(({ path }) => path)).toContainEqual(['fields', 'x']);
    const used = join(path, '..');
    const full = await convert({ mapping: csvMapping, inputs: [path], out: used });
    expect(full.summary).toBeUndefined();
    expect(full.issues).toMatchObject([{ code: 'invalid-value', path: ['out'] }]);
    expect(Object.keys(contents(used))).toEqual(['a.csv']);
  });

  it('tells a column of the mapping that a file does not have', async () => {
    const { summary } = await convert({
      mapping: csvMapping,
      inputs: [input('a.csv', 'exam_no,worker_no,exam_date\nX1,V0417,05/02/2024\n')],
      out: out(),
      to: 'exams',
    });
    expect(summary?.issues).toMatchObject({ 'warning missing-field MRD1_R': 1 });
  });

  it('tells how far it is, often on a terminal and once a minute elsewhere', async () => {
    const path = input('a.csv', messyRows(10, 500).text);
    const run = async (isTerminal: boolean, step: number): Promise<string[]> => {
      let time = 0;
      const written: string[] = [];
      const now = (): number => {
        time += step;
        return time;
      };
      const progress = { isTerminal, write: (text: string) => written.push(text) };
      await convertFiles(
        { mapping: csvMapping, inputs: [path], out: out(), to: 'exams' },
        { ...io, now, progress },
      );
      return written;
    };
    const terminal = await run(true, 250);
    // The last part clears the rest of the line.
    const [line = ''] = terminal;
    expect(line.endsWith('\u001B[K')).toBe(true);
    expect(line.slice(0, -3)).toMatch(/^\r\[#*\.*\] \d+ % {2}\d+ exams {2}\d+\/s {2}\d+ s left$/);
    expect(terminal.at(-1)).toBe('\n');
    expect(await run(false, 250)).toEqual([]);
    const plain = await run(false, 60_000);
    expect(plain[0]).toMatch(/^\d+ % {2}\d+ exams {2}\d+\/s {2}\d+ (min|s).* left\n$/);
  });

  it('makes exams that hold', async () => {
    const folder = out();
    const path = input('a.csv', messyRows(11, 100).text);
    await convert({ mapping: csvMapping, inputs: [path], out: folder, to: 'exams' });
    for (const exam of lines(folder, 'exams.ndjson')) expect(parseExam(exam).value).toBeDefined();
  });
});
