import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { examples } from '../../examples/all-exams.ts';
import { cutBundle } from '../../src/deliver/cut.ts';
import { type BundleType, type FhirVersion, toBundle, toJson } from '../../src/index.ts';
import { german } from '../../src/terminology/languages/de.ts';
import { clinic } from '../clinic.ts';
import { examplePath, inFolder, run } from './in-process.ts';

const versions: readonly [string, FhirVersion][] = [
  ['r4', 'R4'],
  ['r4b', 'R4B'],
  ['r5', 'R5'],
];
const own = ['--identity', clinic.identity];
const types: readonly BundleType[] = ['collection', 'transaction', 'document'];
const lump = examples.get('neck-lump');
if (lump === undefined) throw new Error('no example');

describe('export', () => {
  it.each([...examples])('writes %s as the library does', async (name, exam) => {
    const { code, out, err } = await run(['export', examplePath(name)]);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toBe(`${toJson(toBundle(exam).value, { pretty: true })}\n`);
  });

  it.each(
    versions.flatMap(([word, fhirVersion]) =>
      types.map((type) => [word, type, fhirVersion] as const),
    ),
  )('--fhir %s --bundle %s', async (word, bundleType, fhirVersion) => {
    const argv = [
      'export',
      examplePath('neck-lump'),
      '--fhir',
      word,
      '--bundle',
      bundleType,
      ...own,
    ];
    const { code, out } = await run(argv);
    expect(code).toBe(0);
    const bundle = toBundle(lump, { ...clinic, fhirVersion, bundleType }).value;
    expect(out).toBe(`${toJson(bundle, { pretty: true })}\n`);
  });

  it('--language de', async () => {
    const { code, out } = await run(['export', examplePath('neck-lump'), '--language', 'de']);
    expect(code).toBe(0);
    expect(out).toBe(`${toJson(toBundle(lump, { language: german }).value, { pretty: true })}\n`);
  });

  it('--master-data and the kinds on their own', async () => {
    const argv = ['export', examplePath('neck-lump'), '--bundle', 'transaction', ...own];
    const words = ['--transaction', 'conditional', '--master-data', 'own', '--patient', 'match'];
    const { code, out } = await run([...argv, ...words]);
    expect(code).toBe(0);
    const bundle = toBundle(lump, {
      ...clinic,
      bundleType: 'transaction',
      transaction: 'conditional',
      masterData: {
        patient: 'match',
        practitioner: 'own',
        organization: 'own',
        encounter: 'own',
        device: 'own',
      },
    }).value;
    expect(out).toBe(`${toJson(bundle, { pretty: true })}\n`);
  });

  it('--most cuts it into bundles, one a line', async () => {
    const argv = ['export', examplePath('neck-lump'), '--bundle', 'transaction', ...own];
    const { code, out } = await run([...argv, '--most', '40']);
    expect(code).toBe(0);
    const whole = toBundle(lump, { ...clinic, bundleType: 'transaction' }).value;
    const bundles = whole === undefined ? [] : cutBundle(whole, { most: 40 }).value;
    expect(bundles?.length).toBeGreaterThan(2);
    expect(out).toBe(`${bundles?.map((bundle) => toJson(bundle)).join('\n')}\n`);
    for (const wrong of [
      ['--most', '0'],
      ['--most', 'x'],
      ['--as', 'batch'],
    ]) {
      expect((await run([...argv, ...wrong])).code, wrong.join(' ')).toBe(2);
    }
    expect((await run([...argv.slice(0, 2), '--most', '4'])).code).toBe(2);
  });

  it('keeps decimals as stated', async () => {
    const { out } = await run(['export', examplePath('neck-lump')]);
    expect(out).toContain('"value": 22.0,');
    expect(out).toContain('"value": 18,');
  });

  it('--snomed decides which SNOMED CT codes leave', async () => {
    const file = examplePath('neck-lump');
    const none = await run(['export', file, '--snomed', 'none']);
    const free = await run(['export', file]);
    const edition = 'http://snomed.info/sct/900000000000207008/version/20240101';
    const licence = [
      '--snomed',
      'licensed',
      '--snomed-holder',
      'Clinic',
      '--snomed-edition',
      edition,
    ];
    const licensed = await run(['export', file, ...licence]);
    const count = ({ out }: { out: string }): number =>
      out.split('http://snomed.info/sct"').length - 1;
    expect(count(none)).toBe(0);
    expect(count(free)).toBeGreaterThan(0);
    expect(count(licensed)).toBeGreaterThanOrEqual(count(free));
    expect(licensed.out).toContain(`"version": "${edition}"`);
  });

  it('reads standard input, named - or not named', async () => {
    const stdin = readFileSync(examplePath('broken-off'), 'utf8');
    const named = await run(['export', '-'], { stdin });
    expect(named.code).toBe(0);
    expect(await run(['export'], { stdin })).toEqual(named);
    expect(await run(['export', examplePath('broken-off')])).toEqual(named);
  });

  it('several files, or several lines, give one bundle a line', async () => {
    const names = ['broken-off', 'drooping-lid'];
    const files = await run(['export', ...names.map(examplePath)]);
    expect(files.code).toBe(0);
    const lines = files.out.trimEnd().split('\n');
    expect(lines.map((line) => JSON.parse(line).resourceType)).toEqual(['Bundle', 'Bundle']);
    const stdin = names
      .map((name) => `${JSON.stringify(JSON.parse(readFileSync(examplePath(name), 'utf8')))}\n`)
      .join('\n');
    expect(await run(['export'], { stdin })).toEqual(files);
  });

  it('--out writes a whole file, into a folder that it makes, and leaves nothing else', async () => {
    await inFolder(async (cwd) => {
      const ran = await run(['export', examplePath('broken-off'), '--out', 'new/b.json'], { cwd });
      expect(ran).toEqual({ code: 0, out: '', err: '' });
      expect(readdirSync(join(cwd, 'new'))).toEqual(['b.json']);
      const direct = await run(['export', examplePath('broken-off')]);
      expect(readFileSync(join(cwd, 'new/b.json'), 'utf8')).toBe(direct.out);
    });
  });

  it('an exam that fails leaves an earlier file as it was', async () => {
    await inFolder(async (cwd) => {
      writeFileSync(join(cwd, 'b.json'), 'earlier');
      const ran = await run(['export', '--out', 'b.json'], { cwd, stdin: '{"format": 1}' });
      expect(ran.code).toBe(1);
      expect(readFileSync(join(cwd, 'b.json'), 'utf8')).toBe('earlier');
      expect(readdirSync(cwd)).toEqual(['b.json']);
    });
  });

  it('one exam that fails stops no other', async () => {
    const good = JSON.stringify(lump);
    const { code, out, err } = await run(['export'], { stdin: `${good}\n{"bad": 1}\n${good}\n` });
    expect(code).toBe(1);
    expect(out.trimEnd().split('\n')).toHaveLength(2);
    expect(err).toMatch(/^\(stdin\):2: error {2}/);
  });

  it('says which place cannot be written to', async () => {
    await inFolder(async (cwd) => {
      mkdirSync(join(cwd, 'folder'));
      const ran = await run(['export', examplePath('broken-off'), '--out', 'folder'], { cwd });
      expect(ran.code).toBe(2);
      expect(ran.err).toContain('cannot write folder: it is a folder');
      expect(readdirSync(cwd)).toEqual(['folder']);
    });
  });
});
