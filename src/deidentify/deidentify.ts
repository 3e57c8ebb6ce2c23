import type { Coding } from 'fhir/r4.js';
import { OBSERVATION_VALUE } from '../fhir/names/systems.ts';
import { type BudgetOption, within } from '../issues/budget.ts';
import { failure, hasErrors, type Issue, issue, type Outcome, success } from '../issues/issue.ts';
import { endedIssue } from '../issues/issue-list.ts';
import type { Exam } from '../model/exam.ts';
import { parseExam } from '../model/parse-exam.ts';
import type { Subject } from '../model/people.ts';
import { builtInCatalogue, type Catalogue } from '../terminology/catalogue.ts';
import { hl7Display } from '../terminology/published/hl7.ts';
import { cutToYear, type Dates, shiftedBy } from './dates.ts';
import { circumstancesOf, conclusionOf, historyOf, timesOf } from './exam-head.ts';
import { type Pseudonyms, pseudonymsOf } from './pseudonyms.ts';
import { mayLeave, type Renaming, withoutWords } from './statements.ts';

/** How an exam is de-identified. */
export interface DeidentifyOptions {
  /**
   * At least 32 characters that nobody can guess. From it follow all ids and the shift of dates: who has
   * it can lead them back, and the same secret gives the same ids again.
   */
  readonly secret: string;
  /**
   * `shift` (the default) moves all dates of a patient by the same number of days, up to 182 to either
   * side, which follows from the secret; a number is that number of days; `year` keeps the year alone.
   */
  readonly dates?: 'shift' | 'year' | { readonly days: number };
  /** Default: the built-in catalogue. Displays of your own rows leave with it. */
  readonly catalogue?: Catalogue;
  /** Put the offending value into `received` of an issue. Default false, since it can be patient data. */
  readonly includeValues?: boolean;
  /** What the call may take; default `budgets.exam`. */
  readonly budget?: BudgetOption;
}

/**
 * Security labels that say what was done: pseudonymized and redacted.
 * @see http://terminology.hl7.org/CodeSystem/v3-ObservationValue
 */
export const deidentifiedLabels: readonly Coding[] = /*@__PURE__*/ ['PSEUDED', 'REDACTED'].map(
  (code) => ({ system: OBSERVATION_VALUE, code, display: hl7Display(OBSERVATION_VALUE, code) }),
);

/**
 * Takes out of an exam what names people and places: identifiers, names, free text, pictures, notes,
 * codes of your own beside ours, prompts, visit, organization and instruments. Ids and keys are made
 * anew from a secret, dates are moved or cut. What is left are codes of the tables, figures, sides and
 * the patient's gender.
 *
 * It does not make an exam anonymous, and certifies nothing: a rare sign, a date or a combination can
 * still tell who it is, and who has the secret can lead ids back. Whether and to whom it may be given is
 * for local rules and those who answer for them; {@link createCellCounter} counts what is rare.
 *
 * @param exam The exam, which is checked first, as by `parseExam`.
 * @param options The secret, and what becomes of dates; see {@link DeidentifyOptions}.
 * @returns The exam without them, which can be exported with `filing: { security: deidentifiedLabels }`.
 *   It fails where the exam has an error or the secret is short. Where a date that must stand is only
 *   a year or month, all dates of the exam are cut to the year.
 * @example
 * const secret = '2f1d6c0e9a7b45839c11d0e7f4a2b6c8';
 * const outcome = deidentify(exam, { secret });
 * if (outcome.ok) console.log(outcome.value.id);
 */
export function deidentify(exam: Exam, options: DeidentifyOptions): Outcome<Exam> {
  return within(
    'exam',
    options?.budget,
    () => deidentified(exam, options),
    (why) => failure([endedIssue(why)]),
  );
}

/** Fewer would be found by trying. 32 hexadecimal digits are 128 bits. */
const LEAST_SECRET = 32;
const MOST_DAYS = 36_500;

function deidentified(given: Exam, options: DeidentifyOptions): Outcome<Exam> {
  const misfits = misfitsOf(options);
  if (misfits.length > 0) return failure(misfits);
  const { catalogue = builtInCatalogue, includeValues = false } = options;
  const { value: exam, issues } = parseExam(given, { catalogue, includeValues });
  if (exam === undefined || hasErrors(issues)) return failure(issues);
  const made = without(exam, options, catalogue);
  // What is taken out must leave an exam; no issue of it holds anything of the one given.
  const checked = parseExam(made, { catalogue });
  return checked.value === undefined || hasErrors(checked.issues)
    ? failure(checked.issues)
    : success(checked.value, issues);
}

function misfitsOf(options: DeidentifyOptions): readonly Issue[] {
  if (typeof options !== 'object' || options === null) {
    return [issue('wrong-type', [], { reason: 'not-an-object' })];
  }
  const { secret, dates = 'shift' } = options;
  if (typeof secret !== 'string' || secret.length < LEAST_SECRET) {
    return [issue('invalid-value', ['secret'], { reason: 'secret' })];
  }
  if (dates === 'shift' || dates === 'year') return [];
  const days: unknown = typeof dates === 'object' && dates !== null ? dates.days : undefined;
  const isShift = Number.isInteger(days) && days !== 0 && Math.abs(Number(days)) <= MOST_DAYS;
  return isShift ? [] : [issue('invalid-value', ['dates'], { reason: 'shift-days' })];
}

function without(exam: Exam, options: DeidentifyOptions, catalogue: Catalogue): Exam {
  const names = pseudonymsOf(options.secret);
  const patient = patientOf(exam.subject) ?? `exam ${exam.id}`;
  const renaming = renamingOf(exam, datesOf(exam, options, names, patient), names, catalogue);
  const { dates } = renaming;
  const { subject, statements, conclusion, judgements, history } = exam;
  const [first, ...others] = exam.examiners.map(({ key }) => ({ key: renaming.examiner(key) }));
  const judged = (judgements ?? []).filter(({ statement }) => renaming.leaves(statement));
  return {
    format: exam.format,
    id: renaming.exam(exam.id),
    status: exam.status,
    subject: {
      // A UUID as identifier. https://hl7.org/fhir/R4/identifier-registry.html
      identifiers: [
        { system: 'urn:ietf:rfc:3986', value: `urn:uuid:${uuid(names.of('patient', patient))}` },
      ],
      ...(subject.gender && { gender: subject.gender }),
    },
    // An exam has an examiner, so that there is a first.
    examiners: [first ?? { key: 'e1' }, ...others],
    ...timesOf(exam, dates),
    ...circumstancesOf(exam, dates, catalogue),
    statements: statements
      .filter((one) => mayLeave(one, catalogue))
      .map((one) => withoutWords(one, renaming)),
    ...(conclusion && { conclusion: conclusionOf(conclusion, renaming) }),
    ...(judged.length > 0 && {
      judgements: judged.map(({ statement, judgement, by, at }) => ({
        statement: renaming.statement(statement),
        judgement,
        by: renaming.examiner(by),
        at: dates.instant(at),
      })),
    }),
    ...(history && { history: historyOf(history, renaming) }),
  };
}

function renamingOf(exam: Exam, dates: Dates, names: Pseudonyms, catalogue: Catalogue): Renaming {
  const leaving = new Set(
    exam.statements.filter((one) => mayLeave(one, catalogue)).map(({ key }) => key),
  );
  const places = new Map(exam.examiners.map(({ key }, at) => [key, `e${at + 1}`]));
  const carriedStatement = (of: string, key: string): string =>
    `s-${names.of('statement', `${of}|${key}`)}`;
  return {
    dates,
    catalogue,
    leaves: (key) => leaving.has(key),
    statement: (key) => carriedStatement(exam.id, key),
    carriedStatement,
    exam: (id) => `x-${names.of('exam', id)}`,
    tracking: (key) => `t-${names.of('tracking', key)}`,
    examiner: (key) => places.get(key) ?? 'e1',
  };
}

/** What the patient is known by; two exams with the same have the same patient. */
function patientOf({ reference, identifiers }: Subject): string | undefined {
  if (reference !== undefined) return `reference ${reference}`;
  const [first] = identifiers ?? [];
  return first && `identifier ${first.system}|${first.value}`;
}

function datesOf(
  exam: Exam,
  { dates = 'shift' }: DeidentifyOptions,
  names: Pseudonyms,
  patient: string,
): Dates {
  if (dates === 'year') return cutToYear;
  const days = dates === 'shift' ? daysOf(names.number('days', patient)) : dates.days;
  const shifted = shiftedBy(days);
  const needed = [
    exam.performed.start,
    ...exam.statements.flatMap(({ at, carried }) => [at, carried?.at]),
  ];
  const canMove = needed.every(
    (text) => text === undefined || shifted.dateTime(text) !== undefined,
  );
  return canMove ? shifted : cutToYear;
}

/** From -182 to 182 without 0, each as likely. */
function daysOf(number: number): number {
  const place = number % 364;
  return place < 182 ? place - 182 : place - 181;
}

/** 128 bits as a UUID of version 8, which leaves their meaning to whoever makes them. @see https://www.rfc-editor.org/rfc/rfc9562 */
function uuid(hex: string): string {
  const variant = ((Number.parseInt(hex.charAt(16), 16) & 0x3) | 0x8).toString(16);
  const digits = `${hex.slice(0, 12)}8${hex.slice(13, 16)}${variant}${hex.slice(17)}`;
  return [
    [0, 8],
    [8, 12],
    [12, 16],
    [16, 20],
    [20, 32],
  ]
    .map(([from, to]) => digits.slice(from, to))
    .join('-');
}
