import { type Differences, differencesOf } from '../../convert/dry-run/differences.ts';
import { type DryRun, dryRun, type TriedExam } from '../../convert/dry-run/dry-run.ts';
import { positionText } from '../../convert/exams/note.ts';
import type { AnyMapping } from '../../convert/mapping/mapping.ts';
import type { BudgetOption } from '../../issues/budget.ts';
import { type Issue, issueText } from '../../issues/issue.ts';
import { tell } from '../../kinds/registries/pages.ts';
import type { Statement } from '../../model/statement.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import { createPage } from '../create-page.ts';
import { type Content, element, joined, list, section, table, words } from '../html.ts';
import { lineText } from '../lines.ts';
import { securePage } from '../review/secure-page.ts';
import { conversionStyle } from '../review/style.ts';

export interface DryRunPageOptions {
  /** An earlier mapping, whose result on the same text is compared. */
  readonly against?: AnyMapping;
  /** Exams that are shown side by side with their source; everything is counted. Default 30. */
  readonly most?: number;
  /** Default: the built-in catalogue. */
  readonly catalogue?: Catalogue;
  /** What the call may take; default `budgets.legacy`. */
  readonly budget?: BudgetOption;
}

export interface DryRunPage {
  /** The page, complete in itself. It holds patient data. */
  readonly html: string;
  readonly run: DryRun;
  /** What is wrong with the mappings or the text. */
  readonly issues: readonly Issue[];
}

/**
 * A page that shows what a conversion would make: each exam beside its source, what became of each field,
 * what would be left as text, why exams would be set aside and what can be done, and what a change of the
 * mapping changes. Nothing is written elsewhere.
 *
 * @param text The export or a part of it, decoded.
 * @param mapping What its fields and words mean.
 * @param options An earlier mapping to compare with, and how much is shown.
 * @returns The page as HTML, and the dry run that it tells.
 * @example
 * const against = { ...mapping, dates: { zone: 'Europe/Zurich' } };
 * const { html } = toDryRun(text, mapping, { against });
 */
export function toDryRun(
  text: string,
  mapping: AnyMapping,
  options: DryRunPageOptions = {},
): DryRunPage {
  const run = dryRun(text, mapping, options);
  const before = options.against === undefined ? undefined : dryRun(text, options.against, options);
  const differences = before === undefined ? undefined : differencesOf(before, run);
  const issues = [...run.issues, ...(before?.issues ?? [])];
  const most = options.most ?? 30;
  const body = element(
    'main',
    {},
    element('h1', {}, 'Dry run of a conversion'),
    element(
      'p',
      { class: 'soft' },
      'This page holds texts of the export, which are patient data: keep it where they may be.',
    ),
    summary(run),
    section('causes', 'What would be set aside, and what can be done', causes(run)),
    section('differences', 'What the change of the mapping changes', changes(differences, options)),
    section('coverage', 'What becomes of each field', coverage(run)),
    section('leftovers', 'What would be kept as text', leftovers(run)),
    section(
      'exams',
      'Source beside result',
      run.exams.slice(0, most).map((exam) => examPart(exam, options)),
      run.exams.length > most && element('p', {}, `${run.exams.length - most} more are not shown.`),
    ),
    section('issues', 'About the mapping', list(issues.map((one) => words(issueText(one))))),
  );
  const title = 'Dry run of a conversion';
  return { html: securePage({ title, style: conversionStyle, body }), run, issues };
}

function summary({ exams, ledger }: DryRun): Content {
  const aside = exams.filter(({ exam }) => exam === undefined).length;
  const { fields, coded, verbatim, blank, layout, administrative, quarantined } = ledger;
  return joined(
    element(
      'p',
      {},
      `${exams.length} exams: ${exams.length - aside} would be made, ${aside} set aside.`,
    ),
    element(
      'p',
      {},
      `${fields} fields: ${coded} coded, ${verbatim} kept as text, ${blank} blank, ${layout} layout, ${administrative} administrative, ${quarantined} set aside.`,
    ),
  );
}

function causes({ causes }: DryRun): Content {
  return table({
    caption: 'Causes',
    head: ['Cause', 'Exams', 'About', 'Expected', 'What can be done'],
    rows: causes.map(({ code, message, about, expected, count, cure }) => [
      [message, ` [${code}]`],
      String(count),
      words(about),
      words(expected ?? ''),
      cure,
    ]),
  });
}

function coverage({ coverage }: DryRun): Content {
  return table({
    caption: 'Fields',
    head: ['Field', 'Coded', 'As text', 'Blank', 'Layout', 'Administrative', 'Set aside'],
    rows: coverage.map((one) => [
      words(one.name),
      ...[one.coded, one.verbatim, one.blank, one.layout, one.administrative, one.quarantined].map(
        String,
      ),
    ]),
  });
}

/** Texts that are listed; the rest is counted. */
const MOST_TEXTS = 300;

function leftovers({ leftovers }: DryRun): Content {
  const rest = leftovers.slice(MOST_TEXTS).reduce((sum, { count }) => sum + count, 0);
  return joined(
    table({
      caption: 'Texts',
      head: ['Field', 'Text', 'Times'],
      rows: leftovers
        .slice(0, MOST_TEXTS)
        .map(({ name, text, count }) => [words(name), verbatim(text), String(count)]),
    }),
    rest > 0 && element('p', {}, `${rest} more texts are not listed.`),
  );
}

function verbatim(text: string): Content {
  return element('span', { class: 'verbatim' }, words(text));
}

type Telling = Pick<DryRunPageOptions, 'catalogue'>;

function examPart(tried: TriedExam, options: Telling): Content {
  const { at, fields, exam, issues } = tried;
  const name = exam === undefined ? 'set aside' : exam.id;
  const told = new Map(
    sayings(tried, exam?.statements ?? [], options).map(([key, saying]) => [key, saying]),
  );
  const errors = issues.filter(({ severity }) => severity !== 'information');
  return joined(
    element('h3', {}, `${positionText(at)}: `, words(name)),
    table({
      caption: `Exam at ${positionText(at)}`,
      head: ['Field', 'Source', 'Fate', 'Result'],
      rows: fields
        .filter(({ fate }) => fate !== 'blank' && fate !== 'layout')
        .map(({ name: field, text, fate, statement }) => [
          words(field),
          verbatim(text),
          fate,
          statement === undefined
            ? fate === 'coded' && 'in the head of the exam'
            : (told.get(statement) ?? ''),
        ]),
    }),
    list(errors.map((one) => words(issueText(one)))),
  );
}

/** Statements in the words of the report, by key. */
function sayings(
  { exam }: TriedExam,
  statements: readonly Statement[],
  { catalogue }: Telling,
): readonly (readonly [key: string, saying: Content])[] {
  if (exam === undefined) return [];
  const { page } = createPage(exam, catalogue === undefined ? {} : { checks: { catalogue } });
  return statements.map((one) => [one.key, lineText(tell(one, page), page)]);
}

function changes(differences: Differences | undefined, options: DryRunPageOptions): Content {
  if (differences === undefined) return undefined;
  const { exams, fates, cutOtherwise } = differences;
  if (cutOtherwise) {
    return element('p', {}, 'The two mappings cut the input into different exams.');
  }
  if (exams.length + fates.length === 0) return element('p', {}, 'Nothing.');
  return joined(
    element('p', {}, `${exams.length} exams differ.`),
    table({
      caption: 'Fields with another fate',
      head: ['Field', 'Before', 'Now', 'Times'],
      rows: fates.map(({ name, from, to, count }) => [words(name), from, to, String(count)]),
    }),
    table({
      caption: 'Exams that differ',
      head: ['Exam', 'Before', 'Now', 'Other parts'],
      rows: exams
        .slice(0, MOST_TEXTS)
        .map(({ before, after, gone, fresh, parts }) => [
          positionText(after.at),
          list(sayings(before, gone, options).map(([, saying]) => saying)),
          list(sayings(after, fresh, options).map(([, saying]) => saying)),
          parts.join(', '),
        ]),
    }),
  );
}
