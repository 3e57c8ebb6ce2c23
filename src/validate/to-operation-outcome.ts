import type { OperationOutcome, OperationOutcomeIssue } from 'fhir/r4.js';
import { CANONICAL_BASE } from '../fhir/systems.ts';
import type { Issue, IssueCode, SourcePosition } from '../issue.ts';
import { withoutBadCharacters } from '../plain-data.ts';
import { fhirPathText } from './fhirpath.ts';

export interface OperationOutcomeOptions {
  /** Base of our code system of issue codes. Default `https://face-neck-fhir.example/fhir`. */
  readonly canonicalBase?: string;
}

/**
 * Issues as a FHIR resource, valid in R4, R4B and R5. Each has the type that comes nearest in HL7's
 * list, our own code and message in `details`, and where it stands as FHIRPath relative to the
 * resource that was looked at. No issues give one that says so, since FHIR asks for at least one.
 */
export function toOperationOutcome(
  issues: readonly Issue[],
  { canonicalBase = CANONICAL_BASE }: OperationOutcomeOptions = {},
): OperationOutcome {
  const told = issues.map((found) => outcomeIssue(found, canonicalBase));
  return { resourceType: 'OperationOutcome', issue: told.length > 0 ? told : [nothingFound] };
}

const nothingFound: OperationOutcomeIssue = {
  severity: 'information',
  code: 'informational',
  details: { text: 'no issues found' },
};

function outcomeIssue(found: Issue, canonicalBase: string): OperationOutcomeIssue {
  const diagnostics = diagnosticsOf(found);
  const { code, severity, message, path } = found;
  return {
    severity,
    code: severity === 'information' ? 'informational' : (issueTypes[code] ?? 'invalid'),
    details: {
      coding: [{ system: `${canonicalBase}/CodeSystem/issue-code`, code }],
      text: withoutBadCharacters(message),
    },
    ...(diagnostics !== '' && { diagnostics: withoutBadCharacters(diagnostics) }),
    ...(path.length > 0 && { expression: [withoutBadCharacters(fhirPathText(path))] }),
  };
}

function diagnosticsOf({ expected, received, source, rule }: Issue): string {
  const parts = [
    expected !== undefined && `expected ${expected}`,
    received !== undefined && `received ${received}`,
    source !== undefined && `at ${sourceText(source)}`,
    rule !== undefined && `rule ${rule}`,
  ];
  return parts.filter((part) => part !== false).join('; ');
}

function sourceText(source: SourcePosition): string {
  const { file, ...position } = source;
  const steps = Object.entries(position).map(([name, value]) => `${name} ${value}`);
  return [...(file === undefined ? [] : [file]), ...steps].join(', ');
}

/**
 * Type of HL7's required list for each of our codes; those not named are `invalid`.
 * @see https://hl7.org/fhir/R4/valueset-issue-type.html
 */
export const issueTypes: Readonly<Partial<Record<IssueCode, OperationOutcomeIssue['code']>>> = {
  'not-json': 'structure',
  'duplicate-property': 'structure',
  'too-deep': 'too-costly',
  'too-large': 'too-long',
  'unsafe-property': 'security',
  'invalid-unicode': 'value',
  'wrong-type': 'structure',
  'missing-property': 'required',
  'unknown-property': 'structure',
  'invalid-value': 'value',
  'empty-value': 'value',
  'unknown-code': 'code-invalid',
  'unknown-region': 'code-invalid',
  'missing-side': 'required',
  'impossible-side': 'business-rule',
  'duplicate-key': 'duplicate',
  'unresolved-key': 'not-found',
  'missing-unit': 'required',
  'unknown-unit': 'code-invalid',
  'wrong-unit': 'value',
  'impossible-date': 'value',
  'reversed-dates': 'business-rule',
  'missing-reason': 'required',
  'missing-method': 'required',
  'impossible-method': 'business-rule',
  'draft-exam': 'business-rule',
  contradiction: 'conflict',
  'unchecked-resource': 'not-supported',
  'licence-policy': 'business-rule',
  'withheld-code': 'suppressed',
  'wrong-check-digit': 'code-invalid',
  'wrong-system': 'code-invalid',
  'display-mismatch': 'code-invalid',
  'unchecked-code': 'not-supported',
};
