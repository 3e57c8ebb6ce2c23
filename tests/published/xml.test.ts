import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import { describe, expect, it } from 'vitest';
import { fromJson } from '../../src/fhir/json/from-json.ts';
import { fromXml } from '../../src/fhir/xml/from-xml.ts';
import { toXml } from '../../src/fhir/xml/to-xml.ts';
import { heldResources } from '../../src/generate/fhir-schema/prune.ts';
import { published } from '../../src/generate/published.ts';
import { xmlElementFiles } from '../../src/generate/xml-elements.ts';

// HL7's packages hold the examples in JSON alone. How they look in XML is checked against the readers
// of others in tests/readers and tests/reference; here, that nothing of them is lost on the way.
describe('published examples through XML', () => {
  it.each([
    ['R4', 'hl7.fhir.r4.examples', '4.0.1'],
    ['R4B', 'hl7.fhir.r4b.examples', '4.3.0'],
    ['R5', 'hl7.fhir.r5.examples', '5.0.0'],
  ] as const)('come back as they were in %s', async (fhirVersion, name, version) => {
    const folder = await published(name, version);
    const files = readdirSync(folder).filter(
      (file) => file.endsWith('.json') && heldResources.includes(file.split('-')[0] ?? ''),
    );
    const changed: string[] = [];
    let same = 0;
    for (const file of files) {
      const { value } = fromJson(readFileSync(join(folder, file), 'utf8').replace(/^\uFEFF/, ''));
      const { value: text, issues } = toXml(value, { fhirVersion });
      if (text === undefined) {
        // They hold resources of other types inside.
        const codes = new Set(issues.map(({ code }) => code));
        // A long list of them ends with a count.
        codes.delete('issues-cut');
        expect({ file, codes: [...codes] }).toEqual({ file, codes: ['unchecked-resource'] });
        continue;
      }
      if (isDeepStrictEqual(fromXml(text, { fhirVersion }).value, value)) same += 1;
      else changed.push(file);
    }
    expect(changed).toEqual([]);
    expect(same).toBeGreaterThan(190);
    console.log(`${fhirVersion}: ${same} of ${files.length} examples equal after XML`);
  });
});

describe('tables of elements', () => {
  it('are what the published definitions give', async () => {
    const folder = new URL('../../src/fhir/xml/tables/', import.meta.url);
    for (const [name, text] of await xmlElementFiles()) {
      expect(text).toBe(readFileSync(new URL(name, folder), 'utf8'));
    }
  });
});
