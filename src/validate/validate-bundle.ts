import { hasErrors, type Issue } from '../issue.ts';
import { pathPointer } from '../path.ts';
import { createIndex } from './bundle-index.ts';
import { rootProperty } from './definitions.ts';
import { isObject, type JsonObject } from './json.ts';
import { schemaIssues } from './schema.ts';
import type { Scope } from './scope.ts';
import type { ValidatedVersion } from './version.ts';
import { visitResource } from './walk.ts';

export interface ValidateOptions {
  /** Put the offending value into `received`. Default false, since it can be patient data. */
  readonly includeValues?: boolean;
}

export interface Validation {
  /** No issue is an error. */
  readonly valid: boolean;
  readonly issues: readonly Issue[];
}

/** Runs the stages in their order; what is too deep or too large is not looked into. */
export function runStages(
  bundle: unknown,
  version: ValidatedVersion,
  options: ValidateOptions = {},
): Validation {
  const issues = schemaIssues(bundle, version, options);
  if (isObject(bundle) && !issues.some(({ code }) => code === 'too-deep' || code === 'too-large')) {
    const scope = createScope(bundle, issues, version, options);
    visitResource(bundle, scope, version.plan, outermost);
    return { valid: !hasErrors(scope.issues), issues: scope.issues };
  }
  return { valid: !hasErrors(issues), issues };
}

/** What the outermost resource stands under: nothing. */
const outermost = rootProperty('', 'Resource');

function createScope(
  resource: JsonObject,
  issues: Issue[],
  { plan, knownTypes }: ValidatedVersion,
  { includeValues = false }: ValidateOptions,
): Scope {
  const errors = issues.filter(({ severity }) => severity === 'error');
  return {
    definitions: plan.definitions,
    resourceTypes: knownTypes,
    includeValues,
    issues,
    told: new Set(errors.map(({ path }) => pathPointer(path))),
    path: [],
    trail: [],
    resource,
    root: resource,
    depth: 0,
    index: resource['resourceType'] === 'Bundle' ? createIndex(resource) : undefined,
    entry: 0,
    elementIds: undefined,
    contained: undefined,
    idsInRoot: undefined,
    units: new Map(),
    dates: new Map(),
    systems: new Map(),
    saidOnce: new Set(),
  };
}
