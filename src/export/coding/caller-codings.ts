import { type SnomedPolicy, snomedMayLeave } from '../../fhir/licence/snomed-policy.ts';
import {
  type Issue,
  issue,
  issuesBelow,
  type RecordCode,
  type RecordFacts,
} from '../../issues/issue.ts';
import type { Exam } from '../../model/exam.ts';
import type { Coding } from '../../model/primitive.ts';
import { isSnomedId } from '../../terminology/published/check-digits.ts';
import { formFault } from '../../terminology/published/code-form.ts';
import {
  displayVerdict,
  holdsCode,
  holdsCodesOf,
} from '../../terminology/published/published-names.ts';
import type { FreeSet } from '../../terminology/published/snomed.ts';
import { standardSystem } from '../../terminology/system-names.ts';

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

/** Why a coding is held back: the policy, or a code that cannot be one of its system. */
function codingFault(coding: Coding, rules: CodingRules): Issue | undefined {
  const { system, code } = coding;
  const fault = formFault(system, code);
  if (fault !== undefined) {
    const value = fault.at === 'system' ? system : code;
    return held(rules, fault.code, fault.at, value, fault.facts);
  }
  return standardSystem(system) === 'snomed' ? policyFault(code, rules) : ownFault(coding, rules);
}

function policyFault(code: string, rules: CodingRules): Issue | undefined {
  const { policy, freeSet } = rules;
  if (snomedMayLeave(policy, code, freeSet)) return undefined;
  if (policy === 'none') {
    return held(rules, 'withheld-code', 'code', code, { reason: 'policy-none' }, 'information');
  }
  return held(rules, 'withheld-code', 'code', code, {
    reason: freeSet === undefined && isSnomedId(code) ? 'not-looked-up' : 'outside-free-set',
  });
}

/** A code of our own systems must exist; of any other system we know nothing. */
function ownFault({ system, code }: Coding, rules: CodingRules): Issue | undefined {
  if (rules.ownCode(system, code) !== false) return undefined;
  return held(rules, 'unknown-code', 'code', code, { reason: 'own-code' });
}

/** What is worth saying of a coding that leaves. */
function codingRemarks({ system, code, display }: Coding, rules: CodingRules): Issue[] {
  const remarks: Issue[] = [];
  if (holdsCodesOf(system) && !holdsCode(system, code) && rules.freeSet?.has(code) !== true) {
    remarks.push(
      issue('unchecked-code', ['code'], { reason: 'held-in-part' }, { severity: 'information' }),
    );
  }
  const verdict = display === undefined ? 'same' : displayVerdict(system, code, display);
  if (verdict === 'other-code') {
    remarks.push(
      issue('display-mismatch', ['display'], { reason: 'other-code' }, { severity: 'warning' }),
    );
  } else if (verdict === 'other-name') {
    remarks.push(
      issue('display-mismatch', ['display'], { reason: 'other-name' }, { severity: 'information' }),
    );
  }
  return remarks;
}

/** Never an error: the statement leaves under our own code, whole. */
function held<Code extends RecordCode>(
  rules: CodingRules,
  code: Code,
  property: 'system' | 'code',
  value: string,
  facts: RecordFacts<Code>,
  severity: 'warning' | 'information' = 'warning',
): Issue {
  const received = rules.includeValues === true ? value : undefined;
  return issue(code, [property], facts, { severity, received });
}
