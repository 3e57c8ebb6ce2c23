import { type SnomedPolicy, snomedMayLeave } from '../fhir/snomed-policy.ts';
import { type Issue, type IssueCode, issue, issuesBelow } from '../issue.ts';
import type { Exam } from '../model/exam.ts';
import type { Coding } from '../model/primitive.ts';
import {
  isLoincCode,
  isSnomedId,
  looksLikeLoincCode,
  looksLikeSnomedId,
} from '../terminology/check-digits.ts';
import { displayVerdict, holdsCode, holdsCodesOf } from '../terminology/published-names.ts';
import type { FreeSet } from '../terminology/snomed.ts';
import {
  type StandardSystem,
  standardSystem,
  standardSystems,
} from '../terminology/system-names.ts';

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
  const meant = standardSystem(coding.system);
  if (meant === undefined) return ownFault(coding, rules);
  if (coding.system !== standardSystems[meant]) {
    return held(rules, 'wrong-system', 'system', coding.system, {
      message: 'the system is written in another way than FHIR fixes',
      expected: standardSystems[meant],
    });
  }
  return formFault(meant, coding, rules) ?? policyFault(meant, coding, rules);
}

function formFault(meant: StandardSystem, coding: Coding, rules: CodingRules): Issue | undefined {
  const { code } = coding;
  if (meant === 'snomed' ? looksLikeLoincCode(code) : looksLikeSnomedId(code)) {
    return held(rules, 'wrong-system', 'system', coding.system, {
      message: `a code of the form of ${meant === 'snomed' ? 'LOINC' : 'SNOMED CT'}`,
      expected: standardSystems[meant === 'snomed' ? 'loinc' : 'snomed'],
    });
  }
  const [form, right] =
    meant === 'snomed'
      ? [looksLikeSnomedId(code), isSnomedId(code)]
      : [looksLikeLoincCode(code), isLoincCode(code)];
  if (form && !right) {
    return held(rules, 'wrong-check-digit', 'code', code, {
      message: 'the last digit is not the check digit of the others',
      expected:
        meant === 'snomed' ? 'an id that passes the Verhoeff check' : 'a mod 10 check digit',
    });
  }
  if (form || mayHaveOtherForm(meant, code)) return undefined;
  return held(rules, 'invalid-value', 'code', code, {
    message: `no code of ${meant === 'snomed' ? 'SNOMED CT' : 'LOINC'}`,
    expected: meant === 'snomed' ? '6 to 18 digits' : 'digits, a hyphen and a check digit',
  });
}

/** A post-coordinated expression holds ids; LOINC has answers, parts and groups besides its terms. */
function mayHaveOtherForm(meant: StandardSystem, code: string): boolean {
  if (meant === 'loinc') return /^L[AGLP]\d{1,7}-\d$/.test(code);
  const ids = code.replace(/\|[^|]*\|/g, '').match(/\d+/g) ?? [];
  return /[:+=,{}()<|]/.test(code) && ids.length > 0 && ids.every(isSnomedId);
}

function policyFault(meant: StandardSystem, coding: Coding, rules: CodingRules): Issue | undefined {
  const { policy, freeSet } = rules;
  if (meant === 'loinc' || snomedMayLeave(policy, coding.code, freeSet)) return undefined;
  const details = (message: string, expected: string): HeldDetails => ({ message, expected });
  if (policy === 'none') {
    const told = details('the policy lets no SNOMED CT code out', 'no SNOMED CT code');
    return held(rules, 'withheld-code', 'code', coding.code, { ...told, severity: 'information' });
  }
  const expected = 'an id of the Global Patient Set of 2020-09, or a licence';
  const message =
    freeSet === undefined && isSnomedId(coding.code)
      ? 'the id is not known to be free; the option freeSet looks it up'
      : 'the code is outside the free set';
  return held(rules, 'withheld-code', 'code', coding.code, details(message, expected));
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
