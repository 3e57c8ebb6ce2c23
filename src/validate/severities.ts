import type { Issue, IssueCode, Severity } from '../issues/issue.ts';
import { withoutVersion } from './rule-links.ts';

/**
 * Another severity for some issues, by code, rule or both; `ignored` leaves them out. Of several that
 * fit the last holds. What is graded down no longer makes a resource fail, by the caller's decision.
 */
export interface SeverityRule {
  readonly code?: IssueCode;
  /** Key of an invariant, or URL, in any version of FHIR; one that ends in `*` stands for all that begin so. */
  readonly rule?: string;
  readonly severity: Severity | 'ignored';
}

const pages = 'https://hl7.org/fhir/R4';

/**
 * Severities as HL7's validator grades by its defaults without a terminology server: what it does not
 * look at, or says more mildly. src/validate/SEVERITIES.md gives the reason for each row.
 */
export const referenceSeverities: readonly SeverityRule[] = [
  { code: 'wrong-display', severity: 'warning' },
  { code: 'invalid-value', rule: `${pages}/datatypes.html#Coding`, severity: 'warning' },
  { code: 'invalid-value', rule: `${pages}/datatypes.html#Identifier`, severity: 'warning' },
  { code: 'unknown-code', rule: `${pages}/terminologies.html#system`, severity: 'warning' },
  { code: 'wrong-target', severity: 'warning' },
  { code: 'unresolved-reference', rule: `${pages}/bundle.html#references`, severity: 'warning' },
  { code: 'empty-value', rule: 'ele-1', severity: 'warning' },
  { code: 'duplicate-key', rule: `${pages}/http.html#transaction`, severity: 'warning' },
  { code: 'contradiction', rule: `${pages}/http.html#update`, severity: 'warning' },
  { code: 'contradiction', rule: `${pages}/http.html#create`, severity: 'warning' },
  { code: 'unchecked-extension', severity: 'information' },
  { code: 'unchecked-profile', severity: 'error' },
];

export function graded(issues: readonly Issue[], rules: readonly SeverityRule[]): Issue[] {
  return issues.flatMap((found) => {
    const severity = rules.filter((rule) => fits(rule, found)).at(-1)?.severity;
    if (severity === undefined) return [found];
    return severity === 'ignored' ? [] : [{ ...found, severity }];
  });
}

function fits(wanted: SeverityRule, { code, rule = '' }: Issue): boolean {
  if (wanted.code !== undefined && wanted.code !== code) return false;
  if (wanted.rule === undefined) return true;
  const [one, other] = [withoutVersion(wanted.rule), withoutVersion(rule)];
  return one.endsWith('*') ? other.startsWith(one.slice(0, -1)) : other === one;
}

/** Rules of form that an issue of the structure rests on. */
const ruleOfCode: Readonly<Partial<Record<IssueCode, string>>> = {
  'wrong-type': `${pages}/json.html`,
  'unknown-property': `${pages}/json.html`,
  'empty-value': `${pages}/json.html`,
  'too-many': `${pages}/conformance-rules.html#cardinality`,
  'missing-property': `${pages}/conformance-rules.html#cardinality`,
  'invalid-value': `${pages}/datatypes.html#primitive`,
  'unknown-code': `${pages}/terminologies.html#required`,
  'invalid-unicode': `${pages}/datatypes.html#string`,
};

/** Every issue names the rule that it rests on. */
export function withRule(found: Issue): Issue {
  if (found.rule !== undefined) return found;
  const rule = ruleOfCode[found.code];
  return rule === undefined ? found : { ...found, rule };
}
