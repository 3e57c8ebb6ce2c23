import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { referencesIn } from '../../../src/fhir/references.ts';
import { parseExam } from '../../../src/index.ts';
import { sampleExam } from '../../../src/testing/sample-exam.ts';
import { inFolder, run } from '../in-process.ts';

const lines = (text: string): unknown[] =>
  text
    .split('\n')
    .filter(Boolean)
    .map((line) => JSON.parse(line));

describe('sample', () => {
  it('prints the exams of the seeds, one a line, the same every time', async () => {
    const argv = ['sample', '--seed', '7', '--count', '3', '--size', 'small'];
    const { code, out, err } = await run(argv);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const exams = lines(out);
    expect(exams).toEqual([7, 8, 9].map((seed) => sampleExam(seed, { size: 'small' })));
    for (const exam of exams) expect(parseExam(exam).value).toBeDefined();
    expect((await run(argv)).out).toBe(out);
  });

  it('bundles can be validated by the next command', async () => {
    const made = await run(['sample', '--count', '2', '--to', 'bundle', '--fhir', 'r4b']);
    const { code, out } = await run(['validate', '--fhir', 'r4b'], { stdin: made.out });
    expect(code).toBe(0);
    expect(out).toMatch(/^valid {4}\(stdin\):1.*\nvalid {4}\(stdin\):2/);
  });

  it('resources stand on lines of their own', async () => {
    const { out } = await run(['sample', '--to', 'resources', '--size', 'small']);
    const types = lines(out).map((one) => Object(one).resourceType);
    expect(types).toContain('DiagnosticReport');
    expect(types).not.toContain('Bundle');
  });

  it.each(['collection', 'document'])(
    'resources of a %s refer to each other by type and id',
    async (bundle) => {
      const argv = ['sample', '--to', 'resources', '--size', 'small', '--bundle', bundle];
      const { out } = await run([...argv, '--identity', 'https://quay.example/records']);
      const made = lines(out).map((one) => Object(one));
      const places = new Set(made.map(({ resourceType, id }) => `${resourceType}/${id}`));
      const named = [...referencesIn(made)];
      expect(named.filter((reference) => places.has(reference)).length).toBeGreaterThan(3);
      // What an exam names at the receiver stays as it is named.
      expect(named.filter((reference) => reference.startsWith('urn:'))).toEqual([]);
    },
  );

  it.each(['csv', 'hl7v2', 'xml', 'cda'])('an export (%s) is read by convert', async (format) => {
    await inFolder(async (cwd) => {
      const argv = ['sample', '--count', '4', '--size', 'small', '--to', format, '--losses'];
      const made = await run([...argv, '--mapping', 'map.json'], { cwd });
      expect(made.code).toBe(0);
      expect(made.err).toContain('4 exams: the id of the exam has the prefix of the mapping');
      const read = await run(['convert', '-', '--mapping', 'map.json', '--to', 'exams'], {
        cwd,
        stdin: made.out,
      });
      expect({ code: read.code, err: read.err }).toEqual({ code: 0, err: '' });
      expect(lines(read.out).map((exam) => Object(exam).id)).toEqual(
        [1, 2, 3, 4].map((seed) => `sample.check-small-${seed}`),
      );
    });
  });

  it('a mapping is for exports only', async () => {
    const { code, err } = await run(['sample', '--mapping', 'map.json']);
    expect(code).toBe(2);
    expect(err).toContain('--to csv');
  });

  it('none is none', async () => {
    expect(await run(['sample', '--count', '0'])).toEqual({ code: 0, out: '', err: '' });
  });
});

const mapping = join(import.meta.dirname, '../../cases/csv/mappings/long.json');
const head = 'exam,badge,day,item,side,value,unit,method,note\n';
const good = `${head}E1,B7,2024-02-05,MRD1,R,4.5,mm,,\nE2,B8,2024-02-06,MRD1,L,4.0,mm,,tired\n`;
const bad = `${head}E3,B9,2024-13-45,MRD1,R,4.5,mm,,\n`;

describe('convert', () => {
  it('standard input to standard output, one bundle a line', async () => {
    const { code, out, err } = await run(['convert', '--mapping', mapping], { stdin: good });
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const bundles = lines(out);
    expect(bundles).toHaveLength(2);
    expect(bundles[0]).toMatchObject({ resourceType: 'Bundle', type: 'collection' });
    expect(out).toContain('"value":4.5');
    expect(out).toContain('"value":4.0');
  });

  it('--to exams gives exams, which export takes', async () => {
    const made = await run(['convert', '-', '--mapping', mapping, '--to', 'exams'], {
      stdin: good,
    });
    const { code, out } = await run(['export'], { stdin: made.out });
    expect(code).toBe(0);
    expect(lines(out)).toHaveLength(2);
  });

  it('tells what could not be converted, and goes on', async () => {
    const stdin = good + bad.slice(head.length);
    const { code, out, err } = await run(['convert', '--mapping', mapping], { stdin });
    expect(code).toBe(1);
    expect(lines(out)).toHaveLength(2);
    expect(err).toMatch(/^stdin: error {2}/m);
    expect(err).not.toContain('2024-13-45');
  });

  it('files to a folder, with a summary', async () => {
    await inFolder(async (cwd) => {
      mkdirSync(join(cwd, 'in'));
      writeFileSync(join(cwd, 'in/a.csv'), good);
      writeFileSync(join(cwd, 'in/b.csv'), bad);
      const argv = ['convert', 'in', '--mapping', mapping, '--out', 'out'];
      const { code, out } = await run(argv, { cwd });
      expect(code).toBe(1);
      expect(out).toContain('3 exam(s) read: 2 converted, 1 in quarantine');
      expect(readdirSync(join(cwd, 'out')).sort()).toEqual([
        'bundles.ndjson',
        'quarantine.ndjson',
        'summary.json',
        'summary.txt',
      ]);
      expect(readFileSync(join(cwd, 'out/summary.txt'), 'utf8')).toBe(out);
      const again = await run(argv, { cwd });
      expect(again.code).toBe(1);
      expect(again.err).toContain('the folder is not empty');
      const resumed = await run([...argv, '--resume'], { cwd });
      expect(resumed.out).toBe(out);
    });
  });

  it('refuses a mapping that is wrong, before anything is read', async () => {
    await inFolder(async (cwd) => {
      writeFileSync(join(cwd, 'm.json'), '{"format":"face-neck-mapping/1"}');
      const { code, out, err } = await run(['convert', '--mapping', 'm.json'], {
        cwd,
        stdin: good,
      });
      expect({ code, out }).toEqual({ code: 1, out: '' });
      expect(err).toContain('[missing-property]');
    });
  });

  it.each([
    [['nothing.csv'], 'cannot read nothing.csv: there is no such file'],
    [['-', '--to', 'resources'], '--to resources needs --out FOLDER'],
    [['-', '--resume'], '--resume needs --out FOLDER'],
    [['-', '--out', 'x'], 'with --out, convert needs named files or folders'],
  ])('%j is a wrong call', async (args, line) => {
    const argv = ['convert', ...args, '--mapping', mapping];
    const { code, err } = await run(argv, { stdin: good });
    expect(code).toBe(2);
    expect(err).toContain(line);
  });
});
