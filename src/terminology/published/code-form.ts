import type { RecordFacts } from '../../issues/issue.ts';
import { type StandardSystem, standardSystem, standardSystems } from '../system-names.ts';
import { isLoincCode, isSnomedId, looksLikeLoincCode, looksLikeSnomedId } from './check-digits.ts';

/** Why a code cannot be one of the system that it stands under. */
export type FormFault = {
  [Code in 'wrong-system' | 'wrong-check-digit' | 'invalid-value']: {
    readonly code: Code;
    /** Whether the system or the code is what is wrong. */
    readonly at: 'system' | 'code';
    readonly facts: RecordFacts<Code>;
  };
}['wrong-system' | 'wrong-check-digit' | 'invalid-value'];

const rules = {
  snomed: {
    looks: looksLikeSnomedId,
    right: isSnomedId,
    idForm: 'snomed-id',
    other: 'loinc',
  },
  loinc: {
    looks: looksLikeLoincCode,
    right: isLoincCode,
    idForm: 'loinc-code',
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
    const facts = { reason: 'spelling', system: standardSystems[meant] } as const;
    return { code: 'wrong-system', at: 'system', facts };
  }
  const { looks, right, other, idForm } = rules[meant];
  if (rules[other].looks(code)) {
    const facts = { reason: 'other-form', system: standardSystems[other] } as const;
    return { code: 'wrong-system', at: 'system', facts };
  }
  if (right(code) || mayHaveOtherForm(meant, code)) return undefined;
  if (looks(code)) {
    return { code: 'wrong-check-digit', at: 'code', facts: { reason: meant } };
  }
  return { code: 'invalid-value', at: 'code', facts: { reason: idForm } };
}

/** A post-coordinated expression holds ids; LOINC has answers, parts and groups besides its terms. */
function mayHaveOtherForm(meant: StandardSystem, code: string): boolean {
  if (meant === 'loinc') return /^L[AGLP]\d{1,7}-\d$/.test(code);
  const ids = code.replace(/\|[^|]*\|/g, '').match(/\d+/g) ?? [];
  return /[:+=,{}()<|]/.test(code) && ids.length > 0 && ids.every(isSnomedId);
}
