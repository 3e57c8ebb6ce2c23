import { describe, expect, test } from 'vitest';
import { pathText } from '../../src/issues/path.ts';
import { codesFromConceptMap } from '../../src/terminology/code-map/from-concept-map.ts';

const OURS = 'https://face-neck-fhir.example/fhir/CodeSystem/findings';
const HARBOUR = 'https://harbour.example/codes';

function map(group: object, ...more: object[]): object {
  return { resourceType: 'ConceptMap', status: 'active', group: [group, ...more] };
}

function outcome(value: unknown, options = {}) {
  const { value: codes, issues } = codesFromConceptMap(value, options);
  return {
    codings: codes?.entries
      .get('findings|naevus')
      ?.codings.map(({ code, relation }) => [code, relation]),
    replaces: [...(codes?.entries.get('findings|naevus')?.replaces ?? [])],
    issues: issues.map(({ code, path }) => [code, pathText(path)]),
  };
}

// Words of http://hl7.org/fhir/concept-map-equivalence (R4) and concept-map-relationship (R5).
const r4 = {
  equal: 'equivalent',
  equivalent: 'equivalent',
  wider: 'wider',
  subsumes: 'wider',
  narrower: 'narrower',
  specializes: 'narrower',
  inexact: 'relatedto',
  relatedto: 'relatedto',
};
const r5 = {
  equivalent: 'equivalent',
  'source-is-narrower-than-target': 'wider',
  'source-is-broader-than-target': 'narrower',
  'related-to': 'relatedto',
};

describe('a code map as ConceptMap', () => {
  test.each(Object.entries(r4))('R4 %s is %s', (equivalence, relation) => {
    const target = [{ code: 'N1', equivalence }];
    const group = { source: OURS, target: HARBOUR, element: [{ code: 'naevus', target }] };
    expect(outcome(map(group))).toMatchObject({ codings: [['N1', relation]], issues: [] });
  });

  test.each(Object.entries(r5))('R5 %s is %s', (relationship, relation) => {
    const target = [{ code: 'N1', relationship }];
    const group = {
      source: `${OURS}|1.0.0`,
      target: `${HARBOUR}|2`,
      element: [{ code: 'naevus', target }],
    };
    expect(outcome(map(group))).toMatchObject({ codings: [['N1', relation]], issues: [] });
  });

  test('what has no match loses our coding where the map replaces', () => {
    const elements = [
      { code: 'naevus', target: [{ equivalence: 'unmatched' }] },
      { code: 'naevus', noMap: true },
    ];
    for (const element of elements) {
      const group = { source: OURS, target: 'http://snomed.info/sct', element: [element] };
      expect(outcome(map(group), { action: 'replace' })).toEqual({
        codings: [],
        replaces: ['http://snomed.info/sct'],
        issues: [],
      });
      expect(outcome(map(group)).replaces).toEqual([]);
    }
  });

  test('groups make chains', () => {
    const first = {
      source: OURS,
      target: HARBOUR,
      element: [{ code: 'naevus', target: [{ code: 'N1', equivalence: 'equivalent' }] }],
    };
    const second = {
      source: HARBOUR,
      target: 'https://vineyard.example/codes',
      element: [{ code: 'N1', target: [{ code: 'V7', equivalence: 'wider' }] }],
    };
    expect(outcome(map(first, second)).codings).toEqual([
      ['N1', 'equivalent'],
      ['V7', 'wider'],
    ]);
  });

  test('faults are told where they stand', () => {
    const elements = [
      { code: 'nevus', target: [{ code: 'N1', equivalence: 'equivalent' }] },
      { code: 'naevus', target: [{ code: 'N1', equivalence: 'alike' }] },
      { code: 'naevus', target: [{ code: 'N1' }] },
      { code: 7, target: [] },
      'naevus',
    ];
    expect(outcome(map({ source: OURS, target: HARBOUR, element: elements })).issues).toEqual([
      ['wrong-type', 'group[0].element[4]'],
      ['unknown-word', 'group[0].element[1].target[0].equivalence'],
      ['missing-property', 'group[0].element[2].target[0].equivalence'],
      ['wrong-type', 'group[0].element[3].code'],
      ['unknown-code', 'group[0].element[0].code'],
    ]);
    const target = [{ code: '10203-9', equivalence: 'equivalent' }];
    const group = {
      source: 'finding',
      target: 'http://loinc.org',
      element: [{ code: 'x', target }],
    };
    expect(outcome(map(group)).issues).toEqual([
      ['unknown-code', 'group[0].source'],
      ['wrong-check-digit', 'group[0].element[0].target[0].code'],
    ]);
  });

  test.each([
    [null, 'wrong-type'],
    ['ConceptMap', 'wrong-type'],
    [[], 'wrong-type'],
    [{ resourceType: 'ValueSet' }, 'wrong-type'],
    [{ resourceType: 'ConceptMap' }, 'missing-property'],
    [{ resourceType: 'ConceptMap', group: {} }, 'wrong-type'],
    [{ resourceType: 'ConceptMap', group: [{ source: OURS }] }, 'missing-property'],
    [JSON.parse('{"resourceType":"ConceptMap","__proto__":{"group":[]}}'), 'unsafe-property'],
  ])('%j is %s', (value, code) => {
    const { value: codes, issues } = codesFromConceptMap(value);
    expect(codes).toBeUndefined();
    expect(issues[0]?.code).toBe(code);
  });
});
