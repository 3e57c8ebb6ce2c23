import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { examples } from '../../examples/all-exams.ts';
import { type Exam, toBundle, toJson } from '../../src/index.ts';
import { inFolder, run } from './in-process.ts';

function lump(): Exam {
  const exam = examples.get('neck-lump');
  if (exam === undefined) throw new Error('no example');
  return exam;
}

function bundleText(fhirVersion: 'R4' | 'R4B' | 'R5'): string {
  const exam = examples.get('broken-off');
  if (exam === undefined) throw new Error('no example');
  return toJson(toBundle(exam, { fhirVersion }).value);
}

describe('validate', () => {
  it.each([
    ['r4', 'R4'],
    ['r4b', 'R4B'],
    ['r5', 'R5'],
  ] as const)('accepts what export writes as %s', async (word, version) => {
    const ran = await run(['validate', '--fhir', word], { stdin: bundleText(version) });
    expect(ran.code).toBe(0);
    expect(ran.out).toMatch(/^valid {4}\(stdin\)/);
    expect(ran.err).not.toContain(': error');
  });

  it('takes the version from the file of a clinic', async () => {
    await inFolder(async (cwd) => {
      const file = { format: 'face-neck-clinic/1', export: { fhirVersion: 'R5' } };
      writeFileSync(join(cwd, 'clinic.json'), JSON.stringify(file));
      const stdin = bundleText('R5');
      const ran = await run(['validate', '--clinic', 'clinic.json'], { cwd, stdin });
      expect(ran.code).toBe(0);
    });
  });

  it('R5 is not R4', async () => {
    const ran = await run(['validate'], { stdin: bundleText('R5') });
    expect(ran.code).toBe(1);
    expect(ran.out).toMatch(/^invalid {2}\(stdin\) {2}\d+ errors?/);
  });

  it('tells the fault, and the verdict of each input', async () => {
    const bad = bundleText('R4').replace('"status":"preliminary"', '"status":"done"');
    const stdin = `${bundleText('R4')}\n${bad}\n`;
    const { code, out, err } = await run(['validate'], { stdin });
    expect(code).toBe(1);
    expect(out).toMatch(/^valid {4}\(stdin\):1.*\ninvalid {2}\(stdin\):2 {2}1 error/);
    expect(err).toMatch(/\(stdin\):2: error {2}entry\[\d+\]\.resource\.status/);
  });

  it('reads FHIR XML, and tells lines and columns', async () => {
    const xml = '<Patient xmlns="http://hl7.org/fhir">\n<active value="yes"/></Patient>';
    const { code, out, err } = await run(['validate'], { stdin: xml });
    expect([code, out]).toEqual([1, 'invalid  (stdin)  1 error, 1 warning\n']);
    expect(err).toMatch(/^\(stdin\): error {2}active {2}.* at line 2, column 1$/m);
  });

  it('with --format json the verdict is JSON too', async () => {
    const { out } = await run(['validate', '--format', 'json'], { stdin: bundleText('R4') });
    expect(JSON.parse(out)).toEqual({
      input: '(stdin)',
      conformance: 'conforms',
      valid: true,
      errors: 0,
      warnings: expect.any(Number),
      information: expect.any(Number),
    });
  });

  it.each([
    ['nothing at all', ''],
    ['blank lines', '\n \n'],
    ['a word', 'hello'],
    ['half a document', '{"resourceType": "Bund'],
    ['a list', '[]'],
    ['a number', '42'],
    ['null', 'null'],
    ['a property that stands twice', '{"resourceType":"Patient","id":"a","id":"b"}'],
    ['a property __proto__', '{"resourceType":"Patient","__proto__":{"id":"a"}}'],
    ['deep nesting', `${'['.repeat(100_000)}`],
  ])('refuses %s with an issue', async (_, stdin) => {
    const { code, out, err } = await run(['validate'], { stdin });
    expect(code).toBe(1);
    expect(out).toMatch(/^invalid {2}\(stdin\) {2}\d+ errors?/);
    expect(err).toMatch(/^\(stdin\): error {2}/);
  });

  it('--out takes the verdicts', async () => {
    await inFolder(async (cwd) => {
      const ran = await run(['validate', '--out', 'verdicts.txt'], {
        cwd,
        stdin: bundleText('R4'),
      });
      expect({ code: ran.code, out: ran.out }).toEqual({ code: 0, out: '' });
      const again = await run(['validate', join(cwd, 'verdicts.txt')]);
      expect(again.code).toBe(1);
    });
  });

  describe('--profile', () => {
    const folder = join(import.meta.dirname, '../../profiles/structure-definitions/r4');
    const claiming = toJson(toBundle(lump(), { profiles: true }).value);

    it('holds resources to the profiles of a folder that they claim', async () => {
      const sound = await run(['validate', '--profile', folder], { stdin: claiming });
      // 3 where a rule of a profile needs the thorough level.
      expect([0, 3]).toContain(sound.code);
      const { value: bundle } = toBundle(lump(), { profiles: true });
      const finding = bundle?.entry?.find(({ resource }) =>
        resource?.meta?.profile?.some((url) => url.endsWith('/face-neck-finding')),
      )?.resource;
      expect(finding).toHaveProperty('bodySite');
      const stdin = JSON.stringify(bundle, (key, value) =>
        key === 'bodySite' ? undefined : value,
      );
      const plain = await run(['validate'], { stdin });
      const held = await run(['validate', '--profile', folder], { stdin });
      // Claims of profiles that are not given are not checked.
      expect([plain.code, held.code]).toEqual([3, 1]);
      expect(held.err).toMatch(/error {2}entry\[\d+\]\.resource\.bodySite {2}/);
    });

    it('tells what it cannot use, and stops where there is nothing to read', async () => {
      const gone = await run(['validate', '--profile', 'gone.json'], { stdin: claiming });
      expect(gone).toMatchObject({ code: 2, out: '' });
      await inFolder(async (cwd) => {
        writeFileSync(join(cwd, 'a.json'), '{"resourceType":"StructureDefinition"}');
        const unusable = await run(['validate', '--profile', '.'], { cwd, stdin: claiming });
        expect(unusable.code).toBe(3);
        expect(unusable.err).toMatch(/^a\.json: warning {2}/);
        writeFileSync(join(cwd, 'b.json'), '{');
        const broken = await run(['validate', '--profile', '.'], { cwd, stdin: claiming });
        expect(broken).toMatchObject({ code: 1, out: '' });
        expect(broken.err).toMatch(/^b\.json: error {2}/);
      });
    });
  });

  it('--level thorough finds what the published invariants find', async () => {
    const stdin = bundleText('R4').replace('"status":"preliminary"', '"status":"done"');
    const fast = await run(['validate'], { stdin });
    const thorough = await run(['validate', '--level', 'thorough'], { stdin });
    expect(thorough.code).toBe(1);
    expect(thorough.err).toBe(fast.err);
    const sound = await run(['validate', '--level', 'thorough'], { stdin: bundleText('R4') });
    expect(sound).toMatchObject({ code: 0, err: '' });
  });
});
