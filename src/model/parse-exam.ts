import { jsonText } from '../data/json-text.ts';
import { type BudgetOption, spend, within } from '../issues/budget.ts';
import {
  failure,
  hasErrors,
  type Issue,
  issue,
  type Outcome,
  orThrow,
  success,
} from '../issues/issue.ts';
import { cutIssues, endedIssue } from '../issues/issue-list.ts';
import { firstNearest } from '../issues/nearest.ts';
import type { Path } from '../issues/path.ts';
import type { Saying } from '../kinds/facets/meaning.ts';
import { sayingsOf } from '../kinds/registries/meanings.ts';
import { builtInCatalogue, type Catalogue } from '../terminology/catalogue.ts';
import type { Exam } from './exam.ts';
import type { Key } from './primitive.ts';
import { allowedAnswers } from './rules/answers.ts';
import { knownCodes } from './rules/codes.ts';
import { completeStatements } from './rules/completeness.ts';
import { orderedDates, realDates } from './rules/dates.ts';
import { memberExceptions } from './rules/exceptions.ts';
import { fittingReferences, statedPeople } from './rules/existing.ts';
import { resolvedKeys, uniqueKeys, withdrawnKeys } from './rules/keys.ts';
import { seenMembers } from './rules/open-members.ts';
import { noOpposites } from './rules/opposites.ts';
import { expectedPlaces } from './rules/places.ts';
import type { ExamRule, RuleContext } from './rules/rule.ts';
import { possibleSides } from './rules/sides.ts';
import { knownUnits } from './rules/units.ts';
import { examSchemaIssues } from './schema-issues.ts';
import type { Statement } from './statement.ts';

export interface ParseOptions {
  /** Default: the built-in catalogue. */
  readonly catalogue?: Catalogue;
  /** Put the offending value into `received`. Default false, since it can be patient data. */
  readonly includeValues?: boolean;
  /** What the call may take; default `budgets.exam`. */
  readonly budget?: BudgetOption;
}

/** The rules on the form of an exam, in the order they are reported. */
const rules: readonly ExamRule[] = [
  uniqueKeys,
  resolvedKeys,
  withdrawnKeys,
  knownCodes,
  knownUnits,
  possibleSides,
  expectedPlaces,
  memberExceptions,
  allowedAnswers,
  completeStatements,
  noOpposites,
  seenMembers,
  realDates,
  orderedDates,
  fittingReferences,
  statedPeople,
];

/**
 * Checks data from outside and types it as an exam. Nothing is changed, filled in or left out: the
 * value returned is the one given.
 *
 * @param value The exam as plain data, such as from `fromJson`.
 * @param options The catalogue, and whether issues may hold values; see {@link ParseOptions}.
 * @returns The exam, with warnings beside it. It fails where any issue is an error, and then holds
 *   all that was found.
 * @example
 * const outcome = parseExam(resource);
 * if (!outcome.ok) console.log(outcome.issues.map(issueText).join('\n'));
 */
export function parseExam(value: unknown, options: ParseOptions = {}): Outcome<Exam> {
  return within(
    'exam',
    options.budget,
    () => parsed(value, options),
    (why) => failure([endedIssue(why)]),
  );
}

function parsed(value: unknown, options: ParseOptions): Outcome<Exam> {
  const includeValues = options.includeValues ?? false;
  const schema = examSchemaIssues(value, { includeValues });
  if (hasErrors(schema)) return failure(cutIssues(schema));
  const exam = value as Exam; // the schema, generated from this type, has accepted it
  const issues = cutIssues([...schema, ...ruleIssues(exam, options)]);
  return hasErrors(issues) ? failure(issues) : success(exam, issues);
}

/**
 * Checks data like {@link parseExam} and throws where that fails.
 *
 * @param value The exam as plain data.
 * @param options As for `parseExam`.
 * @returns The exam. Warnings are not returned; `parseExam` gives them.
 * @throws {IssueError} Where there is no exam; it holds all issues.
 * @example
 * const checked = parseExamOrThrow(resource);
 */
export function parseExamOrThrow(value: unknown, options?: ParseOptions): Exam {
  return orThrow('read the exam', parseExam(value, options));
}

/** What the rules say of an exam that its schema accepts. */
export function ruleIssues(exam: Exam, options: ParseOptions = {}): Issue[] {
  const issues: Issue[] = [];
  const catalogue = options.catalogue ?? builtInCatalogue;
  const said = saidOnce(catalogue);
  const nearest = firstNearest();
  for (const rule of rules) {
    spend(exam.statements.length);
    rule({
      exam,
      catalogue,
      said,
      nearest,
      report: (code, path, facts, { value, ...details } = {}) => {
        const received = options.includeValues && value !== undefined ? jsonText(value) : undefined;
        issues.push(
          issue(code, path, facts, { statement: keyAt(exam, path), ...details, received }),
        );
      },
    });
  }
  return issues;
}

/** What statements say, worked out once for each: several rules ask for it. */
function saidOnce(catalogue: Catalogue): RuleContext['said'] {
  const known = new Map<Statement, readonly Saying[]>();
  return (statement) => {
    let said = known.get(statement);
    if (said === undefined) {
      said = sayingsOf(statement, catalogue);
      known.set(statement, said);
    }
    return said;
  };
}

/** Key of the statement that a path leads into: a form finds its field by it. */
function keyAt({ statements }: Exam, [list, at]: Path): Key | undefined {
  return list === 'statements' && typeof at === 'number' ? statements[at]?.key : undefined;
}
