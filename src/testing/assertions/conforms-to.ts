import type { FhirVersion } from '../../fhir/version.ts';
import type { Validation } from '../../validate/validate-bundle.ts';
import { validateBundle as validateR4 } from '../../validate/versions/r4.ts';
import { validateBundle as validateR4B } from '../../validate/versions/r4b.ts';
import { validateBundle as validateR5 } from '../../validate/versions/r5.ts';
import { issueLines, type Verdict, verdict } from './verdict.ts';

const validators: Readonly<Record<FhirVersion, (resource: unknown) => Validation>> = {
  R4: validateR4,
  R4B: validateR4B,
  R5: validateR5,
};

/**
 * Checks whether a bundle or a single resource conforms to a version of FHIR. What was not fully
 * checked does not pass.
 *
 * @param resource The resource as plain data.
 * @param version Version of FHIR. Default `R4`.
 * @returns The verdict, whose message names every issue and every rule that was not looked at.
 * @throws {TypeError} Where there is no such version.
 * @example
 * const { pass, message } = conformsTo(bundle, 'R4');
 */
export function conformsTo(resource: unknown, version: FhirVersion = 'R4'): Verdict {
  if (!Object.hasOwn(validators, version)) {
    throw new TypeError('cannot check conformance: expected the version R4, R4B or R5');
  }
  const { conformance, issues, unchecked } = validators[version](resource);
  const open = unchecked.map(({ rule, why }) => `not checked: ${rule} (${why})`);
  return verdict(conformance === 'conforms', `${heads[conformance]} FHIR ${version}`, [
    ...issueLines(issues),
    ...new Set(open),
  ]);
}

const heads = {
  conforms: 'the resource conforms to',
  'does-not-conform': 'the resource does not conform to',
  'not-fully-checked': 'the resource was not fully checked against',
} as const;
