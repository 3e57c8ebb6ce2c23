import { type BudgetOption, spend, within } from '../issues/budget.ts';
import { failure, hasErrors, type Outcome, success } from '../issues/issue.ts';
import { endedIssue } from '../issues/issue-list.ts';
import type { Saying } from '../kinds/facets/meaning.ts';
import { answersOf } from '../kinds/registries/flats.ts';
import { sayingsOf, standingOf, subjectOf } from '../kinds/registries/meanings.ts';
import type { Exam } from '../model/exam.ts';
import { parseExam } from '../model/parse-exam.ts';
import { personName } from '../model/people.ts';
import type { Statement } from '../model/statement.ts';
import { builtInCatalogue, type Catalogue } from '../terminology/catalogue.ts';
import { type Answer, listed } from './answer.ts';
import { type FlatColumn, type FlatRow, flatColumnNames, wordColumns } from './flat-row.ts';

/** How an exam is made into rows; each option has a default. */
export interface FlatOptions {
  /** Displays come from it, so give it in another language for those. Default: the built-in catalogue. */
  readonly catalogue?: Catalogue;
  /** Leave out what somebody put in words: place, reason in words, note. Default false. */
  readonly withoutWords?: boolean;
  /** Put the offending value into `received` of an issue. Default false, since it can be patient data. */
  readonly includeValues?: boolean;
  /** What the call may take; default `budgets.exam`. */
  readonly budget?: BudgetOption;
}

/**
 * Makes the statements of an exam into rows for analysis, each statement once; a sensation has a row
 * for each modality. Silence has no row: what no row speaks of was never spoken of.
 *
 * @param exam The exam, which is checked first, as by `parseExam`.
 * @param options Catalogue, and whether words leave; see {@link FlatOptions}.
 * @returns The rows in the order of the statements, with warnings beside them. It fails where the
 *   exam has an error.
 * @example
 * const outcome = toFlat(exam);
 * if (outcome.ok) console.log(outcome.value.filter(({ said }) => said === 'states').length);
 */
export function toFlat(exam: Exam, options: FlatOptions = {}): Outcome<readonly FlatRow[]> {
  return within(
    'exam',
    options.budget,
    () => rowsOf(exam, options),
    (why) => failure([endedIssue(why)]),
  );
}

function rowsOf(given: Exam, options: FlatOptions): Outcome<readonly FlatRow[]> {
  const { catalogue = builtInCatalogue, includeValues = false } = options;
  const { value: exam, issues } = parseExam(given, { catalogue, includeValues });
  if (exam === undefined || hasErrors(issues)) return failure(issues);
  const head = headOf(exam);
  const rows = exam.statements.flatMap((statement) => {
    spend(1);
    const base = { ...head, ...baseOf(statement, catalogue, exam) };
    const sayings = sayingsOf(statement, catalogue);
    const answers = answersOf(
      statement,
      sayings.map(({ polarity }) => polarity),
      catalogue,
    );
    return answers.map((answer, at) => rowOf(base, answer, sayings[at], options));
  });
  return success(rows, issues);
}

function headOf(exam: Exam): Partial<FlatRow> {
  const { subject, protocol } = exam;
  return {
    exam: exam.id,
    version: String(exam.history?.at(-1)?.version ?? ''),
    status: exam.status,
    patient: personName(subject) ?? '',
    date: exam.performed.start,
    protocol: `${protocol.id}|${protocol.version}`,
  };
}

function baseOf(statement: Statement, catalogue: Catalogue, exam: Exam): Partial<FlatRow> {
  const { region, side, place, section } = standingOf(statement, catalogue);
  const { table, code } = subjectOf(statement);
  const { carried } = statement;
  const about = 'about' in statement ? statement.about : undefined;
  return {
    statement: statement.key,
    kind: statement.kind,
    section: section ?? '',
    region: region ?? '',
    region_display: region === undefined ? '' : (catalogue.regions.get(region)?.display ?? ''),
    side: side ?? '',
    place: place ?? '',
    table,
    code,
    display: catalogue[table].get(code)?.display ?? '',
    about: typeof about === 'string' ? about : listed(about ?? []),
    examiner: statement.examiner ?? exam.examiners[0].key,
    instruments: listed(statement.instruments ?? []),
    carried: carried === undefined ? '' : carried.confirmed ? 'confirmed' : 'unconfirmed',
    note: statement.note ?? '',
  };
}

function rowOf(
  base: Partial<FlatRow>,
  answer: Answer,
  saying: Saying | undefined,
  { withoutWords = false }: FlatOptions,
): FlatRow {
  const { polarity = 'none', usual, methods = [], except = [], seen } = saying ?? {};
  const filled: Partial<FlatRow> = {
    ...base,
    said: polarity,
    usual: usual === true ? 'yes' : '',
    methods: listed([...new Set(methods)]),
    except: listed(except.map(({ region, side }) => (side ? `${region}.${side}` : region))),
    seen: seen ?? '',
    ...answer,
    // A note on a note is the examiner's word on it; both stand.
    note: [answer.note, base.note].filter((text) => text !== undefined && text !== '').join('\n'),
  };
  const left = (name: FlatColumn): string =>
    withoutWords && wordColumns.includes(name) ? '' : (filled[name] ?? '');
  // Every column of the list is filled, and the state comes from the answer.
  return Object.fromEntries(flatColumnNames.map((name) => [name, left(name)])) as FlatRow;
}
