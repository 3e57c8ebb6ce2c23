import type { FhirVersion } from '../../fhir/version.ts';
import { report, type Scope } from '../walk/scope.ts';
import { bundleInvariants } from './bundle.ts';
import { containedInvariants } from './contained.ts';
import { dataTypeInvariants } from './data-types.ts';
import type { Invariant } from './invariant.ts';
import { linkInvariants } from './links.ts';
import { rangeInvariants } from './ranges.ts';
import { resourceInvariants } from './resources.ts';
import { timingInvariants } from './timing.ts';

export type { Invariant } from './invariant.ts';

/**
 * The stage of published invariants: each a small function with the verdict that FHIRPath has on the
 * published expression. The slow suite compares the two on every mutant.
 */
const invariants: readonly Invariant[] = [
  ...dataTypeInvariants,
  ...rangeInvariants,
  ...timingInvariants,
  ...containedInvariants,
  ...resourceInvariants,
  ...linkInvariants,
  ...bundleInvariants,
];

/** By key and version. Of the types that the small entries hold, the tables name no key that is not here. */
const byKey: ReadonlyMap<string, Invariant> = new Map(
  invariants.flatMap((each) =>
    each.versions.map((version): [string, Invariant] => [`${each.key} ${version}`, each]),
  ),
);

/** Keys of all published rules that some stage holds resources to. */
export const knownRules: ReadonlySet<string> = new Set([
  ...invariants.map(({ key }) => key),
  ...['ele-1', 'ext-1', 'txt-1', 'txt-2'],
]);

/** Functions for some keys, and the keys that are left to the thorough level. */
export interface Rules {
  readonly invariants: readonly Invariant[];
  readonly unheld: readonly string[];
}

export function rulesOf(keys: readonly string[], version: FhirVersion): Rules {
  const invariants: Invariant[] = [];
  const unheld: string[] = [];
  for (const key of keys) {
    const found = byKey.get(`${key} ${version}`);
    if (found === undefined) unheld.push(key);
    else invariants.push(found);
  }
  return { invariants, unheld };
}

export function checkInvariants(value: unknown, rules: readonly Invariant[], scope: Scope): void {
  for (const rule of rules) {
    if (rule.holds(value, scope)) continue;
    report(
      scope,
      'broken-invariant',
      { reason: 'published', says: rule.says, key: rule.key },
      { severity: rule.severity, rule: rule.key },
    );
  }
}

/** Published invariants that have no function here are said to be unchecked where none evaluates them. */
export function sayUnheld(place: string, keys: readonly string[], scope: Scope): void {
  if (scope.engine !== undefined || scope.saidOnce.has(`invariants ${place}`)) return;
  scope.saidOnce.add(`invariants ${place}`);
  const why = 'evaluated at the thorough level only';
  const path = [...scope.path];
  // Where a key stands for another rule in a held type, the place is put after it.
  for (const key of keys) scope.unchecked.push({ rule: key.replace(/ of .*/, ''), path, why });
}
