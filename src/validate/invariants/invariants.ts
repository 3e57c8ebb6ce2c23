import type { FhirVersion } from '../../fhir/version.ts';
import { resolve } from '../bundles/resolve.ts';
import type { PublishedTable } from '../elements/table-types.ts';
import { type Rule, ruleOf } from '../profiles/rules/rule.ts';
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

/** Functions for some keys, and what else is published. */
export interface Rules {
  readonly invariants: readonly Invariant[];
  readonly unheld: readonly Unheld[];
}

/** A published invariant without a function: its expression, where the entry holds it. */
export interface Unheld {
  readonly key: string;
  readonly severity: 'error' | 'warning';
  readonly rule: Rule | undefined;
}

/** @param place path or type of the element that the keys stand at */
export function rulesOf(
  keys: readonly string[],
  version: FhirVersion,
  published: PublishedTable = {},
  place = '',
): Rules {
  const invariants: Invariant[] = [];
  const unheld: Unheld[] = [];
  for (const key of keys) {
    const found = byKey.get(`${key} ${version}`);
    if (found === undefined) unheld.push(unheldOf(key, published, place));
    else invariants.push(found);
  }
  return { invariants, unheld };
}

function unheldOf(name: string, published: PublishedTable, place: string): Unheld {
  // Where a key stands for another rule in a held type, the place is put after it.
  const key = name.replace(/ of .*/, '');
  const [severity, expression] = published[`${key} of ${place}`] ?? published[key] ?? ['error'];
  return { key, severity, rule: expression === undefined ? undefined : ruleOf(expression) };
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

/**
 * Published invariants that have no function, by their expressions; they are said to be unchecked where
 * those ask for what is not held here. Where an engine evaluates all, nothing is left to do.
 * @param type the data type of a value that does not tell it
 */
export function checkUnheld(
  value: unknown,
  type: string,
  rules: readonly Unheld[],
  scope: Scope,
): void {
  if (scope.engine !== undefined) return;
  const around = {
    resource: scope.resource,
    root: scope.root,
    types: scope.definitions.types,
    resolve: (reference: string) => resolve(reference, scope)?.resource,
  };
  for (const { key, severity, rule } of rules) {
    const verdict = rule?.verdict({ value, type }, around) ?? 'undecided';
    if (verdict === 'fails') {
      report(scope, 'broken-invariant', { reason: 'expression' }, { severity, rule: key });
    } else if (verdict === 'undecided') {
      sayUnheld(key, scope);
    }
  }
}

function sayUnheld(key: string, scope: Scope): void {
  const { resource } = scope;
  const said = `invariant ${key} ${String(resource['resourceType'])}`;
  if (scope.saidOnce.has(said)) return;
  scope.saidOnce.add(said);
  const why = 'evaluated at the thorough level only';
  scope.unchecked.push({ rule: key, path: [...scope.path], why });
}
