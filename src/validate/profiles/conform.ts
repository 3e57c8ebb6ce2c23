import { hasErrors, type Issue } from '../../issue.ts';
import { pathPointer } from '../../path.ts';
import type { JsonObject } from '../json.ts';
import type { Resolved } from '../resolve.ts';
import type { Scope } from '../scope.ts';
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
  checkAgainst(resource, profile, scope, fits);
  dropRepeated(scope.issues, start, before);
}

/** A profile repeats what its base asks for, and what was told of the base need not be told again. */
function dropRepeated(issues: Issue[], start: number, before: number): void {
  if (issues.length === before) return;
  const key = ({ code, path, expected }: Issue) => `${pathPointer(path)} ${code} ${expected}`;
  const told = new Set(issues.slice(start, before).map(key));
  const added = issues.splice(before).filter((each) => !told.has(key(each)));
  for (const each of added) issues.push(each);
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
