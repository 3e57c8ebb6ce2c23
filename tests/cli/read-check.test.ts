import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { examples } from '../../examples/all-exams.ts';
import { checkExam } from '../../src/checks/check-exam.ts';
import { type Exam, toBundle, toJson } from '../../src/index.ts';
import { examplePath, inFolder, run } from './in-process.ts';

function example(name: string): Exam {
  const exam = examples.get(name);
  if (exam === undefined) throw new Error(`no example ${name}`);
  return exam;
}

function bundleText(name: string): string {
  return toJson(toBundle(example(name)).value);
}

/** The yearly check a year before, with the lentigo a millimetre smaller. */
function yearBefore(): Exam {
  const text = JSON.stringify(example('yearly-check'))
    .replaceAll('2025-03-11T', '2024-03-19T')
    .replace('"onset":"2025-02"', '"onset":"2024-02"')
    .replace('RHS-2025-0311-07', 'RHS-2024-0319-02')
    .replace('"value":"6.0","unit":"mm"', '"value":"4.5","unit":"mm"');
  return JSON.parse(text);
}

describe('read', () => {
  it.each([...examples])('gives %s back as it was', async (name, exam) => {
    const { code, out, err } = await run(['read'], { stdin: bundleText(name) });
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(JSON.parse(out)).toEqual(exam);
  });

  it('tells what of the bundle is not in the exam, and nothing of its content', async () => {
    const stdin = bundleText('broken-off').replace(
      '"resourceType":"Patient",',
      '"resourceType":"Patient","maritalStatus":{"text":"secret"},',
    );
    const { code, out, err } = await run(['read'], { stdin });
    expect(code).toBe(0);
    expect(JSON.parse(out)).toEqual(example('broken-off'));
    expect(err).toMatch(/warning {2}entry\[\d+\]\.resource\.maritalStatus {2}.*\[not-in-exam\]/);
    expect(err).not.toContain('secret');
  });

  it('what is not a bundle is an error', async () => {
    const { code, out, err } = await run(['read'], { stdin: '{"resourceType":"Patient"}' });
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toContain('[wrong-type]');
  });
});

describe('check', () => {
  it('prints coverage, rules and cautions, and prompts only of rule sets that are named', async () => {
    const plain = await run(['check', examplePath('neck-lump')]);
    expect(plain.code).toBe(0);
    expect(plain.out).toMatch(/^Coverage of Neck lump, version 1\.0\.0\n/);
    expect(plain.out).not.toContain('\nPrompts\n');
    expect(plain.out).toContain("never replaces the clinician's judgement");
    const asked = await run(['check', examplePath('neck-lump'), '--rule-set', 'neck-mass-us']);
    expect(asked.out).toMatch(/\nPrompts\n {2}R17:lump \[prompt\] /);
  });

  it('--to json prints the result of the library', async () => {
    const { out } = await run(['check', examplePath('drooping-lid'), '--to', 'json']);
    const result = checkExam(example('drooping-lid'), { now: '2025-12-01T08:00:00.000Z' });
    expect(JSON.parse(out)).toEqual(JSON.parse(JSON.stringify(result)));
  });

  it('--settings takes thresholds, a protocol and dismissals from a file', async () => {
    await inFolder(async (cwd) => {
      const settings = {
        ruleSets: ['horner-signs'],
        thresholds: { 'lid-difference': 'off' },
        dismissals: [
          { prompt: 'R18:left', reason: 'Known', by: 'optometrist', at: '2025-12-01T08:00:00Z' },
          { prompt: 'R18:right', reason: 'Known', by: 'optometrist', at: '2025-12-01T08:00:00Z' },
        ],
      } as const;
      writeFileSync(join(cwd, 'clinic.json'), JSON.stringify(settings));
      const argv = ['check', examplePath('drooping-lid'), '--settings', 'clinic.json'];
      const { code, out } = await run([...argv, '--to', 'json'], { cwd });
      const now = '2025-12-01T08:00:00.000Z';
      const result = checkExam(example('drooping-lid'), { ...settings, now });
      expect(code).toBe(0);
      expect(JSON.parse(out)).toEqual(JSON.parse(JSON.stringify(result)));
      expect(result.prompts.map(({ dismissed }) => dismissed?.reason)).toContain('Known');
    });
  });

  it('settings that are none stop it', async () => {
    await inFolder(async (cwd) => {
      writeFileSync(join(cwd, 'clinic.json'), '{"thresholds":{"lid-difference":"a lot"}}');
      const argv = ['check', examplePath('drooping-lid'), '--settings', 'clinic.json'];
      const { code, out, err } = await run(argv, { cwd });
      expect({ code, out }).toEqual({ code: 1, out: '' });
      expect(err).toMatch(/^clinic\.json: error {2}thresholds\.lid-difference {2}/);
      expect(err).not.toContain('a lot');
    });
  });

  it('an exam that lies ahead is an error', async () => {
    const ahead = JSON.stringify(example('broken-off')).replaceAll('2025-09-09', '2026-09-09');
    const { code, err } = await run(['check'], { stdin: ahead });
    expect(code).toBe(1);
    expect(err).toMatch(/error {2}/);
  });

  it('--prior tells what changed', async () => {
    await inFolder(async (cwd) => {
      writeFileSync(join(cwd, 'before.json'), JSON.stringify(yearBefore()));
      const argv = ['check', examplePath('yearly-check'), '--prior', 'before.json'];
      const { code, out } = await run(argv, { cwd });
      expect(code).toBe(0);
      expect(out).toContain('Compared with the earlier exam');
      expect(out).toContain('4.5 mm -> 6.0 mm (1.5 mm, 33.33 %)');
    });
  });

  it('a prior exam that cannot be read stops it', async () => {
    await inFolder(async (cwd) => {
      writeFileSync(join(cwd, 'before.json'), '{}');
      const argv = ['check', examplePath('yearly-check'), '--prior', 'before.json'];
      const { code, out, err } = await run(argv, { cwd });
      expect({ code, out }).toEqual({ code: 1, out: '' });
      expect(err).toContain('before.json: error');
    });
  });
});

describe('compare', () => {
  it('lists what changed, and counts what cannot be compared', async () => {
    await inFolder(async (cwd) => {
      writeFileSync(join(cwd, 'before.json'), JSON.stringify(yearBefore()));
      const argv = ['compare', 'before.json', examplePath('yearly-check')];
      const { code, out, err } = await run(argv, { cwd });
      expect({ code, err }).toEqual({ code: 0, err: '' });
      expect(out).toMatch(
        /Changed\n {2}.*Malar \(infraorbital\) cheek, left {2}4\.5 mm -> 6\.0 mm/,
      );
      expect(out).toContain('in 357 days');
      const json = await run([...argv, '--to', 'json', '--out', 'c.json'], { cwd });
      expect(json.out).toBe('');
      const comparisons: { change: string }[] = JSON.parse(
        readFileSync(join(cwd, 'c.json'), 'utf8'),
      );
      expect(comparisons.filter(({ change }) => change === 'changed')).toHaveLength(1);
    });
  });

  it('two patients are not compared', async () => {
    const argv = ['compare', examplePath('skin-lesion'), examplePath('neck-lump')];
    const { code, out, err } = await run(argv);
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toContain('[other-patient]');
  });
});

describe('report', () => {
  it('prints a whole page', async () => {
    const { code, out } = await run(['report', examplePath('broken-off')]);
    expect(code).toBe(0);
    expect(out).toMatch(/^<!DOCTYPE html>\n<html lang="en">/);
    expect(out).toContain('Broken off by the patient');
    expect(out).not.toMatch(/<script|javascript:|src=/);
  });

  it('reads standard input and writes a file', async () => {
    await inFolder(async (cwd) => {
      const stdin = readFileSync(examplePath('broken-off'), 'utf8');
      const ran = await run(['report', '--out', 'page.html'], { cwd, stdin });
      expect(ran).toEqual({ code: 0, out: '', err: '' });
      const direct = await run(['report', examplePath('broken-off')]);
      expect(readFileSync(join(cwd, 'page.html'), 'utf8')).toBe(direct.out);
    });
  });

  it('gives no page for what is not an exam', async () => {
    const { code, out } = await run(['report'], { stdin: '{}' });
    expect({ code, out }).toEqual({ code: 1, out: '' });
  });
});
