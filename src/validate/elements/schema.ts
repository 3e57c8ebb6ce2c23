import { checkAgainstSchema } from '../../data/schema-check.ts';
import type { SchemaError } from '../../data/schema-errors.ts';
import { type Issue, issue } from '../../issues/issue.ts';
import { nearest } from '../../issues/nearest.ts';
import { pathFromPointer } from '../../issues/path.ts';
import type { ValidatedVersion } from '../versions/version.ts';
import { fhirForms } from './words.ts';

/** What this stage needs to know of a version. */
export type SchemaVersion = Pick<
  ValidatedVersion,
  'fhirVersion' | 'resourceValidator' | 'resourceTypes'
>;

/**
 * First stage: where a resource or bundle departs from the structure of its FHIR version. One issue
 * for each fault, at the property that is wrong. A resource of a type that is not held is told by a
 * warning, and looked at as far as what every resource has.
 */
export function schemaIssues(
  resource: unknown,
  version: SchemaVersion,
  { includeValues = false }: { readonly includeValues?: boolean } = {},
): Issue[] {
  const issues = checkAgainstSchema(resource, {
    validator: version.resourceValidator,
    forms: fhirForms,
    includeValues,
    special: (error) => otherResource(error, version, includeValues),
  });
  return issues.map(graded);
}

/**
 * FHIR says that strings should not have control characters, and only half of a surrogate pair is no
 * character at all.
 * @see https://hl7.org/fhir/R4/datatypes.html#string
 */
function graded(found: Issue): Issue {
  const mild = found.code === 'invalid-unicode' && !found.message.includes('surrogate');
  return mild ? { ...found, severity: 'warning', rule: stringRule } : found;
}

const stringRule = 'https://hl7.org/fhir/R4/datatypes.html#string';

function otherResource(
  { keyword, params, instancePath }: SchemaError,
  { fhirVersion, resourceTypes }: SchemaVersion,
  includeValues: boolean,
): Issue | undefined {
  const type = params['tagValue'];
  if (keyword !== 'discriminator' || typeof type !== 'string') return undefined;
  const path = pathFromPointer(instancePath);
  if (resourceTypes.includes(type)) {
    return issue('unchecked-resource', path, { reason: 'schema', type }, { severity: 'warning' });
  }
  return issue(
    'unknown-code',
    [...path, 'resourceType'],
    { reason: 'resource-type', version: fhirVersion, near: nearest(type, resourceTypes) },
    {
      received: includeValues ? type : undefined,
      rule: 'https://hl7.org/fhir/R4/resourcelist.html',
    },
  );
}
