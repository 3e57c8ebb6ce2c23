import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { RuleOutcome, RuleResult, RuleSeverity } from '../../../src/checks/rule.ts';
import type { CheckOptions } from '../../../src/checks/settings/check-settings.ts';
import type { Exam } from '../../../src/model/exam.ts';

/** A case file: one rule, the publication that its expectations rest on, and its cases. */
export interface CaseFile {
  readonly rule: string;
  /** Published source of the expected results, or "common practice, no source". */
  readonly source: string;
  readonly cases: readonly RuleCase[];
}

export interface RuleCase {
  readonly name: string;
  readonly kind: 'firing' | 'not-firing' | 'not-evaluable' | 'boundary' | 'not-applicable';
  /** What the case exam has besides the least that every exam has. */
  readonly exam: Partial<Exam>;
  readonly prior?: Partial<Exam>;
  readonly options?: Omit<CheckOptions, 'prior' | 'catalogue'>;
  /** The exam breaks a rule of form on purpose, so `parseExam` is not asked. */
  readonly malformed?: true;
  /** Every result of the rule, in order. */
  readonly expect: readonly ExpectedResult[];
}

export interface ExpectedResult {
  readonly id: string;
  readonly outcome: RuleOutcome;
  readonly severity?: RuleSeverity;
  readonly side?: string;
  readonly values?: { readonly [name: string]: string };
  /** All inputs that are missing, in order. */
  readonly missing?: readonly string[];
  /** Keys that must be among the inputs used. */
  readonly used?: readonly string[];
  /** Words that the text must hold. */
  readonly words?: readonly string[];
}

const folder = join(import.meta.dirname, '../../cases/checks');

export const caseFiles: readonly (readonly [string, CaseFile])[] = readdirSync(folder)
  .filter((name) => name.endsWith('.json'))
  .map((name) => [name, JSON.parse(readFileSync(join(folder, name), 'utf8'))]);

/** The least that an exam holds, with the parts of a case in it. */
export function examOf(parts: Partial<Exam>, id: string, start: string): Exam {
  return {
    format: 'face-neck-exam/1',
    id,
    status: 'preliminary',
    subject: { identifiers: [{ system: 'urn:oid:2.999.1', value: 'W-0417' }] },
    examiners: [{ key: 'examiner' }],
    performed: { start },
    recorded: `${start}T12:00:00Z`,
    protocol: { id: 'jaw-pain', version: '1.0.0' },
    statements: [],
    ...parts,
  };
}

export const examStart = '2024-05-31';
/** 91 days before. */
export const priorStart = '2024-03-01';

/** The parts of a result that an expectation names, in its shape. */
export function asExpected(result: RuleResult, expected: ExpectedResult): ExpectedResult {
  return {
    id: result.id,
    outcome: result.outcome,
    ...(expected.severity !== undefined && { severity: result.severity }),
    ...(expected.side !== undefined && { side: result.side ?? 'none' }),
    ...(expected.values !== undefined && { values: valuesOf(result, expected.values) }),
    ...(expected.missing !== undefined && { missing: result.inputsMissing }),
    ...(expected.used !== undefined && {
      used: expected.used.filter((key) => result.inputsUsed.includes(key)),
    }),
    ...(expected.words !== undefined && {
      words: expected.words.filter((word) => result.text.includes(word)),
    }),
  };
}

function valuesOf(
  result: RuleResult,
  wanted: NonNullable<ExpectedResult['values']>,
): NonNullable<ExpectedResult['values']> {
  const values = (result.values ?? []).map(({ name, value }) => [name, value] as const);
  return Object.fromEntries(values.filter(([name]) => Object.hasOwn(wanted, name)));
}
