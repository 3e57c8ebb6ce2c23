import { describe, expect, test } from 'vitest';
import { fromJson } from '../../../src/fhir/json/from-json.ts';
import { hasErrors } from '../../../src/issues/issue.ts';
import { createDefinitions } from '../../../src/validate/elements/definitions.ts';
import { rulesOf } from '../../../src/validate/invariants/invariants.ts';
import * as r4 from '../../../src/validate/tables/r4.ts';
import { expressions as ofR4 } from '../../../src/validate/tables/r4-expressions.ts';
import * as r4b from '../../../src/validate/tables/r4b.ts';
import { expressions as ofR4b } from '../../../src/validate/tables/r4b-expressions.ts';
import * as r5 from '../../../src/validate/tables/r5.ts';
import { expressions as ofR5 } from '../../../src/validate/tables/r5-expressions.ts';
import { keptBases } from '../../reference/bases.ts';
import { mutants } from '../../reference/mutants.ts';
import { sampled } from '../../sampled.ts';
import { countText, verdictCounter } from './invariant-verdicts.ts';

// The measure is FHIRPath, by the library fhirpath, on the expressions as HL7 published them. The
// slow suite does the same in all versions, with every mutant and with the published examples.

const versions = ['R4', 'R4B', 'R5'] as const;
const tables = { R4: r4, R4B: r4b, R5: r5 } as const;
const published = { R4: ofR4, R4B: ofR4b, R5: ofR5 } as const;

/** Rules that stages of their own hold: of elements, of extensions, of narratives. */
const heldByStages = {
  Element: ['ele-1'],
  Extension: ['ext-1'],
  'Narrative.div': ['txt-1', 'txt-2'],
};

/** Their rules stand with every type that builds on them. */
const abstractTypes = new Set(['DomainResource', 'Resource']);

/** What is published for the types that the small entries hold. */
function publishedFor(version: (typeof versions)[number]) {
  const { types } = tables[version];
  return Object.entries(published[version]).filter(([place]) =>
    Object.hasOwn(types, place.split('.')[0] ?? ''),
  );
}

/** Keys of the invariants that the walk over a resource looks at, by place. */
function plannedRules(version: (typeof versions)[number]): Map<string, Set<string>> {
  const { types } = createDefinitions(version, { ...tables[version], terminology: {} });
  const planned = new Map<string, Set<string>>();
  const add = (place: string, keys: readonly string[]): void => {
    if (keys.length === 0) return;
    planned.set(place, new Set([...(planned.get(place) ?? []), ...keys]));
  };
  for (const name of Object.keys(tables[version].types)) {
    const { rules = [], properties = new Map() } = types.get(name) ?? {};
    if (abstractTypes.has(name)) continue;
    add(name, rules);
    for (const property of properties.values()) {
      if (property.path !== property.type) add(property.path, property.rules);
    }
  }
  return planned;
}

describe.each(versions)('invariants of %s', (version) => {
  test('stand where they are published', () => {
    const planned = plannedRules(version);
    for (const [place, keys] of Object.entries(heldByStages)) planned.set(place, new Set(keys));
    const expected = publishedFor(version).map(([place, rules]) => [
      place,
      rules.map(({ key }) => key).sort(),
    ]);
    const ours = [...planned].map(([place, keys]) => [place, [...keys].sort()]);
    expect(Object.fromEntries(ours)).toEqual(Object.fromEntries(expected));
  });

  test('have the severity with which they are published', () => {
    const own = new Set(Object.values(heldByStages).flat());
    const rules = publishedFor(version)
      .flatMap(([, some]) => some)
      .filter(({ key }) => !own.has(key));
    const ours = rules.map(
      ({ key }) => `${key} ${rulesOf([key], version).invariants[0]?.severity}`,
    );
    expect(ours).toEqual(rules.map(({ key, severity }) => `${key} ${severity}`));
  });
});

test('invariants of R4 have the verdicts of FHIRPath on some mutants', () => {
  const version = 'R4';
  const { count, look } = verdictCounter(version);
  let at = 0;
  for (const { fault, base, text } of mutants(keptBases(), version)) {
    at += 1;
    if (at % sampled(150, 75) !== 0) continue;
    const { value, issues } = fromJson(text);
    if (!hasErrors(issues)) look(`${fault} in ${base}`, value);
  }
  console.info(`${version}: ${countText(count)}`);
  expect(count.differences).toEqual([]);
  expect(count.compared.size).toBeGreaterThan(sampled(15, 25));
}, 120_000);
