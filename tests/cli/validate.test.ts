import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { examples } from '../../examples/all-exams.ts';
import { toBundle, toJson } from '../../src/index.ts';
import { inFolder, run } from './in-process.ts';

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

  it('with --format json the verdict is JSON too', async () => {
    const { out } = await run(['validate', '--format', 'json'], { stdin: bundleText('R4') });
    expect(JSON.parse(out)).toEqual({
      input: '(stdin)',
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
});
