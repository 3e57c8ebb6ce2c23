import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import type { ConvertResult } from '../../src/convert/exams/convert-text.ts';
import { positionText } from '../../src/convert/exams/note.ts';
import type { Mapping } from '../../src/convert/mapping/mapping.ts';
import type { Issue } from '../../src/issues/issue.ts';
import type { Exam } from '../../src/model/exam.ts';
import { mergePatch } from './merge-patch.ts';

/** A case file: one rule of a syntax, an input that shows it, and what has to come out. */
interface SyntaxCase {
  readonly description: string;
  /** The published rule or table that the case rests on, or "common practice, no source". */
  readonly rule: string;
  /** Changes to the mapping of the suite, as a JSON merge patch (RFC 7396). */
  readonly mapping?: unknown;
  /** The whole input; an array is joined with the line end of the suite. */
  readonly input?: string | readonly string[];
  /** Part of an input that the suite puts a usual beginning and end around. */
  readonly lines?: readonly string[];
  readonly expect: Expected;
}

interface Expected {
  /** Statements of each exam, without their keys, in order. */
  readonly statements?: readonly (readonly object[])[];
  /** Parts of the exams beside their statements. */
  readonly exams?: readonly object[];
  /** `severity code place` of every issue, in order. */
  readonly issues?: readonly string[];
  /** Reason of each unit in quarantine. */
  readonly quarantine?: readonly string[];
  /** Fates that are not 0. */
  readonly ledger?: { readonly [fate: string]: number };
}

/** What the cases of one syntax have in common. */
export interface Suite {
  readonly folder: string;
  readonly mapping: Mapping;
  readonly convert: (text: string, mapping: Mapping) => ConvertResult;
  readonly lineEnd: string;
  readonly wrap: (lines: readonly string[]) => readonly string[];
}

export function runCases(suite: Suite): void {
  const folder = join(import.meta.dirname, '../cases', suite.folder);
  const files = readdirSync(folder).filter((name) => name.endsWith('.json'));
  it('has at least 40 cases', () => {
    expect(files.length).toBeGreaterThanOrEqual(40);
  });
  for (const file of files) {
    const one: SyntaxCase = JSON.parse(readFileSync(join(folder, file), 'utf8'));
    it(`${file.replace('.json', '')}: ${one.description}`, () => {
      expect(one.rule).not.toBe('');
      const result = suite.convert(textOf(one, suite), mappingOf(one, suite));
      expect(resultOf(result, one.expect)).toEqual(one.expect);
      checkLedger(result);
    });
  }
}

function mappingOf(one: SyntaxCase, suite: Suite): Mapping {
  // Case files are data; the converter checks the mapping against its schema.
  return mergePatch(suite.mapping, one.mapping ?? {});
}

export function textOf(
  { input, lines }: Pick<SyntaxCase, 'input' | 'lines'>,
  suite: Suite,
): string {
  const whole = input ?? suite.wrap(lines ?? []);
  return typeof whole === 'string' ? whole : whole.join(suite.lineEnd);
}

/** The parts of a result that a case speaks of, in the form of the case. */
function resultOf(result: ConvertResult, wanted: Expected): Expected {
  const issues = [
    ...result.issues,
    ...result.exams.flatMap((one) => one.issues),
    ...result.quarantine.flatMap((one) => one.issues),
  ];
  const { fields, ...fates } = result.ledger;
  const told = Object.entries(fates).filter(([, count]) => count > 0);
  return {
    ...(wanted.statements && { statements: result.exams.map(({ exam }) => statementsOf(exam)) }),
    ...(wanted.exams && {
      exams: result.exams.map(({ exam }, at) => picked(exam, wanted.exams?.[at] ?? {})),
    }),
    issues: issues.map(issueLine),
    quarantine: result.quarantine.map(({ reason }) => reason),
    ...(wanted.ledger && { ledger: Object.fromEntries(told) }),
  };
}

function statementsOf({ statements }: Exam): object[] {
  return statements.map(({ key, ...statement }) => statement);
}

function picked(exam: Exam, wanted: object): object {
  return Object.fromEntries(Object.entries(exam).filter(([name]) => Object.hasOwn(wanted, name)));
}

function issueLine({ severity, code, source, path }: Issue): string {
  const place = source === undefined ? path.join('.') : positionText(source);
  return `${severity} ${code} ${place}`.trim();
}

/** Nothing is lost: each field has one fate, and the counts sum. */
export function checkLedger({ ledger, exams }: ConvertResult): void {
  const { fields, coded, verbatim, blank, layout, administrative, quarantined } = ledger;
  expect(coded + verbatim + blank + layout + administrative + quarantined).toBe(fields);
  for (const { ledger: entries, exam } of exams) {
    const keys = new Set(exam.statements.map(({ key }) => key));
    for (const { fate, statement } of entries) {
      if (fate === 'verbatim' && statement !== undefined) expect(keys.has(statement)).toBe(true);
    }
  }
}
