import type { IssueCode } from '../issue.ts';
import { isLoincCode, isSnomedId, looksLikeLoincCode, looksLikeSnomedId } from './check-digits.ts';
import { type StandardSystem, standardSystem, standardSystems } from './system-names.ts';

/** Why a code can not be one of the system that it stands under. */
export interface FormFault {
  readonly code: IssueCode;
  /** Whether the system or the code is what is wrong. */
  readonly at: 'system' | 'code';
  readonly message: string;
  readonly expected: string;
}

const rules = {
  snomed: {
    name: 'SNOMED CT',
    looks: looksLikeSnomedId,
    right: isSnomedId,
    digit: 'an id that passes the Verhoeff check',
    form: '6 to 18 digits',
    other: 'loinc',
  },
  loinc: {
    name: 'LOINC',
    looks: looksLikeLoincCode,
    right: isLoincCode,
    digit: 'a code that passes the mod 10 check',
    form: 'digits, a hyphen and a check digit',
    other: 'snomed',
  },
} as const;

/**
 * What is wrong with a SNOMED CT or LOINC code by its form alone: the system under another name, a
 * code of the other system, a wrong check digit. Nothing is said of other systems.
 */
export function formFault(system: string, code: string): FormFault | undefined {
  const meant = standardSystem(system);
  if (meant === undefined) return undefined;
  if (system !== standardSystems[meant]) {
    const message = 'the system is written in another way than FHIR fixes';
    return { code: 'wrong-system', at: 'system', message, expected: standardSystems[meant] };
  }
  const { name, looks, right, digit, form, other } = rules[meant];
  if (rules[other].looks(code)) {
    const message = `the code has the form of ${rules[other].name}`;
    return { code: 'wrong-system', at: 'system', message, expected: standardSystems[other] };
  }
  if (right(code) || mayHaveOtherForm(meant, code)) return undefined;
  if (looks(code)) {
    const message = 'the last digit is not the check digit of the others';
    return { code: 'wrong-check-digit', at: 'code', message, expected: digit };
  }
  return { code: 'invalid-value', at: 'code', message: `no code of ${name}`, expected: form };
}

/** A post-coordinated expression holds ids; LOINC has answers, parts and groups besides its terms. */
function mayHaveOtherForm(meant: StandardSystem, code: string): boolean {
  if (meant === 'loinc') return /^L[AGLP]\d{1,7}-\d$/.test(code);
  const ids = code.replace(/\|[^|]*\|/g, '').match(/\d+/g) ?? [];
  return /[:+=,{}()<|]/.test(code) && ids.length > 0 && ids.every(isSnomedId);
}
