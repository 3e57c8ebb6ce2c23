import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import type { BulkOptions } from '../../../src/convert/bulk/options.ts';
import type { FhirMapping } from '../../../src/convert/mapping/fhir-mapping.ts';
import { run } from '../../cli/in-process.ts';
import { sampled } from '../../sampled.ts';
import { convert, lines, temporaryFolder } from '../bulk/folder.ts';
import {
  bundleOf,
  linesOf,
  observation,
  type Resource,
  record,
  report,
  resourceMapping,
} from './resource-samples.ts';

const folder = temporaryFolder();
const COUNT = sampled(12, 400);
const people = Array.from({ length: COUNT }, (_, at) => `p${at}`);
/** Of a bundle with one report, what no report leads to is in no exam; so nobody here has both. */
const recordOf = (person: string, at: number): readonly Resource[] =>
  record(person, at % 3, at % 3 === 1 ? 0 : 1);
const resources = people.flatMap(recordOf);
const exams = people.reduce((sum, _, at) => sum + (at % 3 === 1 ? 1 : (at % 3) + 1), 0);

const options = (out: string, inputs: string, more: Partial<BulkOptions> = {}): BulkOptions => ({
  mapping: resourceMapping,
  inputs: [join(folder, inputs)],
  to: 'exams',
  out: join(folder, out),
  checkpointEvery: exams / 6,
  ...more,
});

function write(name: string, text: string | Buffer): void {
  const [inner = ''] = name.split('/');
  mkdirSync(join(folder, inner), { recursive: true });
  writeFileSync(join(folder, name), text);
}

/** Three of four in lines by type, one of them packed, and all mixed in one file. */
const ofType = (type: string): readonly Resource[] =>
  resources.filter(({ resourceType }) => resourceType === type);
write('types/Patient.ndjson', linesOf(ofType('Patient')).trimEnd());
write('types/Observation.ndjson.gz', gzipSync(linesOf(ofType('Observation'))));
write('types/DiagnosticReport.ndjson', linesOf(ofType('DiagnosticReport')));
write('mixed/all.ndjson', linesOf(resources));
write('bundles/one.json', people.map((person, at) => bundleOf(recordOf(person, at))).join('\n'));

const bundles: FhirMapping = { ...resourceMapping, source: { syntax: 'fhir' } };

function examsIn(out: string): unknown {
  const text = (one: unknown): string => JSON.stringify(one);
  return lines(join(folder, out), 'exams.ndjson').map(text).sort();
}

describe('files of a bulk export, converted', () => {
  it('give the same exams by type, mixed, and as bundles', async () => {
    const done = await Promise.all([
      convert(options('by-type', 'types')),
      convert(options('by-line', 'mixed')),
      convert(options('by-bundle', 'bundles', { mapping: bundles })),
    ]);
    for (const { summary } of done) {
      expect(summary?.exams).toEqual({ read: exams, converted: exams, quarantined: 0 });
      expect(summary?.fields.quarantined ?? 0).toBe(done[0]?.summary?.fields.quarantined ?? 0);
    }
    expect(examsIn('by-type')).toEqual(examsIn('by-line'));
    expect(examsIn('by-bundle')).toEqual(examsIn('by-line'));
  });

  it('go on where one cannot be read, with what leads to it set aside', async () => {
    write('broken/DiagnosticReport.ndjson', linesOf(ofType('DiagnosticReport')));
    write('broken/Observation.ndjson.gz', 'not packed');
    write('broken/Patient.ndjson', linesOf(ofType('Patient')));
    const { summary } = await convert(options('unread', 'broken'));
    expect(summary?.exams.converted).toBe(0);
    expect(summary?.issues).toMatchObject({
      'error unreadable-input Observation.ndjson.gz': 1,
    });
    const aside = readFileSync(join(folder, 'unread', 'quarantine.ndjson'), 'utf8');
    for (const { id } of ofType('DiagnosticReport'))
      expect(aside).toContain(`\\"id\\":\\"${id}\\"`);
  });
});

describe('a quarantine file of bundles', () => {
  it('gives the exam once its bundle is mended, as what was parted from a larger one', async () => {
    const other = { ...observation('bert', 'b'), subject: { reference: 'Patient/cleo' } };
    const parted = bundleOf([...record('anna', 1, 0), report('bert', 'q', ['a', 'b']), other]);
    const whole = JSON.parse(parted);
    whole.entry.push({ resource: observation('bert', 'a') });
    write('parted/all.json', JSON.stringify(whole));
    const first = await convert(options('parted-out', 'parted', { mapping: bundles }));
    expect(first.summary?.exams).toEqual({ read: 2, converted: 1, quarantined: 1 });
    const [entry] = lines(join(folder, 'parted-out'), 'quarantine.ndjson') as { raw: string }[]; // written by the run
    const raw = (entry?.raw ?? '').replace('Patient/cleo', 'Patient/bert');
    write('parted-mended/one.ndjson', `${JSON.stringify({ ...entry, raw })}\n`);
    const mended = await convert(
      options('parted-again', 'parted-mended', { mapping: bundles, inputKind: 'quarantine' }),
    );
    expect(mended.summary?.exams).toEqual({ read: 1, converted: 1, quarantined: 0 });
    const [exam] = lines(join(folder, 'parted-again'), 'exams.ndjson');
    expect(exam).toMatchObject({ id: 'harbour.DiagnosticReport/q', statements: [{}, {}] });
  });
});

describe('a quarantine file of resources', () => {
  const broken = [report('anna', 'r', ['a', 'b']), observation('anna', 'a')];

  it('gives the exam once a person has written in what is missing, and not before', async () => {
    write('gap/all.ndjson', linesOf(broken));
    const first = await convert(options('gap-out', 'gap'));
    expect(first.summary?.exams).toEqual({ read: 1, converted: 0, quarantined: 1 });
    const file = join(folder, 'gap-out', 'quarantine.ndjson');
    const again = { inputs: [file], inputKind: 'quarantine' } as const;
    const same = await convert(options('gap-again', 'gap', again));
    expect(same.summary?.exams).toEqual({ read: 1, converted: 0, quarantined: 1 });
    const [entry] = lines(join(folder, 'gap-out'), 'quarantine.ndjson') as { raw: string }[]; // written by the run
    const bundle = JSON.parse(entry?.raw ?? '');
    bundle.entry.push({ resource: observation('anna', 'b') });
    write('mended/one.ndjson', `${JSON.stringify({ ...entry, raw: JSON.stringify(bundle) })}\n`);
    const inputs = [join(folder, 'mended/one.ndjson')];
    const mended = await convert(options('gap-mended', 'gap', { ...again, inputs }));
    expect(mended.summary?.exams).toEqual({ read: 1, converted: 1, quarantined: 0 });
    const [exam] = lines(join(folder, 'gap-mended'), 'exams.ndjson');
    expect(exam).toMatchObject({ id: 'harbour.DiagnosticReport/r', statements: [{}, {}] });
  });
});

describe('FHIR on the command line', () => {
  const said = async (...args: readonly string[]): ReturnType<typeof run> =>
    run(['convert', ...args], { cwd: folder });

  it('converts lines of resources from files, a folder and standard input alike', async () => {
    write('cli/mapping.json', JSON.stringify(resourceMapping));
    const args = ['--mapping', 'cli/mapping.json', '--to', 'exams'];
    const piped = await run(['convert', '-', ...args], { cwd: folder, stdin: linesOf(resources) });
    const one = await said('mixed/all.ndjson', ...args);
    const files = await said('types', ...args);
    expect([piped.code, one.code, files.code]).toEqual([0, 0, 0]);
    expect(piped.out).toBe(one.out);
    expect(files.out.split('\n').sort()).toEqual(one.out.split('\n').sort());
  });

  it('writes bundles that are sound, and tells and sets aside what no exam can be made of', async () => {
    write('cli/mapping.json', JSON.stringify(resourceMapping));
    write('cli/all.ndjson', linesOf([...record('anna', 1, 0), report('bert', 'gap', ['none'])]));
    const args = ['cli/all.ndjson', '--mapping', 'cli/mapping.json', '--out', 'cli-out'];
    const { code, err } = await said(...args);
    expect(code).toBe(1);
    expect(err).not.toContain('anna');
    const [bundle] = lines(join(folder, 'cli-out'), 'bundles.ndjson');
    write('cli/bundle.json', JSON.stringify(bundle));
    expect(await run(['validate', 'cli/bundle.json'], { cwd: folder })).toMatchObject({ code: 0 });
    expect(lines(join(folder, 'cli-out'), 'quarantine.ndjson')).toMatchObject([
      { file: 'all.ndjson', reason: 'unresolved-reference', at: { line: 5 } },
    ]);
  });

  it('shows in a dry run what each report would become', async () => {
    write('cli/mapping.json', JSON.stringify(resourceMapping));
    for (const input of ['mixed/all.ndjson', 'types']) {
      const dry = await said(input, '--mapping', 'cli/mapping.json', '--dry-run');
      expect([input, dry.code, dry.err]).toEqual([input, 0, '']);
      expect(dry.out).toContain(`${exams} exams: ${exams} would be made, 0 set aside.`);
    }
  });
});
