import { type SnomedPolicy, snomedMayLeave } from '../fhir/snomed-policy.ts';
import { type Issue, type IssueCode, issue, issuesBelow } from '../issue.ts';
import type { Exam } from '../model/exam.ts';
import type { Coding } from '../model/primitive.ts';
import { isSnomedId } from '../terminology/check-digits.ts';
import { formFault } from '../terminology/code-form.ts';
import { displayVerdict, holdsCode, holdsCodesOf } from '../terminology/published-names.ts';
import type { FreeSet } from '../terminology/snomed.ts';
import { standardSystem } from '../terminology/system-names.ts';

/** What decides whether a coding of the caller leaves. */
export interface CodingRules {
  readonly policy: SnomedPolicy;
  readonly freeSet?: FreeSet | undefined;
  /** Whether a code of one of our own systems exists; undefined for any other system. */
  readonly ownCode: (system: string, code: string) => boolean | undefined;
  readonly includeValues?: boolean | undefined;
}

/** Issues on every coding that the caller put into the exam; those with a fault are not exported. */
export function callerCodingIssues(exam: Exam, rules: CodingRules): Issue[] {
  return [
    ...exam.statements.flatMap(({ codings = [] }, at) =>
      listIssues(codings, ['statements', at, 'codings'], rules),
    ),
    ...listIssues(exam.conclusion?.codings ?? [], ['conclusion', 'codings'], rules),
  ];
}

function listIssues(
  codings: readonly Coding[],
  path: readonly (string | number)[],
  rules: CodingRules,
): Issue[] {
  return codings.flatMap((coding, at) => {
    const fault = codingFault(coding, rules);
    return issuesBelow([...path, at], fault ? [fault] : codingRemarks(coding, rules));
  });
}

/** True where the coding is sound and the policy lets it out. */
export function callerCodingLeaves(coding: Coding, rules: CodingRules): boolean {
  return codingFault(coding, rules) === undefined;
}

/** Why a coding is held back: the policy, or a code that can not be one of its system. */
function codingFault(coding: Coding, rules: CodingRules): Issue | undefined {
  const { system, code } = coding;
  const fault = formFault(system, code);
  if (fault !== undefined) {
    const value = fault.at === 'system' ? system : code;
    return held(rules, fault.code, fault.at, value, fault);
  }
  return standardSystem(system) === 'snomed' ? policyFault(code, rules) : ownFault(coding, rules);
}

function policyFault(code: string, rules: CodingRules): Issue | undefined {
  const { policy, freeSet } = rules;
  if (snomedMayLeave(policy, code, freeSet)) return undefined;
  if (policy === 'none') {
    return held(rules, 'withheld-code', 'code', code, {
      message: 'the policy lets no SNOMED CT code out',
      expected: 'no SNOMED CT code',
      severity: 'information',
    });
  }
  return held(rules, 'withheld-code', 'code', code, {
    message:
      freeSet === undefined && isSnomedId(code)
        ? 'the id is not known to be free; the option freeSet looks it up'
        : 'the code is outside the free set',
    expected: 'an id of the Global Patient Set of 2020-09, or a licence',
  });
}

/** A code of our own systems must exist; of any other system we know nothing. */
function ownFault({ system, code }: Coding, rules: CodingRules): Issue | undefined {
  if (rules.ownCode(system, code) !== false) return undefined;
  return held(rules, 'unknown-code', 'code', code, {
    message: 'the code system of this library does not hold this code',
    expected: 'a code of its table',
  });
}

/** What is worth saying of a coding that leaves. */
function codingRemarks({ system, code, display }: Coding, rules: CodingRules): Issue[] {
  const remarks: Issue[] = [];
  if (holdsCodesOf(system) && !holdsCode(system, code) && rules.freeSet?.has(code) !== true) {
    const message = 'the library does not hold this code and passes it on as given';
    remarks.push(issue('unchecked-code', ['code'], message, { severity: 'information' }));
  }
  const verdict = display === undefined ? 'same' : displayVerdict(system, code, display);
  if (verdict === 'other-code') {
    const message = 'the display is the published name of another code';
    remarks.push(issue('display-mismatch', ['display'], message, { severity: 'warning' }));
  } else if (verdict === 'other-name') {
    const message = 'the display is not the published name; synonyms can not be looked up';
    remarks.push(issue('display-mismatch', ['display'], message, { severity: 'information' }));
  }
  return remarks;
}

interface HeldDetails {
  readonly message: string;
  readonly expected: string;
  readonly severity?: 'warning' | 'information';
}

/** Never an error: the statement leaves under our own code, whole. */
function held(
  rules: CodingRules,
  code: IssueCode,
  property: 'system' | 'code',
  value: string,
  { message, expected, severity = 'warning' }: HeldDetails,
): Issue {
  const received = rules.includeValues === true ? value : undefined;
  return issue(code, [property], `${message}; the coding is not exported`, {
    severity,
    expected,
    received,
  });
}
