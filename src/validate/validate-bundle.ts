import { append } from '../data/append.ts';
import { endsLook } from '../data/plain-data.ts';
import { type BudgetOption, within } from '../issues/budget.ts';
import { hasErrors, type Issue } from '../issues/issue.ts';
import { cutIssues, endedIssue } from '../issues/issue-list.ts';
import { pathPointer } from '../issues/path.ts';
import { withShownPaths } from '../issues/shown-path.ts';
import { type BundleIndex, createIndex } from './bundles/bundle-index.ts';
import { rootProperty } from './elements/definitions.ts';
import { schemaIssues } from './elements/schema.ts';
import { compileAll, type Profiles } from './profiles/compile.ts';
import { linkIn } from './rule-links.ts';
import { graded, type SeverityRule, withRule } from './severities.ts';
import type { ExpressionEngine } from './thorough/engine.ts';
import type { ValidatedVersion } from './versions/version.ts';
import { isObject, type JsonObject } from './walk/json.ts';
import type { Scope, Unchecked } from './walk/scope.ts';
import { visitResource } from './walk/walk.ts';

/** How thoroughly, and against what, a resource is validated. */
export interface ValidateOptions {
  /** Put the offending value into `received`. Default false, since it can be patient data. */
  readonly includeValues?: boolean;
  /**
   * `fast` (default) holds resources to the invariants by functions of this library; `thorough` also
   * evaluates every published expression, which takes some fifty times as long and needs an engine.
   */
  readonly level?: 'fast' | 'thorough';
  /** Engine of the same FHIR version, from `face-neck-fhir/validate/thorough`. */
  readonly engine?: ExpressionEngine;
  /**
   * Profiles that resources are held to where their `meta.profile` names them: StructureDefinitions
   * with snapshot, and the value sets, code systems and extensions that they use; and Questionnaires,
   * which answers are held to. For many bundles put them together once with `compileProfiles`, and look at the issues that it gives.
   */
  readonly profiles?: Profiles | readonly unknown[];
  /** Other severities for some issues, such as `referenceSeverities`; the later ones win. */
  readonly severities?: readonly SeverityRule[];
  /** What the call may take; default `budgets.resource`, and of a text `budgets.json` or `.xml`. */
  readonly budget?: BudgetOption;
}

/**
 * `conforms`: every rule was looked at and none is broken. `does-not-conform`: an issue is an error.
 * `not-fully-checked`: no error was found, and some rule was not looked at; `unchecked` tells which.
 */
export type Conformance = 'conforms' | 'does-not-conform' | 'not-fully-checked';

/** The verdict on a resource. */
export interface Validation {
  readonly conformance: Conformance;
  /** The same as conformance `conforms`: never true where something that must be checked was not. */
  readonly valid: boolean;
  readonly issues: readonly Issue[];
  /** Rules that were asked for and not looked at, each at every place where it stands. */
  readonly unchecked: readonly Unchecked[];
}

/**
 * Runs the stages in their order; what is too deep or too large is not looked into.
 * @throws TypeError for an unknown level, and for an engine or profiles that are missing or not of
 *   this FHIR version
 */
export function runStages(
  bundle: unknown,
  version: ValidatedVersion,
  options: ValidateOptions = {},
  text: SourceText = noText,
): Validation {
  checkOptions(version, options);
  return within(
    'resource',
    options.budget,
    () => staged(bundle, version, options, text),
    (why) => unreadable([endedIssue(why)], version, options),
  );
}

function staged(
  bundle: unknown,
  version: ValidatedVersion,
  options: ValidateOptions,
  text: SourceText,
): Validation {
  const issues = [...text.issues, ...schemaIssues(bundle, version, options)];
  const profiles = profilesOf(options, version, issues);
  if (isObject(bundle) && !issues.some(endsLook)) {
    const scope = createScope(bundle, issues, version, options, profiles);
    visitResource(bundle, scope, version.plan, outermost);
    return validationOf(scope.issues, scope.unchecked, { bundle, version, options, text });
  }
  return validationOf(issues, [], { bundle, version, options, text });
}

/** The verdict on a text of which no resource could be read. */
export function unreadable(
  issues: readonly Issue[],
  version: ValidatedVersion,
  options: ValidateOptions,
): Validation {
  return validationOf(issues, [], { bundle: undefined, version, options, text: noText });
}

/** The text that a resource was read from. */
export interface SourceText {
  /** What reading it has told. */
  readonly issues: readonly Issue[];
  /** The same issues with their places in the text. */
  readonly located: (issues: readonly Issue[]) => readonly Issue[];
}

const noText: SourceText = { issues: [], located: (issues) => issues };

/** What a verdict is about. */
export interface Validated {
  readonly text: SourceText;
  readonly bundle: unknown;
  readonly version: ValidatedVersion;
  readonly options: ValidateOptions;
}

/** The verdict by what was found. */
export function validationOf(
  found: readonly Issue[],
  unchecked: readonly Unchecked[],
  { bundle, version, text, options: { severities = [] } }: Validated,
): Validation {
  const ruled = found.map(withRule);
  const issues = severities.length > 0 ? graded(ruled, severities) : ruled;
  const open = unchecked.length > 0 ? 'not-fully-checked' : 'conforms';
  const conformance = hasErrors(issues) ? 'does-not-conform' : open;
  const placed = text.located(cutIssues(issues));
  const shown = withShownPaths(placed, bundle, version.plan.definitions.isElementName);
  const told = linked(shown, version);
  return {
    conformance,
    valid: conformance === 'conforms',
    issues: told,
    unchecked: linked(unchecked, version),
  };
}

/** With the pages of the version in place of those of R4. */
function linked<Told extends { readonly rule?: string }>(
  found: readonly Told[],
  { fhirVersion }: ValidatedVersion,
): readonly Told[] {
  if (fhirVersion === 'R4') return found;
  return found.map((each) =>
    each.rule === undefined ? each : { ...each, rule: linkIn(each.rule, fhirVersion) },
  );
}

/** What is wrong with compiled profiles was told when they were compiled. */
export function profilesOf(
  { profiles }: ValidateOptions,
  { plan }: ValidatedVersion,
  issues: Issue[],
): Profiles | undefined {
  if (!isList(profiles)) return profiles;
  const compiled = compileAll(profiles, plan.definitions);
  append(issues, compiled.issues);
  return compiled;
}

function isList(value: ValidateOptions['profiles']): value is readonly unknown[] {
  return Array.isArray(value);
}

/** A mistake of the caller here would be taken for a validation that was not done. */
export function checkOptions(
  { fhirVersion }: ValidatedVersion,
  { level = 'fast', engine, profiles }: ValidateOptions,
): void {
  if (level !== 'fast' && level !== 'thorough') {
    throw new TypeError(`cannot validate at level ${level}: expected fast or thorough`);
  }
  if (level === 'thorough' && engine?.fhirVersion !== fhirVersion) {
    throw new TypeError(
      `cannot validate thoroughly: expected an engine of FHIR ${fhirVersion}, got ${engine?.fhirVersion ?? 'none'}`,
    );
  }
  if (profiles === undefined || isList(profiles)) return;
  // Callers in plain JavaScript can pass anything.
  const given: Partial<Profiles> | null = profiles;
  if (given?.definitions?.fhirVersion !== fhirVersion) {
    throw new TypeError(
      `cannot validate against the profiles: expected a list, or what compileProfiles gave for FHIR ${fhirVersion}`,
    );
  }
}

/** What the outermost resource stands under: nothing. */
export const outermost = rootProperty('', 'Resource');

/**
 * Where a walk over a resource begins.
 * @param known the index of a bundle that was made before: once for each entry would be quadratic
 */
export function createScope(
  resource: JsonObject,
  issues: Issue[],
  { plan, knownTypes, core }: ValidatedVersion,
  { includeValues = false, level, engine }: ValidateOptions,
  profiles: Profiles | undefined,
  known?: BundleIndex,
): Scope {
  const errors = issues.filter(({ severity }) => severity === 'error');
  return {
    definitions: profiles?.definitions ?? plan.definitions,
    resourceTypes: knownTypes,
    includeValues,
    issues,
    told: new Set(errors.map(({ path }) => pathPointer(path))),
    path: [],
    trail: [],
    resource,
    root: resource,
    depth: 0,
    index: known ?? (resource['resourceType'] === 'Bundle' ? createIndex(resource) : undefined),
    entry: 0,
    elementIds: undefined,
    contained: undefined,
    idsInRoot: undefined,
    engine: level === 'thorough' ? engine : undefined,
    profiles: profiles?.byUrl,
    forms: profiles?.forms,
    core,
    units: new Map(),
    dates: new Map(),
    systems: new Map(),
    conforming: new Map(),
    open: false,
    saidOnce: new Set(),
    unchecked: [],
  };
}
