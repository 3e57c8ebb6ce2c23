import { isObject, type JsonObject } from '../walk/json.ts';
import { report, type Scope } from '../walk/scope.ts';
import type { Profile } from './compile.ts';
import { checkProfile } from './conform.ts';
import { typeName } from './structure.ts';

/**
 * Holds a resource to the profiles that it says it fits, and to those that apply by what it is about.
 * @param start number of the first issue that was found with this resource
 */
export function checkClaims(resource: JsonObject, scope: Scope, start: number): void {
  const done = new Set<Profile>();
  const meta = isObject(resource['meta']) ? resource['meta'] : {};
  const claims = Array.isArray(meta['profile']) ? meta['profile'] : [];
  claims.forEach((claim: unknown, at) => {
    if (typeof claim !== 'string') return;
    const url = claim.split('|')[0] ?? claim;
    const profile = scope.profiles?.get(url) ?? scope.core.byUrl(url);
    const place = ['meta', 'profile', at];
    if (profile === undefined) sayUnknown(url, resource, scope, place);
    else if (profile.type !== resource['resourceType']) sayOtherType(profile.type, scope, place);
    else done.add(profile);
  });
  for (const profile of scope.core.appliedTo(resource)) {
    // The caller may have given another edition of it.
    done.add(scope.profiles?.get(profile.url) ?? profile);
  }
  for (const profile of done) checkProfile(resource, profile, scope, start);
}

const page = 'https://hl7.org/fhir/R4/profiling.html';

function sayUnknown(
  url: string,
  resource: JsonObject,
  scope: Scope,
  place: readonly (string | number)[],
): void {
  const type = typeName(url);
  if (scope.resourceTypes.has(type)) {
    // The definition of the type itself, which every resource of it is held to.
    if (type !== resource['resourceType']) sayOtherType(type, scope, place);
    return;
  }
  const why = 'the profile was not given for validation';
  scope.unchecked.push({ rule: url, path: [...scope.path, ...place], why });
  if (scope.saidOnce.has(`profile ${url}`)) return;
  scope.saidOnce.add(`profile ${url}`);
  report(
    scope,
    'unchecked-profile',
    { reason: 'not-given' },
    { severity: 'warning', rule: page, value: url },
    place,
  );
}

function sayOtherType(type: string, scope: Scope, place: readonly (string | number)[]): void {
  report(scope, 'contradiction', { reason: 'profile-type', type }, { rule: page }, place);
}
