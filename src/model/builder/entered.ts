import { isPlainObject } from '../../data/plain-data.ts';
import type { Issue, Outcome } from '../../issues/issue.ts';
import { failure, hasErrors, success } from '../../issues/issue.ts';
import { cutIssues } from '../../issues/issue-list.ts';
import type { Path } from '../../issues/path.ts';
import { unknownStep } from '../../issues/shown-path.ts';
import { builtInCatalogue } from '../../terminology/catalogue.ts';
import { type ParseOptions, ruleIssues } from '../parse-exam.ts';
import { examSchemaIssues } from '../schema-issues.ts';
import type { Statement } from '../statement.ts';
import { baseKey, type ExamDraft, headOf, state, type WithoutKey } from './draft.ts';
import type { EnteredStatement } from './entered-statement.ts';

/**
 * Adds a statement that was entered in a form: its region, sign, side and value are strings known
 * only at run time. It is held to the rules on one statement at once, so that a form can tell a fault
 * beside its field; what concerns several statements is for `finishExam`. A member that is empty (an
 * empty text, `null`, `undefined`) counts as not given.
 *
 * @param draft The draft so far.
 * @param data The statement; see {@link EnteredStatement}. Nothing in it is turned into something
 *   else: a figure with a comma is refused.
 * @param options As for `parseExam`: the catalogue, and whether issues may hold values.
 * @returns The draft with the statement, with warnings beside it, such as a sign where the tables do
 *   not expect it. It fails where the statement has an error. The path of an issue leads into `data`;
 *   one that begins with `exam` is about the head of the exam.
 * @example
 * const field = { sign: 'lid-turn.ectropion', region: 'lid-lower', side: 'left' };
 * const outcome = entered(draft, {
 *   kind: 'finding', finding: field.sign, presence: 'present', region: field.region, side: field.side,
 * });
 * if (outcome.ok) draft = outcome.value;
 * else for (const { path, message } of outcome.issues) console.log(path.join('.'), message);
 */
export function entered(
  draft: ExamDraft,
  data: EnteredStatement,
  options: ParseOptions = {},
): Outcome<ExamDraft> {
  const given = withoutEmpty(data);
  const statement = { ...given, ...inFull(given) };
  // Only its form is not known yet, which is what is looked at next.
  const typed = statement as unknown as WithoutKey<Statement>;
  const keyed = { ...statement, key: given['key'] ?? keyOf(typed) };
  const alone: unknown = { ...headOf(draft), statements: [keyed] };
  const { catalogue = builtInCatalogue } = options;
  const isNamed = (code: string): boolean =>
    catalogue.attributes.has(code) || catalogue.modalities.has(code);
  const issues = issuesOf(alone, options).map((found) => asEntered(found, given, isNamed));
  if (hasErrors(issues)) return failure(cutIssues(issues));
  return success(state(draft, typed), cutIssues(issues));
}

type Members = Readonly<Record<string, unknown>>;

/** A form leaves empty what was not said. */
function withoutEmpty(data: object): Members {
  return Object.fromEntries(Object.entries(data).filter(([, value]) => !isEmpty(value)));
}

function isEmpty(value: unknown): boolean {
  return value === undefined || value === null || value === '';
}

function inFull(given: Members): Members {
  const { attributes, results } = given;
  return {
    ...(isPlainObject(attributes) && {
      attributes: entriesOf(attributes).map(([attribute, value]) => ({ attribute, value })),
    }),
    ...(isPlainObject(results) && {
      results: entriesOf(results).map(([modality, answer]) => ({ modality, ...answerOf(answer) })),
    }),
    ...Object.fromEntries(
      ['reason', 'limit', 'unusable'].flatMap((name) =>
        typeof given[name] === 'string' ? [[name, { code: given[name] }]] : [],
      ),
    ),
  };
}

/** One entry for each value: several values of one attribute stand in a list. */
function entriesOf(byCode: Members): (readonly [string, unknown])[] {
  return Object.entries(withoutEmpty(byCode)).flatMap(([code, values]) =>
    [values].flat().map((value) => [code, value] as const),
  );
}

function answerOf(answer: unknown): object {
  if (!isPlainObject(answer)) return { result: answer };
  const { reason } = answer;
  return { ...answer, ...(typeof reason === 'string' && { reason: { code: reason } }) };
}

/** Any key will do while the statement is looked at alone; that of the draft is made by `state`. */
function keyOf(statement: WithoutKey<Statement>): string {
  const key = baseKey(statement);
  return /^[A-Za-z0-9][A-Za-z0-9._~:/-]{0,199}$/.test(key) ? key : 'entered';
}

function issuesOf(exam: unknown, options: ParseOptions): Issue[] {
  const { includeValues = false } = options;
  const form = examSchemaIssues(exam, { includeValues });
  if (hasErrors(form)) return form;
  // The schema, generated from the type of the exam, has accepted it.
  return ruleIssues(exam as ReturnType<typeof headOf>, options).filter(isOfOneStatement);
}

/** Whether another statement that it names is there, `finishExam` knows; so with the head of the exam. */
function isOfOneStatement({ code, path }: Issue): boolean {
  if (path[0] !== 'statements') return false;
  return code !== 'unresolved-key' || path[2] === 'examiner' || path[2] === 'instruments';
}

/** Leads into the data as given: a form finds its field by the path. */
function asEntered(found: Issue, given: Members, isNamed: (code: string) => boolean): Issue {
  const [list, , ...below] = found.path;
  if (list !== 'statements') return { ...found, path: ['exam', ...found.path] };
  return { ...found, path: pathIn(given, below, isNamed) };
}

function pathIn(given: Members, path: Path, isNamed: (code: string) => boolean): Path {
  const [member, at, ...rest] = path;
  const value = typeof member === 'string' ? given[member] : undefined;
  if (typeof value === 'string') return path.slice(0, 1);
  if (typeof at !== 'number' || !isPlainObject(value)) return path;
  const code = entriesOf(value)[at]?.[0];
  if (member === undefined || code === undefined) return path;
  // A name that the tables do not hold may be somebody's words.
  const shown = isNamed(code) ? code : unknownStep(Object.keys(value).indexOf(code) + 1);
  return isPlainObject(value[code]) ? [member, shown, ...rest] : [member, shown];
}
