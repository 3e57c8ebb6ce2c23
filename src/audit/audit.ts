import type { CoverageItem } from '../checks/coverage/coverage.ts';
import type { CheckOptions } from '../checks/settings/check-settings.ts';
import type { Exam } from '../model/exam.ts';
import { createPage } from '../report/create-page.ts';
import type { Page } from '../report/page.ts';
import type { Language } from '../terminology/languages/language.ts';
import { type DigitPreference, lastDigit } from './digits.ts';
import { type Figure, figureOf } from './figure.ts';
import { type Agreement, PairedExams } from './paired-exams.ts';
import { sorted } from './sums/add-sums.ts';
import { auditOfSums } from './sums/audit-of-sums.ts';
import { type AuditSums, SUMS_FORMAT } from './sums/sums.ts';

export interface AuditOptions {
  /** Rule sets whose prompts are counted, protocol and thresholds; as for `checkExam`. */
  readonly checks?: CheckOptions;
  readonly language?: Language;
}

/** What was asked of one region or protocol, and what came of it. */
export interface CoverageTally {
  readonly required: number;
  readonly complete: number;
  readonly partial: number;
  readonly carried: number;
  readonly documented: number;
  readonly gaps: number;
}

export interface Audit {
  readonly exams: number;
  readonly first?: string;
  readonly last?: string;
  /** Exams by status of the record, and by level of concern. */
  readonly statuses: Readonly<Record<string, number>>;
  readonly concerns: Readonly<Record<string, number>>;
  readonly protocols: Readonly<Record<string, CoverageTally>>;
  /** By code of the region. */
  readonly regions: Readonly<Record<string, CoverageTally>>;
  /** Why something was not done, or only in part, by code of the reason. */
  readonly reasons: Readonly<Record<string, number>>;
  /** Issues that the checks raise, by rule: unusual figures, contradictions, sides that differ from the words. */
  readonly findings: Readonly<Record<string, number>>;
  /** Prompts that fired, by rule, and those that nobody set aside. */
  readonly prompts: Readonly<Record<string, { readonly fired: number; readonly open: number }>>;
  /** Steps that corrected or amended a record, and the words of rule R02 on sides in records of them. */
  readonly corrections: { readonly exams: number; readonly steps: number; readonly sides: number };
  readonly agreement: Agreement;
  readonly digits: Readonly<Record<string, DigitPreference>>;
}

type Tally = { -readonly [Key in keyof CoverageTally]: number };

/** Adds up exams one by one; what it keeps does not grow with their number, but with the tables. */
export interface Auditor {
  readonly add: (exam: Exam) => void;
  readonly result: () => Audit;
  /** What was counted, for another auditor's to be added: see `addSums` and `auditOfSums`. */
  readonly sums: () => AuditSums;
}

/**
 * Begins an audit over a year of exams, or any others. Nothing in the result names a person.
 *
 * @param options Rule sets whose prompts are counted, and the language.
 * @returns An auditor that takes exams one by one and gives the result at the end.
 * @example
 * const auditor = createAuditor();
 * auditor.add(exam);
 * const table = auditCsv(auditor.result());
 */
export function createAuditor(options: AuditOptions = {}): Auditor {
  const counts = {
    statuses: new Map<string, number>(),
    concerns: new Map<string, number>(),
    reasons: new Map<string, number>(),
    findings: new Map<string, number>(),
  };
  const protocols = new Map<string, Tally>();
  const regions = new Map<string, Tally>();
  const prompts = new Map<string, { fired: number; open: number }>();
  const digits = new Map<string, number[]>();
  const paired = new PairedExams();
  const corrections = { exams: 0, steps: 0, sides: 0 };
  const seen: { exams: number; first?: string; last?: string } = { exams: 0 };

  return { add, sums, result: () => auditOfSums(sums()) };

  function add(exam: Exam): void {
    seen.exams += 1;
    const day = exam.performed.start.slice(0, 10);
    if (seen.first === undefined || day < seen.first) seen.first = day;
    if (seen.last === undefined || day > seen.last) seen.last = day;
    count(counts.statuses, exam.status);
    // What was withdrawn was entered in error: it is counted, and nothing else of it.
    if (exam.status === 'entered-in-error') return;
    count(counts.concerns, exam.conclusion?.concern ?? 'not-stated');
    const { page } = createPage(exam, options);
    addChecks(page);
    addCorrections(page);
    addStatements(page);
    paired.add(exam, page);
  }

  function addChecks({ checks, exam }: Page): void {
    const protocol = tallyIn(protocols, checks.coverage?.protocol.id ?? exam.protocol.id);
    for (const item of checks.coverage?.items ?? []) {
      if (item.kind !== 'region') continue;
      addItem(protocol, item);
      addItem(tallyIn(regions, item.code), item);
    }
    addPrompts(checks.prompts);
    for (const { rule } of checks.issues) if (rule !== undefined) count(counts.findings, rule);
  }

  function addPrompts(fired: Page['checks']['prompts']): void {
    for (const { ruleId, dismissed } of fired) {
      const known = prompts.get(ruleId) ?? { fired: 0, open: 0 };
      const open = known.open + (dismissed === undefined ? 1 : 0);
      prompts.set(ruleId, { fired: known.fired + 1, open });
    }
  }

  function addCorrections({ exam, checks }: Page): void {
    const steps = (exam.history ?? []).filter(
      ({ action }) => action === 'correct' || action === 'amend',
    );
    if (steps.length === 0) return;
    corrections.exams += 1;
    corrections.steps += steps.length;
    corrections.sides += checks.issues.filter(({ code }) => code === 'side-conflict').length;
  }

  function addStatements(page: Page): void {
    for (const statement of page.exam.statements) {
      for (const reason of reasonsIn(statement)) count(counts.reasons, reason);
      const figure = figureOf(statement, page);
      if (figure !== undefined) addDigit(figure);
    }
  }

  function addDigit({ measure, value }: Figure): void {
    const written = digits.get(measure) ?? Array.from({ length: 10 }, () => 0);
    digits.set(measure, written);
    const digit = lastDigit(value);
    written[digit] = (written[digit] ?? 0) + 1;
  }

  function sums(): AuditSums {
    return {
      format: SUMS_FORMAT,
      exams: seen.exams,
      ...(seen.first !== undefined && { first: seen.first }),
      ...(seen.last !== undefined && { last: seen.last }),
      statuses: sorted(counts.statuses),
      concerns: sorted(counts.concerns),
      protocols: sorted(protocols),
      regions: sorted(regions),
      reasons: sorted(counts.reasons),
      findings: sorted(counts.findings),
      prompts: sorted(prompts),
      corrections: { ...corrections },
      ...paired.sums(),
      digits: sorted(digits),
    };
  }
}

function tallyIn(tallies: Map<string, Tally>, key: string): Tally {
  const known = tallies.get(key);
  if (known !== undefined) return known;
  const made = { required: 0, complete: 0, partial: 0, carried: 0, documented: 0, gaps: 0 };
  tallies.set(key, made);
  return made;
}

function addItem(tally: Tally, { status, partial }: CoverageItem): void {
  tally.required += 1;
  if (status === 'gap') tally.gaps += 1;
  else if (status === 'covered') tally[partial ? 'partial' : 'complete'] += 1;
  else tally[status] += 1;
}

function count(counts: Map<string, number>, key: string): void {
  counts.set(key, (counts.get(key) ?? 0) + 1);
}

/** Codes of the reasons that a statement gives, wherever it gives them. */
function reasonsIn(value: unknown, depth = 0): readonly string[] {
  if (typeof value !== 'object' || value === null || depth > 3) return [];
  return Object.entries(value).flatMap(([name, inner]) => {
    const isReason = name === 'reason' || name === 'limit' || name === 'unusable';
    return isReason && typeof inner?.code === 'string' ? [inner.code] : reasonsIn(inner, depth + 1);
  });
}
