import { type BudgetOption, spend, within } from '../../issues/budget.ts';
import { hasErrors, type Issue, issue, type RecordFacts } from '../../issues/issue.ts';
import { cutIssues, endedIssue } from '../../issues/issue-list.ts';
import type { Path } from '../../issues/path.ts';
import { withShownPaths } from '../../issues/shown-path.ts';
import { isSnomedId } from '../../terminology/published/check-digits.ts';
import type { FreeSet } from '../../terminology/published/snomed.ts';
import { type SnomedPolicy, snomedMayLeave, snomedPolicyIssues } from './snomed-policy.ts';
import {
  leadsToCodes,
  mayNameSnomed,
  type SnomedUse,
  type SystemNames,
  snomedCodesOf,
  snomedInText,
  systemNames,
} from './snomed-uses.ts';

/** What the search for codes may use and show. */
export interface LicenceOptions {
  /** Look-up of the whole free set. Without it only ids of our own tables are known to be free. */
  readonly freeSet?: FreeSet;
  /** Put the offending code into `received`. Default false, since it can be patient data. */
  readonly includeValues?: boolean;
  /** What the call may take; default `budgets.resource`. Where it is spent nothing may leave. */
  readonly budget?: BudgetOption;
}

/**
 * Finds every SNOMED CT code in a FHIR resource that a policy does not let out, whoever put it
 * there: in codings and quantities, extensions, contained resources, value sets, concept maps, and
 * URIs that name a concept. Expressions and value sets by hierarchy need more than a list of ids,
 * so that only a licence lets them out. In text, narratives included, what names a concept by URI
 * counts, and an id with its term beside it does not. `toBundle` runs this over what it made.
 *
 * @param resource A bundle, or any other resource. An object that stands in several places is
 *   reported once.
 * @param policy Which codes may leave. A policy that is not understood is an issue and lets nothing
 *   out.
 * @param options The whole free set, and whether issues may hold the code; see
 *   {@link LicenceOptions}.
 * @returns An error for each code that may not leave; empty where all may.
 * @example
 * const leaks = licenceIssues(bundle, 'free-set');
 */
export function licenceIssues(
  resource: unknown,
  policy: SnomedPolicy,
  options: LicenceOptions = {},
): Issue[] {
  return within(
    'resource',
    options.budget,
    () =>
      withShownPaths(cutIssues(foundIn(resource, policy, options)), resource, (name) =>
        terminologyNames.has(name),
      ),
    (why) => [endedIssue(why)],
  );
}

function foundIn(resource: unknown, policy: SnomedPolicy, options: LicenceOptions): Issue[] {
  const issues = snomedPolicyIssues(policy);
  const applied = hasErrors(issues) ? 'none' : policy;
  if (typeof applied === 'object') return issues;
  const search: Search = {
    policy: applied,
    options,
    isSnomed: systemNames(),
    issues,
    seen: new Set(),
    path: [],
    above: undefined,
    deep: [],
  };
  if (findsNothing(resource, search, new Set())) return issues;
  look(resource, search);
  for (let next = search.deep.pop(); next !== undefined; next = search.deep.pop()) {
    look(next.value, { ...search, path: [], above: next.above });
  }
  return issues;
}

/** Names of value sets, code systems and concept maps, which a path may show as those of other resources. */
const terminologyNames: ReadonlySet<string> = new Set([
  'compose',
  'include',
  'exclude',
  'filter',
  'valueSet',
  'expansion',
  'contains',
  'group',
  'element',
  'designation',
  'dependsOn',
  'product',
  'unmapped',
]);

interface Search {
  readonly policy: FreePolicy;
  readonly options: LicenceOptions;
  readonly isSnomed: SystemNames;
  readonly issues: Issue[];
  readonly seen: Set<object>;
  readonly path: (string | number)[];
  /** What stands too deep to be reached by calls within calls; looked at afterwards. */
  readonly deep: { readonly value: object; readonly above: Above }[];
  /** The way to where `path` begins, in pieces: a copy of it for each level would be quadratic. */
  readonly above: Above | undefined;
}

interface Above {
  readonly path: Path;
  readonly above: Above | undefined;
}

function wholePath({ path, above }: Above): Path {
  const pieces = [path];
  for (let at = above; at !== undefined; at = at.above) pieces.push(at.path);
  return pieces.reverse().flat();
}

/** Levels looked at by calls within calls. */
const mostCalls = 200;

/**
 * Whether {@link look} would report nothing, which is so of nearly all that leaves and costs less to
 * see, since no path is kept. False also where that is not seen in so simple a way.
 * @param entered objects with members that are objects; what holds none needs no memory of it
 */
function findsNothing(value: unknown, search: Search, entered: Set<object>, level = 0): boolean {
  if (typeof value === 'string') return textMayLeave(value, search);
  if (typeof value !== 'object' || value === null) return true;
  if (level === mostCalls) return false;
  spend(1);
  if (Array.isArray(value)) {
    // Lists of lists are not FHIR; without memory of them they could be looked at again and again.
    return value.every(
      (member) => !Array.isArray(member) && findsNothing(member, search, entered, level + 1),
    );
  }
  return holdsNothing(value as Readonly<Record<string, unknown>>, search, entered, level);
}

function holdsNothing(
  holder: Readonly<Record<string, unknown>>,
  search: Search,
  entered: Set<object>,
  level: number,
): boolean {
  let isEntered = false;
  // By name and not by a list of them, which would be made for each object.
  for (const name in holder) {
    const member = holder[name];
    // An object without objects in it costs less than the memory of it.
    if (!isEntered && typeof member === 'object' && member !== null) {
      if (entered.has(holder)) return true;
      entered.add(holder);
      isEntered = true;
    }
    if (!findsNothing(member, search, entered, level + 1)) return false;
    // Told by its names, since most objects hold no codes and asking each for them takes longer.
    if (leadsToCodes.has(name) && !allMayLeave(snomedCodesOf(holder, search.isSnomed), search)) {
      return false;
    }
  }
  return true;
}

function textMayLeave(text: string, search: Search): boolean {
  return !mayNameSnomed(text) || allMayLeave(snomedInText(text), search);
}

function allMayLeave(uses: readonly SnomedUse[], { policy, options }: Search): boolean {
  return uses.every(
    ({ code }) => code !== undefined && snomedMayLeave(policy, code, options.freeSet),
  );
}

function look(value: unknown, search: Search, level = 0): void {
  if (typeof value === 'string') {
    if (mayNameSnomed(value)) report(snomedInText(value), search);
    return;
  }
  if (typeof value !== 'object' || value === null || search.seen.has(value)) return;
  if (level === mostCalls) {
    search.deep.push({ value, above: { path: [...search.path], above: search.above } });
    return;
  }
  spend(1);
  search.seen.add(value);
  if (Array.isArray(value)) {
    for (let at = 0; at < value.length; at++) lookAt(value[at], at, search, level);
    return;
  }
  report(snomedCodesOf(value, search.isSnomed), search);
  // By name and not by a list of them, which would be made for each object.
  const holder = value as Readonly<Record<string, unknown>>;
  for (const name in holder) lookAt(holder[name], name, search, level);
}

function lookAt(member: unknown, step: string | number, search: Search, level: number): void {
  if (typeof member === 'string' ? !mayNameSnomed(member) : typeof member !== 'object') return;
  search.path.push(step);
  look(member, search, level + 1);
  search.path.pop();
}

function report(uses: readonly SnomedUse[], search: Search): void {
  const { policy, options, issues } = search;
  for (const { code, at } of uses) {
    if (code !== undefined && snomedMayLeave(policy, code, options.freeSet)) continue;
    issues.push(codeIssue(code, [...wholePath(search), ...at], policy, options));
  }
}

type FreePolicy = 'none' | 'free-set';

/** `code` is undefined for a use of SNOMED CT that names no single concept. */
function codeIssue(
  code: string | undefined,
  path: Path,
  policy: FreePolicy,
  { freeSet, includeValues }: LicenceOptions,
): Issue {
  const received = includeValues === true ? code : undefined;
  const reason = reasonOf(code, policy, freeSet);
  return issue('licence-policy', path, { reason }, { received });
}

function reasonOf(
  code: string | undefined,
  policy: FreePolicy,
  freeSet: FreeSet | undefined,
): RecordFacts<'licence-policy'>['reason'] {
  if (policy === 'none') return 'none';
  if (code === undefined) return 'hierarchy';
  if (!isSnomedId(code)) return 'not-an-id';
  return freeSet === undefined ? 'not-looked-up' : 'outside-free-set';
}
