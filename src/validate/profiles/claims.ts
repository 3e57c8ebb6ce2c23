import { fhirVersionNumber } from '../../fhir/version.ts';
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
    const [url = claim, version] = claim.split('|');
    const profile = scope.profiles?.get(url) ?? scope.core.byUrl(url);
    const place = ['meta', 'profile', at];
    if (profile === undefined) sayUnknown(url, version, resource, scope, place);
    else if (profile.type !== resource['resourceType']) sayOtherType(profile.type, scope, place);
    else if (!isEdition(profile.version, version)) {
      sayUnchecked(url, 'other-version', scope, place);
    } else done.add(profile);
  });
  for (const profile of scope.core.appliedTo(resource)) {
    // The caller may have given another edition of it.
    done.add(scope.profiles?.get(profile.url) ?? profile);
  }
  for (const profile of done) checkProfile(resource, profile, scope, start);
}

const page = 'https://hl7.org/fhir/R4/profiling.html';

/** Whether what is held is the version that a claim names; a claim may leave the last numbers out. */
function isEdition(held: string | undefined, claimed: string | undefined): boolean {
  if (claimed === undefined || claimed === '' || held === undefined) return true;
  return held === claimed || held.startsWith(`${claimed}.`);
}

function sayUnknown(
  url: string,
  version: string | undefined,
  resource: JsonObject,
  scope: Scope,
  place: readonly (string | number)[],
): void {
  const type = typeName(url);
  if (!scope.resourceTypes.has(type)) {
    sayUnchecked(url, 'not-given', scope, place);
  } else if (type !== resource['resourceType']) {
    sayOtherType(type, scope, place);
  } else if (!isEdition(fhirVersionNumber[scope.definitions.fhirVersion], version)) {
    sayUnchecked(url, 'other-version', scope, place);
  }
  // Else the definition of the type itself, which every resource of it is held to.
}

function sayUnchecked(
  url: string,
  reason: 'not-given' | 'other-version',
  scope: Scope,
  place: readonly (string | number)[],
): void {
  const why =
    reason === 'not-given'
      ? 'the profile was not given for validation'
      : 'this version of the profile was not given for validation';
  scope.unchecked.push({ rule: url, path: [...scope.path, ...place], why });
  if (scope.saidOnce.has(`profile ${url}`)) return;
  scope.saidOnce.add(`profile ${url}`);
  report(
    scope,
    'unchecked-profile',
    { reason },
    { severity: 'warning', rule: page, value: url },
    place,
  );
}

function sayOtherType(type: string, scope: Scope, place: readonly (string | number)[]): void {
  report(scope, 'contradiction', { reason: 'profile-type', type }, { rule: page }, place);
}
