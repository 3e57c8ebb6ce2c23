import type { IssueCode } from './codes.ts';
import type { answers } from './english/answers.ts';
import type { clinic } from './english/clinic.ts';
import type { conversion } from './english/conversion.ts';
import { record } from './english/record.ts';
import type { validation } from './english/validation.ts';
import type { FactsFor, Sentence, SentenceTable } from './facts.ts';
import type { IssueLanguage } from './language.ts';
import { type Path, pathText } from './path.ts';
import { englishWording, rendered } from './render.ts';
import { shownText } from './shown-text.ts';

export type { IssueCode } from './codes.ts';
export type { FactTypes } from './facts.ts';
export type { IssueLanguage } from './language.ts';

/**
 * `error`: there is no value, or it must not be used. `warning`: someone should look.
 * `information`: worth knowing.
 */
export type Severity = 'error' | 'warning' | 'information';

/** Where in an input an issue arose; lines, columns, segments and fields count from 1. */
export type SourcePosition =
  | {
      readonly file?: string;
      /** Of a workbook: the row is the line, and the cell is told as in `C5` too. */
      readonly sheet?: string;
      readonly line: number;
      readonly column?: number;
      readonly cell?: string;
    }
  | {
      readonly file?: string;
      readonly message?: number;
      readonly segment: string;
      readonly segmentIndex: number;
      readonly field?: number;
      readonly repetition?: number;
      readonly component?: number;
    };

/**
 * What is known about an issue of this code, one member for each `reason`. Facts hold codes, names and
 * bounds of tables, schemas, mappings and profiles, and never a value of the data.
 */
export type IssueFacts<Code extends IssueCode = IssueCode> = Code extends IssueCode
  ?
      | FactsFor<typeof record, Code>
      | FactsFor<typeof validation, Code>
      | FactsFor<typeof conversion, Code>
      | FactsFor<typeof answers, Code>
      | FactsFor<typeof clinic, Code>
  : never;

interface IssueOf<Code extends IssueCode> {
  readonly code: Code;
  readonly severity: Severity;
  /** In English, from the code and the facts; {@link issueMessage} says it in another language. */
  readonly message: string;
  readonly path: Path;
  readonly facts: IssueFacts<Code>;
  /** The form that would have been accepted, in English, from the facts. */
  readonly expected?: string;
  /** Key of the statement it is about. */
  readonly statement?: string;
  /** The offending value as text, cut to 200 characters; only with `includeValues: true`. */
  readonly received?: string;
  readonly source?: SourcePosition;
  /** Rule or specification the issue rests on: an invariant key, a rule id, a URL. */
  readonly rule?: string;
}

/**
 * Anything wrong or worth saying, in the one shape the whole library uses: a union by `code`, so that
 * a check of the code and of `facts.reason` gives the facts their types. `message` and `facts` never
 * hold a value from the data; `received` does, and only where the caller asked.
 */
export type Issue<Code extends IssueCode = IssueCode> = Code extends IssueCode
  ? IssueOf<Code>
  : never;

/**
 * Result of a step that can fail on data, told apart by `ok`. Where it is true there is a `value`, and
 * the issues are what else is to be said; where it is false nothing usable came out, and they say why.
 */
export type Outcome<T> = Success<T> | Failure;

/** A value; its issues are warnings and information. */
export interface Success<T> {
  readonly ok: true;
  readonly value: T;
  readonly issues: readonly Issue[];
}

/** No value: at least one issue is an error. */
export interface Failure {
  readonly ok: false;
  readonly value?: undefined;
  readonly issues: readonly Issue[];
}

export function success<T>(value: T, issues: readonly Issue[] = []): Success<T> {
  return { ok: true, value, issues };
}

export function failure(issues: readonly Issue[]): Failure {
  return { ok: false, issues };
}

/** Optional parts of an issue; `undefined` is the same as left out. */
export interface IssueDetails {
  readonly severity?: Severity | undefined;
  readonly statement?: string | undefined;
  readonly received?: string | undefined;
  readonly source?: SourcePosition | undefined;
  readonly rule?: string | undefined;
}

/** Makes issues with the codes and reasons of one table of sentences; each area loads its own table. */
export function issuesOf<Table extends SentenceTable>(table: Table) {
  return <Code extends keyof Table & IssueCode>(
    code: Code,
    path: Path,
    facts: FactsFor<Table, Code>,
    details: IssueDetails = {},
  ): Issue => {
    const { severity = 'error', statement, received, source, rule } = details;
    const stated = withoutUndefined(facts);
    const told = rendered(table[code]?.[stated.reason] ?? '', stated, englishWording);
    return {
      code,
      severity,
      message: told.message,
      path,
      facts: stated,
      ...(told.expected !== undefined && { expected: told.expected }),
      ...(statement !== undefined && { statement }),
      ...(received !== undefined && { received: received.slice(0, 200) }),
      ...(source !== undefined && { source }),
      ...(rule !== undefined && { rule }),
    } as unknown as Issue; // TypeScript does not follow the pair of code and facts
  };
}

/** Codes and facts of the sentences of {@link issue}. */
export type RecordCode = keyof typeof record;
export type RecordFacts<Code extends RecordCode = RecordCode> = FactsFor<typeof record, Code>;

/** Issues about data, exams, codes, checks, export and reading. Severity: `error` unless told. */
export const issue = /*@__PURE__*/ issuesOf(record);

function withoutUndefined(facts: object): Readonly<Record<string, unknown>> & { reason: string } {
  const stated = { ...facts } as Record<string, unknown> & { reason: string }; // every sentence has one
  for (const name in stated) if (stated[name] === undefined) delete stated[name];
  return stated;
}

/** The same issues with their paths set below `prefix`: a part reports relative to itself. */
export function issuesBelow(prefix: Path, issues: readonly Issue[]): Issue[] {
  return issues.map((found) => ({ ...found, path: [...prefix, ...found.path] }));
}

/**
 * Tells whether any issue is an error; warnings and information do not count.
 *
 * @param issues From any function of the library.
 * @returns True where at least one has the severity `error`.
 * @example
 * const { coverage, issues: found } = checkExam(exam);
 * if (!hasErrors(found)) console.log(coverage?.regions.complete);
 */
export function hasErrors(issues: readonly Issue[]): boolean {
  return issues.some((found) => found.severity === 'error');
}

/**
 * Says what an issue means, from its code and facts, in a language.
 *
 * @param found The issue.
 * @param language Such as `germanIssues`. Default: English, as the issue was made.
 * @returns One sentence, and the expected form where there is one. English where the language has
 *   no sentence for the issue.
 * @example
 * const messages = issues.map((issue) => issueMessage(issue).message);
 */
export function issueMessage(
  found: Issue,
  language?: IssueLanguage,
): { readonly message: string; readonly expected?: string } {
  const sentence = language && sentenceOf(found, language);
  if (language === undefined || sentence === undefined) {
    const { message, expected } = found;
    return { message, ...(expected !== undefined && { expected }) };
  }
  return rendered(sentence, { ...found.facts }, language.wording);
}

function sentenceOf({ code, facts }: Issue, { sentences }: IssueLanguage): Sentence | undefined {
  for (const table of sentences) {
    const sentence = table[code]?.[facts.reason];
    if (sentence !== undefined) return sentence;
  }
  return undefined;
}

/**
 * Writes an issue as one line for people:
 * `error  statements[3].side  side is missing (expected right or left) [missing-side]`.
 *
 * @param found The issue.
 * @returns Severity, path, sentence, expected form and code, with control characters made harmless
 *   for a terminal.
 * @example
 * for (const issue of issues) console.log(issueText(issue));
 */
export function issueText(found: Issue): string {
  return lineOf(found, found, 'expected', found.severity);
}

/**
 * Writes an issue as one line in another language.
 *
 * @param found The issue.
 * @param language Such as `germanIssues` from `face-neck-fhir/issues/de`.
 * @returns The same line as `issueText` gives in English.
 * @example
 * const inWordsOf = (language: IssueLanguage) => issues.map((issue) => issueTextIn(issue, language));
 */
export function issueTextIn(found: Issue, language: IssueLanguage): string {
  const { wording, severities } = language;
  return lineOf(found, issueMessage(found, language), wording.expected, severities[found.severity]);
}

/** As it can be shown at a terminal: names of properties stand in the path. */
function lineOf(
  { path, code }: Issue,
  { message, expected }: { readonly message: string; readonly expected?: string },
  expectedWord: string,
  severity: string,
): string {
  const hint = expected === undefined ? '' : ` (${expectedWord} ${expected})`;
  return shownText(`${severity}  ${pathText(path) || '(root)'}  ${message}${hint} [${code}]`);
}

/** Thrown by the `OrThrow` form of a function; `issues` holds everything that was found. */
export class IssueError extends Error {
  readonly issues: readonly Issue[];

  constructor(doing: string, issues: readonly Issue[]) {
    const errors = issues.filter((found) => found.severity === 'error');
    const first = errors[0];
    super(
      `cannot ${doing}: ${errors.length} error(s)${first ? `, first: ${issueText(first)}` : ''}`,
    );
    this.name = 'IssueError';
    this.issues = issues;
  }
}

/**
 * Gives the value of an outcome, for a caller that would rather catch than ask.
 *
 * @param doing What was tried, for the message: `'read the mapping'`.
 * @param outcome What any function of the library returned.
 * @param hear Called with the issues that stand beside a value, mostly warnings.
 * @returns The value.
 * @throws {IssueError} Where there is no value; it holds all issues.
 * @example
 * const checked = orThrow('read the exam', parseExam(resource));
 */
export function orThrow<T>(
  doing: string,
  outcome: Outcome<T>,
  hear?: (issues: readonly Issue[]) => void,
): T {
  if (!outcome.ok) throw new IssueError(doing, outcome.issues);
  if (outcome.issues.length > 0) hear?.(outcome.issues);
  return outcome.value;
}
