import type { PairedAnswers } from '../agreement.ts';
import type { CoverageTally } from '../audit.ts';
import type { DifferenceSums } from './differences.ts';

type Named<Value> = Readonly<Record<string, Value>>;

/**
 * What an audit has counted, as plain data: whole numbers and exact decimals, so that sums of sums are
 * the same in whatever order and grouping they are added. They name no person.
 */
export interface AuditSums {
  readonly format: 'face-neck-audit-sums/1';
  readonly exams: number;
  readonly first?: string;
  readonly last?: string;
  readonly statuses: Named<number>;
  readonly concerns: Named<number>;
  readonly protocols: Named<CoverageTally>;
  readonly regions: Named<CoverageTally>;
  readonly reasons: Named<number>;
  readonly findings: Named<number>;
  readonly prompts: Named<{ readonly fired: number; readonly open: number }>;
  readonly corrections: { readonly exams: number; readonly steps: number; readonly sides: number };
  /** Pairs of exams of one person and day that were found in what one auditor was given. */
  readonly pairs: number;
  readonly signs: Named<PairedAnswers>;
  readonly measures: Named<DifferenceSums>;
  /** How often each last digit, 0 to 9, was written, by measure. */
  readonly digits: Named<readonly number[]>;
}

export const SUMS_FORMAT = 'face-neck-audit-sums/1';

export const noSums: AuditSums = {
  format: SUMS_FORMAT,
  exams: 0,
  statuses: {},
  concerns: {},
  protocols: {},
  regions: {},
  reasons: {},
  findings: {},
  prompts: {},
  corrections: { exams: 0, steps: 0, sides: 0 },
  pairs: 0,
  signs: {},
  measures: {},
  digits: {},
};
