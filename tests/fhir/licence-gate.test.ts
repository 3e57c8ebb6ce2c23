import { describe, expect, test } from 'vitest';
import { licenceIssues } from '../../src/fhir/licence/licence-gate.ts';
import type { SnomedPolicy } from '../../src/fhir/licence/snomed-policy.ts';
import { pathText } from '../../src/issues/path.ts';
import { freeSet } from '../../src/terminology/published/free-set.ts';
import planted from '../cases/terminology/planted-codes.json' with { type: 'json' };

// 68426009 Nasal septum structure and 14240001 Poliosis are not members of the Global Patient Set
// 2020-09 (hl7.terminology.r4 7.0.1, ValueSet-snomed-intl-gps.json); 11934000 Ptosis of eyelid is.
const SCT = 'http://snomed.info/sct';
const outside = { system: SCT, code: '68426009' };
const free = { system: SCT, code: '11934000' };

const licence: SnomedPolicy = {
  licensed: {
    holder: 'Harbour clinic',
    edition: 'http://snomed.info/sct/900000000000207008/version/20240101',
  },
};

function places(resource: unknown, policy: SnomedPolicy, look: object = { freeSet }): string[] {
  return licenceIssues(resource, policy, look).map((found) => {
    expect(found.code).toBe('licence-policy');
    return pathText(found.path);
  });
}

describe('a planted code is caught', () => {
  test.each(planted)('$description', ({ resource, places: expected }) => {
    expect(places(resource, 'free-set')).toEqual(expected);
    expect(places(resource, 'none')).toEqual(expect.arrayContaining(expected));
    expect(licenceIssues(resource, licence)).toEqual([]);
  });
});

describe('policies', () => {
  const observation = {
    resourceType: 'Observation',
    code: { coding: [free, outside], text: 'as http://snomed.info is named in a text' },
    text: { status: 'generated', div: '<div>http://snomed.info 68426009 Nasal septum</div>' },
  };

  test('free-set lets the free set out and nothing else', () => {
    expect(places(observation, 'free-set')).toEqual(['code.coding[1].code']);
  });

  test('none lets nothing out', () => {
    expect(places(observation, 'none')).toEqual(['code.coding[0].code', 'code.coding[1].code']);
  });

  test('without the look-up an id that our tables do not hold is not taken for free', () => {
    // 22298006 Myocardial infarction is free (same file), but no row of ours.
    const infarction = { coding: [{ system: SCT, code: '22298006' }] };
    expect(places(infarction, 'free-set')).toEqual([]);
    expect(licenceIssues(infarction, 'free-set')[0]?.message).toContain('the option freeSet');
  });

  test('one that is not understood is an issue and counts as none', () => {
    // A caller without types can pass anything.
    const policies = ['licensed', 'freeset', null, 7, {}, { licensed: {} }] as unknown[];
    for (const policy of policies) {
      const issues = licenceIssues({ coding: [free] }, policy as SnomedPolicy, { freeSet });
      expect(issues.map(({ code }) => code)).toContain('licence-policy');
      expect(issues[0]?.path[0]).toBe('snomed');
    }
  });

  test('a licence needs a holder and a version URI', () => {
    const edition = 'http://snomed.info/sct/900000000000207009/version/20240101'; // wrong check digit
    const issues = licenceIssues({}, { licensed: { holder: ' ', edition } });
    expect(issues.map(({ code, path }) => [code, pathText(path)])).toEqual([
      ['missing-property', 'snomed.licensed.holder'],
      ['invalid-value', 'snomed.licensed.edition'],
    ]);
  });
});

test('values stay out of issues unless asked for', () => {
  const [plain] = licenceIssues({ coding: [outside] }, 'free-set', { freeSet });
  expect(JSON.stringify(plain)).not.toContain('68426009');
  const [told] = licenceIssues({ coding: [outside] }, 'free-set', { freeSet, includeValues: true });
  expect(told?.received).toBe('68426009');
});

test('a structure that goes round in a circle, or very deep, ends', () => {
  const circle: Record<string, unknown> = { coding: [outside] };
  circle.extension = [circle];
  expect(places(circle, 'free-set')).toEqual(['coding[0].code']);
  let deep: object = { coding: [outside] };
  for (let level = 0; level < 50_000; level++) deep = { extension: [deep] };
  expect(licenceIssues(deep, 'free-set', { freeSet })).toHaveLength(1);
});
