import { type Issue, issue } from '../../issues/issue.ts';
import { isSnomedId } from '../../terminology/published/check-digits.ts';
import { type FreeSet, isFreeSnomed } from '../../terminology/published/snomed.ts';

/**
 * Which SNOMED CT codes may leave the library. `free-set`: only ids in the Global Patient Set as
 * published in 2020-09 under CC BY 4.0. `licensed`: any id, by the statement of the caller that a
 * licence is held; the edition goes into `Coding.version`.
 * Not legal advice: see NOTICE and the usage terms of SNOMED International.
 */
export type SnomedPolicy = 'none' | 'free-set' | SnomedLicence;

/** The caller's own statement that a licence is held. */
export interface SnomedLicence {
  readonly licensed: {
    /** Who holds the licence. */
    readonly holder: string;
    /** Edition and release as a SNOMED CT version URI: `http://snomed.info/sct/900000000000207008/version/20240101`. */
    readonly edition: string;
  };
}

/** @see https://hl7.org/fhir/R4/snomedct.html on the versions of SNOMED CT */
const EDITION =
  /^http:\/\/snomed\.info\/sct\/(\d+)\/version\/(\d{4})(0[1-9]|1[0-2])(0[1-9]|[12]\d|3[01])$/;

/**
 * What is wrong with a policy that did not pass the compiler. With an issue nothing may leave: a
 * policy that is not understood is none.
 */
export function snomedPolicyIssues(policy: unknown): Issue[] {
  if (policy === 'none' || policy === 'free-set') return [];
  const licensed = propertyOf(policy, 'licensed');
  if (typeof licensed !== 'object' || licensed === null) {
    return [issue('invalid-value', ['snomed'], { reason: 'snomed-policy' })];
  }
  const holder = propertyOf(licensed, 'holder');
  const edition = propertyOf(licensed, 'edition');
  const issues: Issue[] = [];
  if (typeof holder !== 'string' || holder.trim() === '') {
    const path = ['snomed', 'licensed', 'holder'];
    issues.push(issue('missing-property', path, { reason: 'licence-holder' }));
  }
  const module = typeof edition === 'string' ? EDITION.exec(edition)?.[1] : undefined;
  if (module === undefined || !isSnomedId(module)) {
    const path = ['snomed', 'licensed', 'edition'];
    issues.push(issue('invalid-value', path, { reason: 'snomed-edition' }));
  }
  return issues;
}

/** The policy as it is now: one whose properties answer differently each time is read once. */
export function fixedPolicy(policy: SnomedPolicy): SnomedPolicy {
  if (typeof policy !== 'object' || policy === null) return policy;
  const { licensed } = policy;
  return typeof licensed === 'object' && licensed !== null
    ? { licensed: { ...licensed } }
    : { licensed };
}

/**
 * Whether an id may leave. Without `freeSet` only ids of our own tables are known to be free, so
 * every other is held back. An id in another form than SNOMED CT's, such as a post-coordinated
 * expression, is free under no policy but a licence.
 */
export function snomedMayLeave(policy: SnomedPolicy, id: string, freeSet?: FreeSet): boolean {
  if (policy === 'free-set') return isFreeSnomed(id) || freeSet?.has(id) === true;
  return typeof policy === 'object';
}

function propertyOf(value: unknown, name: string): unknown {
  if (typeof value !== 'object' || value === null || !Object.hasOwn(value, name)) return undefined;
  return (value as Readonly<Record<string, unknown>>)[name]; // just seen to have it
}
