import { type SnomedPolicy, snomedMayLeave, snomedPolicyIssues } from '../fhir/snomed-policy.ts';
import { hasErrors, type Issue, issue } from '../issue.ts';
import type { Path } from '../path.ts';
import { isSnomedId } from '../terminology/check-digits.ts';
import type { FreeSet } from '../terminology/snomed.ts';
import { mayNameSnomed, type SnomedUse, snomedCodesOf, snomedInText } from './snomed-codes.ts';

export interface LicenceOptions {
  /** Look-up of the whole free set. Without it only ids of our own tables are known to be free. */
  readonly freeSet?: FreeSet;
  /** Put the offending code into `received`. Default false, since it can be patient data. */
  readonly includeValues?: boolean;
}

/**
 * Every SNOMED CT code in a finished bundle, or any other FHIR resource, that the policy does not let
 * out, whoever put it there: in codings and quantities, extensions, contained resources, value sets,
 * concept maps, and URIs that name a concept. Expressions and value sets by hierarchy need more than
 * a list of ids, so no policy but a licence lets them out. What stands in the XHTML of a narrative is
 * text and not looked at; an object that stands in several places is told once. A policy that is not
 * understood is an issue and lets nothing out.
 */
export function licenceIssues(
  resource: unknown,
  policy: SnomedPolicy,
  options: LicenceOptions = {},
): Issue[] {
  const issues = snomedPolicyIssues(policy);
  const applied = hasErrors(issues) ? 'none' : policy;
  if (typeof applied === 'object') return issues;
  const open: Node[] = [{ value: resource }];
  const seen = new Set<object>();
  for (let node = open.pop(); node !== undefined; node = open.pop()) {
    const { value } = node;
    for (const { code, at } of usesOf(value)) {
      issues.push(...codeIssues(code, [...pathOf(node), ...at], applied, options));
    }
    if (typeof value !== 'object' || value === null || seen.has(value)) continue;
    seen.add(value);
    open.push(...members(value, node));
  }
  return issues;
}

/** A value and where it was found: paths are written out only for issues, since nesting may be deep. */
interface Node {
  readonly value: unknown;
  readonly step?: string | number;
  readonly parent?: Node;
}

/** What is to be looked at in an object or list, the last first. */
function members(holder: object, parent: Node): Node[] {
  const found: Node[] = [];
  for (const [name, value] of Object.entries(holder)) {
    if (name === 'div' || !holdsMore(value)) continue;
    found.push({ value, step: Array.isArray(holder) ? Number(name) : name, parent });
  }
  return found.reverse();
}

function holdsMore(value: unknown): boolean {
  return typeof value === 'string' ? mayNameSnomed(value) : typeof value === 'object';
}

function pathOf(node: Node): Path {
  const steps: (string | number)[] = [];
  for (let at: Node | undefined = node; at?.step !== undefined; at = at.parent) steps.push(at.step);
  return steps.reverse();
}

function usesOf(value: unknown): readonly SnomedUse[] {
  if (typeof value === 'string') return snomedInText(value);
  return typeof value === 'object' && value !== null ? snomedCodesOf(value) : [];
}

type FreePolicy = 'none' | 'free-set';

/** `code` is undefined for a use of SNOMED CT that names no single concept. */
function codeIssues(
  code: string | undefined,
  path: Path,
  policy: FreePolicy,
  { freeSet, includeValues }: LicenceOptions,
): Issue[] {
  if (code !== undefined && snomedMayLeave(policy, code, freeSet)) return [];
  const details = {
    expected:
      policy === 'none' ? 'no SNOMED CT code' : 'an id of the Global Patient Set of 2020-09',
    received: includeValues === true ? code : undefined,
  };
  return [issue('licence-policy', path, reason(code, policy, freeSet), details)];
}

function reason(
  code: string | undefined,
  policy: FreePolicy,
  freeSet: FreeSet | undefined,
): string {
  if (policy === 'none') return 'a SNOMED CT code, and the policy lets none out';
  if (code === undefined) return 'SNOMED CT by its hierarchy, which the free set does not hold';
  if (!isSnomedId(code)) return 'no plain SNOMED CT id, so it can not be in the free set';
  return freeSet === undefined
    ? 'a SNOMED CT id that is not known to be free; give freeSet to look it up'
    : 'a SNOMED CT id outside the free set';
}
