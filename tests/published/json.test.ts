import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { fromJson } from '../../src/fhir/json/from-json.ts';
import { toJson } from '../../src/fhir/json/to-json.ts';
import { published } from '../../src/generate/published.ts';

/** Numbers of a JSON text as they are written, in order; texts are taken out first. */
function numbers(text: string): string[] {
  return text.replace(/"(?:[^"\\]|\\.)*"/g, '""').match(/-?\d+(?:\.\d+)?(?:[eE][+-]?\d+)?/g) ?? [];
}

it.each([
  ['hl7.fhir.r4.examples', '4.0.1'],
  ['hl7.fhir.r4b.examples', '4.3.0'],
  ['hl7.fhir.r5.examples', '5.0.0'],
])(
  'every example of %s keeps its values and each number as it is written',
  async (name, version) => {
    const folder = await published(name, version);
    const files = readdirSync(folder).filter((file) => file.endsWith('.json'));
    const decimals = { all: 0, kept: 0 };
    for (const file of files) {
      const text = readFileSync(join(folder, file), 'utf8').replace(/^\uFEFF/, '');
      const { value, issues } = fromJson(text);
      expect({ file, issues }).toEqual({ file, issues: [] });
      const written = toJson(value);
      expect(JSON.stringify(JSON.parse(written)) === JSON.stringify(JSON.parse(text))).toBe(true);
      const before = numbers(text);
      expect({ file, numbers: numbers(written) }).toEqual({ file, numbers: before });
      decimals.all += before.length;
      // Those that a number of JavaScript alone would have written otherwise.
      decimals.kept += before.filter((one) => String(Number(one)) !== one).length;
    }
    expect(files.length).toBeGreaterThan(1000);
    expect(decimals.kept).toBeGreaterThan(50);
    console.log(`${name}: ${files.length} files, ${decimals.all} numbers`, decimals);
  },
  300_000,
);
