import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { fromJson } from '../../src/fhir/json/from-json.ts';
import { validateBundle } from '../../src/validate/versions/r4.ts';

const MEGABYTE = 1024 * 1024;

/** JSON of one observation of about a kilobyte that is sound, or has no status. */
function entry(at: number, sound: boolean): string {
  const resource = {
    resourceType: 'Observation',
    id: `n${at}`,
    text: {
      status: 'generated',
      div: `<div xmlns="http://www.w3.org/1999/xhtml"><p>${'Swelling of the cheek. '.repeat(20)}</p></div>`,
    },
    ...(sound && { status: 'final' }),
    code: { text: 'Swelling' },
    subject: { reference: 'https://clinic.example/fhir/Patient/p' },
    effectiveDateTime: '2026-03-02T10:00:00Z',
    valueQuantity: { value: at, unit: 'mm', system: 'http://unitsofmeasure.org', code: 'mm' },
  };
  return JSON.stringify({ fullUrl: `https://clinic.example/fhir/Observation/n${at}`, resource });
}

/** A collection of at least so many megabytes, one entry in a hundred without its status. */
function bundleText(megabytes: number): { readonly text: string; readonly entries: number } {
  const parts: string[] = [];
  let size = 0;
  for (let at = 0; size < megabytes * MEGABYTE; at++) {
    const part = entry(at, at % 100 !== 0);
    parts.push(part);
    size += part.length + 1;
  }
  const text = `{"resourceType":"Bundle","type":"collection","entry":[${parts.join(',')}]}`;
  return { text, entries: parts.length };
}

describe('a bundle of 100 MB', () => {
  const { text, entries } = bundleText(100);

  test('is read and told of in full, in memory that its size bounds', () => {
    expect(text.length).toBeGreaterThan(100 * MEGABYTE);
    const { value, issues: reading } = fromJson(text);
    expect(reading).toEqual([]);
    const before = process.memoryUsage().heapUsed;
    const { valid, issues } = validateBundle(value);
    const grown = process.memoryUsage().heapUsed - before;
    console.info(`${entries} entries; validation added ${Math.round(grown / MEGABYTE)} MB`);
    expect(valid).toBe(false);
    // The first thousand are told, and how many more there are.
    expect(issues).toHaveLength(1001);
    const more = Math.ceil(entries / 100) - 1000;
    expect(issues.at(-1)).toMatchObject({ code: 'issues-cut', facts: { count: more } });
    expect(new Set(issues.slice(0, -1).map(({ code, path }) => `${code} ${path.at(-1)}`))).toEqual(
      new Set(['missing-property status']),
    );
    expect(grown).toBeLessThan(10 * text.length);
  });

  test('is validated by the command line in a heap that could not hold its values', () => {
    const folder = mkdtempSync(join(tmpdir(), 'face-neck-'));
    const file = join(folder, 'large.json');
    const program = join(import.meta.dirname, '../../src/cli/bin.ts');
    try {
      writeFileSync(file, text);
      // 100 MB of JSON are some 700 MB of values.
      const node = ['--max-old-space-size=400', '--import', 'tsx', program];
      const words = ['validate', '--format', 'json', file];
      const ran = spawnSync(process.execPath, [...node, ...words], {
        encoding: 'utf8',
        maxBuffer: 64 * MEGABYTE,
      });
      expect(JSON.parse(ran.stdout)).toMatchObject({
        conformance: 'does-not-conform',
        errors: Math.ceil(entries / 100),
      });
      const told = ran.stderr.trim().split('\n');
      expect(told).toHaveLength(1001);
      expect(JSON.parse(told.at(-1) ?? '')).toMatchObject({ code: 'issues-cut' });
      expect(ran.status).toBe(1);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  test('cut off in its middle is told of at the cut', () => {
    const { value, issues } = fromJson(text.slice(0, 50 * MEGABYTE));
    expect(value).toBeUndefined();
    expect(issues.map(({ code }) => code)).toEqual(['not-json']);
  });
});

test('100 MB in one text are told of as too long', () => {
  const bundle = {
    resourceType: 'Observation',
    status: 'final',
    code: { text: 'x'.repeat(100 * MEGABYTE) },
  };
  const { issues } = validateBundle(bundle);
  // https://hl7.org/fhir/R4/datatypes.html#string: at most 1 MB.
  expect(issues.map(({ code, path }) => `${code} ${path.join('.')}`)).toContain(
    'too-large code.text',
  );
  expect(JSON.stringify(issues).length).toBeLessThan(2000);
});

test('100 MB of nothing but brackets are refused by their depth', () => {
  const { issues } = fromJson('['.repeat(100 * MEGABYTE));
  expect(issues.map(({ code }) => code)).toEqual(['too-deep']);
});

test('more values than the limit are not looked into', () => {
  const row = Array.from({ length: 1000 }, () => ({ text: 'x' }));
  const extension = Array.from({ length: 10_000 }, () => row);
  const { valid, issues } = validateBundle({ resourceType: 'Observation', extension });
  expect(valid).toBe(false);
  expect(issues.map(({ code }) => code)).toEqual(['too-large']);
});
