import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { fromJson } from '../../src/fhir/json/from-json.ts';
import { hasErrors } from '../../src/issues/issue.ts';
import { keptBases } from '../reference/bases.ts';
import { publishedExamples, releases } from '../reference/definitions.ts';
import { mutants } from '../reference/mutants.ts';
import { countText, verdictCounter } from '../validate/verdicts/invariant-verdicts.ts';

// The measure is FHIRPath, by the library fhirpath, on the expressions as HL7 published them.

const bases = keptBases();

/** EVERY_MUTANT=3 takes every third. */
const every = Number(process.env['EVERY_MUTANT'] ?? 1);

describe.each(releases)('our invariants have the verdicts of FHIRPath in %s', (version) => {
  test('on every element of every mutant', () => {
    const { count, look } = verdictCounter(version);
    let at = 0;
    let texts = 0;
    for (const { fault, base, text } of mutants(bases, version)) {
      at += 1;
      if (at % every !== 0) continue;
      const { value, issues } = fromJson(text);
      // What cannot be read as JSON has no elements.
      if (hasErrors(issues)) continue;
      texts += 1;
      look(`${fault} in ${base}`, value);
    }
    console.info(`${version}, ${texts} mutants: ${countText(count)}`);
    expect(count.differences).toEqual([]);
    expect(texts).toBeGreaterThan(1700 / every);
  });

  test('on every element of the published examples', async () => {
    const { count, look } = verdictCounter(version);
    const folder = await publishedExamples(version);
    let texts = 0;
    for (const file of (await readdir(folder)).filter((name) => held.test(name)).sort()) {
      const text = await readFile(join(folder, file), 'utf8');
      look(file, fromJson(text).value);
      texts += 1;
    }
    console.info(`${version}, ${texts} examples: ${countText(count)}`);
    expect(count.differences).toEqual([]);
    expect(texts).toBeGreaterThan(100);
  });
});

/** Types of resources whose definitions the library holds, and the bundles of the published search sets. */
const held =
  /^(?:Observation|DiagnosticReport|Composition|Patient|Practitioner|PractitionerRole|Organization|Encounter|BodyStructure|ServiceRequest|Provenance|Device|DocumentReference|Media|Consent|OperationOutcome|Bundle)-.*\.json$/;
