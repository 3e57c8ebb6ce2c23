import { hasErrors, type Issue } from '../../issues/issue.ts';
import { pathPointer } from '../../issues/path.ts';
import type { Resolved } from '../bundles/resolve.ts';
import type { JsonObject } from '../walk/json.ts';
import type { Scope } from '../walk/scope.ts';
import { checkAgainst } from './check.ts';
import type { Profile } from './compile.ts';

/**
 * Holds a resource to one profile.
 * @param start number of the first issue that was found with this resource
 */
export function checkProfile(
  resource: JsonObject,
  profile: Profile,
  scope: Scope,
  start: number,
): void {
  const before = scope.issues.length;
  for (const url of profile.missing) {
    const why = `it is built on ${url}, which was not given for validation`;
    scope.unchecked.push({ rule: profile.url, path: [...scope.path], why });
  }
  checkAgainst(resource, profile, scope, fits);
  dropRepeated(scope.issues, start, before);
}

/**
 * A profile repeats what its base asks for, and what was told of the base need not be told again. It is
 * the same only where place, code, expected form, severity and rule are: a warning of the base never
 * stands for an error of the profile, nor one invariant for another.
 */
function dropRepeated(issues: Issue[], start: number, before: number): void {
  if (issues.length === before) return;
  const told = new Set(issues.slice(start, before).map(sameness));
  const added = issues.splice(before).filter((each) => {
    const key = sameness(each);
    const isNew = !told.has(key);
    told.add(key);
    return isNew;
  });
  for (const each of added) issues.push(each);
}

function sameness({ code, path, expected, severity, rule = '' }: Issue): string {
  // What an invariant asks is known by its key alone, which stands after the URL of a definition.
  const key = code === 'broken-invariant' ? rule.slice(rule.indexOf('#') + 1) : '';
  return [pathPointer(path), code, severity, key, expected].join(' ');
}

/**
 * Whether what a reference leads to fits a profile; worked out once for each. While it is being worked
 * out it counts as fitting, so that resources that refer to each other come to an end.
 */
function fits({ resource, entry }: Resolved, profile: Profile, scope: Scope): boolean {
  const known = scope.conforming.get(resource) ?? new Map<string, boolean>();
  scope.conforming.set(resource, known);
  const before = known.get(profile.url);
  if (before !== undefined) return before;
  known.set(profile.url, true);
  const there: Scope = {
    ...scope,
    issues: [],
    unchecked: [],
    saidOnce: new Set(),
    told: new Set(),
    path: [],
    trail: [],
    resource,
    depth: 0,
    ...(entry !== undefined && {
      root: resource,
      entry: entry.number,
      contained: undefined,
      idsInRoot: undefined,
    }),
  };
  checkAgainst(resource, profile, there, fits);
  const verdict = !hasErrors(there.issues);
  known.set(profile.url, verdict);
  return verdict;
}
