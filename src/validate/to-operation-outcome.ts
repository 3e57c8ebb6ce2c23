import type { OperationOutcome, OperationOutcomeIssue } from 'fhir/r4.js';
import { withoutBadCharacters } from '../data/plain-data.ts';
import { CANONICAL_BASE } from '../fhir/names/systems.ts';
import { issueTypes } from '../issues/codes.ts';
import type { Issue, SourcePosition } from '../issues/issue.ts';
import { fhirPathText } from './invariants/fhirpath.ts';

export interface OperationOutcomeOptions {
  /** Base of our code system of issue codes. Default `https://face-neck-fhir.example/fhir`. */
  readonly canonicalBase?: string;
}

/**
 * Writes issues as a FHIR OperationOutcome that is valid in R4, R4B and R5. Each issue has the type
 * that comes nearest in HL7's list, our own code and message in `details`, and its place as
 * FHIRPath relative to the resource that was looked at.
 *
 * @param issues From any function of the library.
 * @param options `canonicalBase`: base of the code system of our issue codes.
 * @returns The resource. No issues give one that says so, since FHIR asks for at least one.
 * @example
 * const answer = toOperationOutcome(parseExam(resource).issues);
 * @see https://hl7.org/fhir/R4/operationoutcome.html
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
    code: severity === 'information' ? 'informational' : issueTypes[code],
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
