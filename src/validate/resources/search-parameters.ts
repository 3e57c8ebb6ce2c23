import type { JsonObject } from '../walk/json.ts';
import { report, type Scope } from '../walk/scope.ts';

/**
 * A composite parameter is made of its components.
 * @see https://hl7.org/fhir/R4/searchparameter-definitions.html#SearchParameter.component
 */
export function checkSearchParameter(parameter: JsonObject, scope: Scope): void {
  if (parameter['type'] !== 'composite' || parameter['component'] !== undefined) return;
  const rule = 'https://hl7.org/fhir/R4/searchparameter-definitions.html#SearchParameter.component';
  // HL7's validator asks for it in R5 alone, and R4 says it in no words.
  const severity = scope.definitions.fhirVersion === 'R5' ? 'error' : 'warning';
  const facts = { reason: 'search-components' } as const;
  report(scope, 'missing-property', facts, { severity, rule }, ['component']);
}
