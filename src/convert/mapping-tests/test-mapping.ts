import { type BudgetOption, within } from '../../issues/budget.ts';
import type { Issue, IssueCode } from '../../issues/issue.ts';
import { endedIssue } from '../../issues/issue-list.ts';
import type { Exam } from '../../model/exam.ts';
import type { Statement } from '../../model/statement.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import { prepareConversion } from '../any-conversion.ts';
import type { Conversion } from '../conversion.ts';
import { convertRecords } from '../exams/convert-text.ts';
import type { AnyMapping } from '../mapping/mapping.ts';
import type { MappingTest } from '../mapping/test.ts';
import { matches, unmatched } from './matches.ts';

export interface MappingTestOptions {
  /** Default: the built-in catalogue. */
  readonly catalogue?: Catalogue;
  /** What the call may take; default `budgets.legacy`. */
  readonly budget?: BudgetOption;
}

/** One thing in which a result differs from what a test expects. */
export type TestFailure =
  | { readonly failure: 'missing-statement'; readonly expected: unknown }
  | { readonly failure: 'further-statement' | 'forbidden-statement'; readonly found: Statement }
  | { readonly failure: 'other-exam'; readonly expected: unknown; readonly found: Partial<Exam> }
  | { readonly failure: 'exams'; readonly expected: number; readonly found: number }
  | {
      readonly failure: 'quarantine';
      readonly expected: readonly string[];
      readonly found: readonly IssueCode[];
    };

export interface MappingTestResult {
  readonly title: string;
  /** Empty where the test holds. */
  readonly failures: readonly TestFailure[];
}

export interface MappingTestRun {
  readonly results: readonly MappingTestResult[];
  /** What is wrong with the mapping; no test was run then. */
  readonly issues: readonly Issue[];
}

/**
 * Runs the tests that a mapping carries: each source is converted, and what it becomes is compared with
 * what the test expects.
 *
 * @param mapping With `tests`.
 * @param options The catalogue and the budget.
 * @returns A result for each test. A mapping that is wrong gives issues and no result.
 * @example
 * const failed = testMapping(mapping).results.filter(({ failures }) => failures.length > 0);
 */
export function testMapping(mapping: AnyMapping, options: MappingTestOptions = {}): MappingTestRun {
  return within(
    'legacy',
    options.budget,
    () => {
      const { value: conversion, issues } = prepareConversion(mapping, options);
      if (conversion === undefined) return { results: [], issues };
      const results = conversion.tests.map((test, at) => tested(test, at, conversion));
      return { results, issues };
    },
    (why) => ({ results: [], issues: [endedIssue(why)] }),
  );
}

function tested(test: MappingTest, at: number, conversion: Conversion): MappingTestResult {
  const { source, expect } = test;
  const { syntax } = conversion.source;
  const ending = syntax === 'hl7v2' ? '\r' : '\n';
  const text = typeof source === 'string' ? source : source.map((line) => line + ending).join('');
  const { exams, quarantine } = convertRecords(text, conversion, conversion.convert);
  const made = exams.map(({ exam }) => exam);
  return {
    title: test.title ?? `test ${at + 1}`,
    failures: [
      ...statementFailures(
        made.flatMap(({ statements }) => statements),
        expect,
      ),
      ...made.flatMap((exam) => examFailures(exam, expect)),
      ...countFailures(made.length, expect),
      ...quarantineFailures(
        quarantine.map(({ reason }) => reason),
        expect,
      ),
    ],
  };
}

function statementFailures(
  statements: readonly Statement[],
  { statements: expected = [], only, never = [] }: MappingTest['expect'],
): TestFailure[] {
  const { missing, more } = unmatched(statements, expected);
  const forbidden = statements.filter((one) => never.some((part) => matches(one, part)));
  return [
    ...missing.map((one): TestFailure => ({ failure: 'missing-statement', expected: one })),
    ...(only === true ? more : []).map(
      (found): TestFailure => ({ failure: 'further-statement', found }),
    ),
    ...forbidden.map((found): TestFailure => ({ failure: 'forbidden-statement', found })),
  ];
}

function examFailures(exam: Exam, { exam: expected }: MappingTest['expect']): TestFailure[] {
  if (expected === undefined || matches(exam, expected)) return [];
  const properties = Object.entries(exam).filter(([name]) => Object.hasOwn(expected, name));
  return [{ failure: 'other-exam', expected, found: Object.fromEntries(properties) }];
}

function countFailures(found: number, { exams }: MappingTest['expect']): TestFailure[] {
  return exams === undefined || exams === found
    ? []
    : [{ failure: 'exams', expected: exams, found }];
}

function quarantineFailures(
  found: readonly IssueCode[],
  { quarantine = [] }: MappingTest['expect'],
): TestFailure[] {
  return matches(found, quarantine) ? [] : [{ failure: 'quarantine', expected: quarantine, found }];
}
