import { type FhirVersion, fhirVersionNumber } from '../../fhir/version.ts';
import type { Issue } from '../../issues/issue.ts';
import { issue, type ValidationFacts } from '../issue.ts';
import { isObject, textOf } from '../walk/json.ts';
import type { Structure } from './structure.ts';

/** Something given as a profile that is none, or without what it takes to be used. */
export function unusable(resource: unknown, at: number): Issue {
  const type = isObject(resource) ? textOf(resource['resourceType']) : undefined;
  // A package of definitions holds others too, such as ConceptMaps.
  const other =
    type !== undefined &&
    !['StructureDefinition', 'ValueSet', 'CodeSystem', 'Questionnaire'].includes(type);
  return issue(
    'invalid-value',
    ['profiles', at],
    { reason: 'definition' },
    {
      severity: other ? 'information' : 'warning',
    },
  );
}

/** What is wrong with a StructureDefinition that is used all the same. */
export function structureIssues(
  { url, fhirVersion, elements }: Structure,
  at: number,
  version: FhirVersion,
  before: ReadonlyMap<string, unknown>,
): Issue[] {
  const found: Issue[] = [];
  const say = <Code extends 'duplicate-key' | 'contradiction'>(
    code: Code,
    step: string,
    facts: ValidationFacts<Code>,
  ) => found.push(issue(code, ['profiles', at, step], facts, { severity: 'warning' }));
  if (before.has(url)) say('duplicate-key', 'url', { reason: 'definition' });
  // The third number makes no difference to what is valid.
  const edition = fhirVersionNumber[version].split('.').slice(0, 2).join('.');
  if (fhirVersion !== undefined && !fhirVersion.startsWith(`${edition}.`)) {
    say('contradiction', 'fhirVersion', { reason: 'definition-version', version });
  }
  const ids = new Set(elements.map(({ id }) => id));
  elements.forEach(({ id }, number) => {
    const parent = id.slice(0, Math.max(id.lastIndexOf('.'), 0));
    if (number === 0 || ids.has(parent)) return;
    const path = ['profiles', at, 'snapshot', 'element', number, 'id'];
    found.push(
      issue('invalid-value', path, { reason: 'snapshot-element' }, { severity: 'warning' }),
    );
  });
  if (ids.size < elements.length) {
    // https://hl7.org/fhir/R4/structuredefinition.html#invs, sdf-8a and sdf-16
    say('duplicate-key', 'snapshot', { reason: 'snapshot-id' });
  }
  return found;
}
