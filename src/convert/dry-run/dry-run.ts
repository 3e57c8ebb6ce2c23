import { type BudgetOption, within } from '../../issues/budget.ts';
import type { Issue, SourcePosition } from '../../issues/issue.ts';
import { endedIssue, longTextIssues } from '../../issues/issue-list.ts';
import type { Exam } from '../../model/exam.ts';
import { builtInCatalogue, type Catalogue } from '../../terminology/catalogue.ts';
import { prepareConversion } from '../any-conversion.ts';
import type { Conversion } from '../conversion.ts';
import { repeatedExam, unitsIn } from '../exams/convert-text.ts';
import { addCounts, countFates, type Fate, type LedgerCounts, noFields } from '../exams/ledger.ts';
import type { AnyMapping } from '../mapping/mapping.ts';
import type { RawUnit } from '../record/record.ts';
import { type Cause, causesOf } from './causes.ts';

export interface DryRunOptions {
  /** Default: the built-in catalogue. */
  readonly catalogue?: Catalogue;
  /** What the call may take; default `budgets.legacy`. */
  readonly budget?: BudgetOption;
}

/** A field of the source, with what became of it. */
export interface TriedField {
  readonly name: string;
  readonly at: SourcePosition;
  readonly text: string;
  readonly fate: Fate;
  /** Key of the statement that holds it. */
  readonly statement?: string;
}

/** One exam of the source beside what it became. */
export interface TriedExam {
  readonly at: SourcePosition;
  readonly fields: readonly TriedField[];
  /** None where it would go to quarantine, for the errors among the issues. */
  readonly exam?: Exam;
  readonly issues: readonly Issue[];
}

/** What became of all fields of a name. */
export interface Coverage extends LedgerCounts {
  readonly name: string;
}

/** A text that is kept as text, and how often it came. */
export interface Leftover {
  readonly name: string;
  readonly text: string;
  readonly count: number;
}

/** A conversion that writes nothing. It holds texts of the source, which are patient data. */
export interface DryRun {
  readonly exams: readonly TriedExam[];
  readonly ledger: LedgerCounts;
  /** By name of the field, those with most text left over first. */
  readonly coverage: readonly Coverage[];
  /** Most frequent first. */
  readonly leftovers: readonly Leftover[];
  /** Why exams would go to quarantine, and what can be done; most frequent first. */
  readonly causes: readonly Cause[];
  /** About the mapping and the text as a whole. */
  readonly issues: readonly Issue[];
}

/**
 * Converts a text and keeps what it was made from beside what it became, for a person to compare.
 *
 * @param text The export or a part of it, decoded.
 * @param mapping What its fields and words mean.
 * @param options The catalogue and the budget.
 * @returns Every exam with its source, coverage by field, leftovers by count, and causes of quarantine. A
 *   mapping that is wrong gives issues alone.
 * @example
 * const { coverage, causes } = dryRun(text, mapping);
 */
export function dryRun(text: string, mapping: AnyMapping, options: DryRunOptions = {}): DryRun {
  return within(
    'legacy',
    options.budget,
    () => tried(text, mapping, options),
    (why) => ({ ...nothing, issues: [endedIssue(why)] }),
  );
}

const nothing = { exams: [], ledger: noFields, coverage: [], leftovers: [], causes: [] } as const;

function tried(text: string, mapping: AnyMapping, options: DryRunOptions): DryRun {
  const long = longTextIssues(text);
  if (long.length > 0) return { ...nothing, issues: long };
  const catalogue = options.catalogue ?? builtInCatalogue;
  const { value: conversion, issues } = prepareConversion(mapping, { catalogue });
  if (conversion === undefined) return { ...nothing, issues };
  const units = unitsIn(text, conversion);
  if ('code' in units) return { ...nothing, issues: [...issues, units] };
  const exams = examsOf(units, conversion);
  const fields = exams.flatMap((one) => one.fields);
  const ledger = exams.reduce(
    (sum, one) =>
      addCounts(sum, one.exam === undefined ? quarantined(one) : countFates(one.fields)),
    noFields,
  );
  return {
    exams,
    ledger,
    coverage: coverageOf(exams),
    leftovers: leftoversOf(fields.filter(({ fate }) => fate === 'verbatim')),
    causes: causesOf(exams),
    issues,
  };
}

function examsOf(units: readonly RawUnit[], conversion: Conversion): readonly TriedExam[] {
  const ids = new Set<string>();
  return conversion.convert(units).map((converted, at): TriedExam => {
    const { exam, issues, ledger } = converted;
    const texts = converted.texts();
    const fields = ledger.map(({ name, at: place, fate, statement }, index) => ({
      ...{ name, at: place, text: texts[index] ?? '', fate },
      ...(statement !== undefined && { statement }),
    }));
    const unit = units[at];
    const isRepeat = exam !== undefined && ids.has(exam.id);
    if (exam === undefined || isRepeat) {
      const more = isRepeat && unit !== undefined ? [repeatedExam(unit)] : [];
      const aside = fields.map((field) => ({ ...field, fate: 'quarantined' as const }));
      return { at: converted.at, fields: aside, issues: [...issues, ...more] };
    }
    ids.add(exam.id);
    return { at: converted.at, fields, exam, issues };
  });
}

function quarantined({ fields }: TriedExam): LedgerCounts {
  return { ...noFields, fields: fields.length, quarantined: fields.length };
}

function coverageOf(exams: readonly TriedExam[]): readonly Coverage[] {
  const byName = new Map<string, TriedField[]>();
  for (const field of exams.flatMap(({ fields }) => fields)) {
    const same = byName.get(field.name) ?? [];
    if (same.length === 0) byName.set(field.name, same);
    same.push(field);
  }
  return [...byName]
    .map(([name, same]) => ({ name, ...countFates(same) }))
    .sort((one, other) => other.verbatim - one.verbatim);
}

function leftoversOf(fields: readonly TriedField[]): readonly Leftover[] {
  const counts = new Map<string, Leftover>();
  for (const { name, text } of fields) {
    const key = JSON.stringify([name, text.trim()]);
    const count = (counts.get(key)?.count ?? 0) + 1;
    counts.set(key, { name, text: text.trim(), count });
  }
  return [...counts.values()].sort((one, other) => other.count - one.count);
}
