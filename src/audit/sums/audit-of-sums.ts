import { kappa } from '../agreement.ts';
import type { Audit } from '../audit.ts';
import { digitPreference } from '../digits.ts';
import { limitsOfSums } from './differences.ts';
import type { AuditSums } from './sums.ts';

/**
 * The audit that sums make.
 *
 * @param sums Of one auditor, or added up from many by `addSums`.
 * @returns What an auditor that had seen all these exams would give.
 * @example
 * const [spring, autumn] = [createAuditor(), createAuditor()];
 * spring.add(before);
 * autumn.add(exam);
 * const page = auditHtml(auditOfSums(addSums(spring.sums(), autumn.sums())));
 */
export function auditOfSums(sums: AuditSums): Audit {
  const { format: _, pairs, signs, measures, digits, ...counted } = sums;
  return {
    ...counted,
    agreement: {
      pairs,
      signs: Object.entries(signs).map(([code, answers]) => ({
        code,
        ...answers,
        kappa: kappa(answers),
      })),
      measures: Object.entries(measures).flatMap(([code, differences]) => {
        const limits = limitsOfSums(differences);
        return limits === undefined ? [] : [{ code, ...limits }];
      }),
    },
    digits: Object.fromEntries(
      Object.entries(digits).map(([measure, written]) => [measure, digitPreference(written)]),
    ),
  };
}
