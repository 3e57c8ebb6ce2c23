import { beforeAll, describe, expect, it } from 'vitest';
import { packageDefinitions } from '../../src/generate/fhir-package/package-files.ts';
import { issueText, toBundleOrThrow } from '../../src/index.ts';
import { CANONICAL_BASE } from '../../src/terminology/canonical-base.ts';
import { sampleExams } from '../../src/testing/sample-exam.ts';
import { thoroughR5 } from '../../src/validate/thorough/thorough.ts';
import { compileProfiles, type Profiles, validateBundle } from '../../src/validate/versions/r5.ts';
import { sampled } from '../sampled.ts';

// The verdicts of HL7's validator on the same: tests/reference/package.test.ts. For the profiles of R4:
// tests/validate/profiles/own-profiles.test.ts.
describe('exports of R5 and the profiles that they claim', () => {
  let profiles: Profiles;
  beforeAll(async () => {
    const order = { version: 'R5', base: CANONICAL_BASE, packageVersion: '0.1.0' } as const;
    profiles = compileProfiles(await packageDefinitions(order));
  });
  const exams = [
    ...sampleExams(1, sampled(2, 5), { size: 'small' }),
    ...sampleExams(1, sampled(1, 2), { size: 'edge' }),
  ];

  it.each(['extension', 'body-structure', 'text'] as const)(
    'agree, with the side as %s',
    (laterality) => {
      for (const exam of exams) {
        const bundle = toBundleOrThrow(exam, {
          fhirVersion: 'R5',
          laterality,
          bundleType: 'document',
          profiles: true,
        });
        const { valid, issues } = validateBundle(bundle, { profiles });
        const errors = issues.filter(({ severity }) => severity === 'error').map(issueText);
        expect({ valid, errors }).toEqual({ valid: true, errors: [] });
      }
    },
  );

  it.each([
    ['interpretation', 'fast'],
    ['performer', 'fast'],
    // Site or body structure is a rule in FHIRPath, which the thorough level evaluates.
    ['bodySite', 'thorough'],
  ] as const)('a finding without %s is refused by its profile alone', (property, level) => {
    const [exam] = exams;
    const bundle = toBundleOrThrow(exam ?? expect.fail(), { fhirVersion: 'R5', profiles: true });
    const text = JSON.stringify(bundle, (_key, value) => {
      const claims: unknown = value?.meta?.profile?.[0];
      const finding = typeof claims === 'string' && claims.endsWith('/face-neck-finding');
      return finding ? { ...value, [property]: undefined } : value;
    });
    expect(text.length).toBeLessThan(JSON.stringify(bundle).length);
    const engine = { level, ...(level === 'thorough' && { engine: thoroughR5 }) };
    // The claim alone, of a profile that is not given, is left unchecked.
    const alone = validateBundle(JSON.parse(text), engine);
    expect(alone.conformance).toBe('not-fully-checked');
    const held = validateBundle(JSON.parse(text), { profiles, ...engine });
    expect(held.conformance).toBe('does-not-conform');
  });
});
