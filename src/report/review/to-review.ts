import type { Source } from '../../convert/mapping/source.ts';
import { scanExport } from '../../convert/scan/scan.ts';
import { meaningText, questionText, reasonText } from '../../convert/suggest/proposal-text.ts';
import { type Suggestion, suggestMapping } from '../../convert/suggest/suggest-mapping.ts';
import type { BudgetOption } from '../../issues/budget.ts';
import { hasErrors, type Issue, issueText } from '../../issues/issue.ts';
import { builtInCatalogue, type Catalogue } from '../../terminology/catalogue.ts';
import { type Content, element, joined, list, words } from '../html.ts';
import { allChoices, meaningLists } from './choices.ts';
import { type Row, rowsOf } from './rows.ts';
import { reviewScript } from './script.ts';
import { securePage } from './secure-page.ts';
import { conversionStyle } from './style.ts';

export interface ReviewOptions {
  /** How the export is read. Default: as its beginning shows. */
  readonly source?: Source;
  /** Show common values and answers of the export: they can be patient data. Default false. */
  readonly values?: boolean;
  /** Default: the built-in catalogue. */
  readonly catalogue?: Catalogue;
  /** What the call may take; default `budgets.legacy`. */
  readonly budget?: BudgetOption;
}

export interface Review {
  /** The page, complete in itself; it names what it could not read. */
  readonly html: string;
  /** Fields and items on it; 0 where nothing could be read. */
  readonly fields: number;
  /** What is open, and what could not be read. */
  readonly issues: readonly Issue[];
}

/**
 * A page on which a person confirms, changes or sets aside what is proposed for each field of an export,
 * and saves the mapping as a file. It needs no server, sends nothing, and works by keyboard. Nothing is in
 * the mapping that was not decided, and what a proposal asks must be answered before it can be taken.
 *
 * @param text The export or its beginning, decoded.
 * @param options How it is read, and whether values are shown.
 * @returns The page as HTML, with what is open as issues.
 * @example
 * const { html } = toReview(text, { values: true });
 */
export function toReview(text: string, options: ReviewOptions = {}): Review {
  const scan = scanExport(text, options);
  const source = scan.source;
  // The scan has spent the budget where there was none left; the suggestion has its own.
  const suggestion =
    scan.fields.length === 0
      ? { mapping: {}, issues: scan.issues, proposals: [] }
      : suggestMapping(text, { ...options, source });
  const catalogue = options.catalogue ?? builtInCatalogue;
  const meanings = meaningLists();
  const rows = rowsOf(scan, suggestion, catalogue, meanings, options.values ?? false);
  const choices = allChoices(catalogue, meanings);
  const regions = [...catalogue.regions.values()];
  const body = joined(
    element(
      'main',
      {},
      element('h1', {}, 'Review of a mapping'),
      intro(scan.exams, rows.length, options.values ?? false),
      rows.map((row, at) => rowBox(row, at)),
      openIssues(suggestion.issues, rows),
      datalist(
        'choices',
        choices.map(({ key, label }) => [key, label]),
      ),
      datalist(
        'regions',
        regions.map(({ code, display }) => [code, display]),
      ),
      element(
        'div',
        { class: 'bar' },
        element('button', { type: 'button', id: 'save' }, 'Save mapping'),
        element('span', { id: 'count', role: 'status' }),
        element('span', { id: 'told', role: 'alert' }),
      ),
    ),
  );
  const data = {
    rows: rows.map(({ proposal: { name, of }, choice, item, words: answers, forms }) => ({
      ...{ name, of, choice, item, words: answers, forms },
    })),
    choices: Object.fromEntries(choices.map(({ key, choice }) => [key, choice])),
    meanings: meanings.lists,
    regions: regions.map(({ code }) => code),
    ...partsOf(suggestion),
  };
  return {
    html: securePage({
      title: 'Review of a mapping',
      style: conversionStyle,
      body,
      script: reviewScript,
      data,
    }),
    fields: rows.length,
    issues: scan.fields.length === 0 ? scan.issues : suggestion.issues,
  };
}

function intro(exams: number, rows: number, values: boolean): Content {
  return joined(
    element(
      'p',
      {},
      `${exams} exams were looked at; ${rows} fields and items stand below. Confirm each, change it, or keep it as text. Nothing is in the mapping that is not decided here, and a proposal is no more than that: it is a person who knows the export that decides.`,
    ),
    element(
      'p',
      { class: 'soft' },
      values
        ? 'This page holds values of the export, which can be patient data: keep it where they may be.'
        : 'This page holds no values of the export. Answers that are not plain are therefore not listed; they are kept as text until the mapping says what they mean.',
    ),
    element('noscript', {}, element('p', { class: 'asked' }, 'Saving needs scripts.')),
  );
}

function rowBox(row: Row, at: number): Content {
  const { proposal, choice, hidden, filled, blank, examples } = row;
  const meaning = meaningText(proposal);
  const radio = (value: string, label: string, checked = false): Content =>
    element(
      'label',
      {},
      element('input', {
        ...{ type: 'radio', name: `how-${at}`, value },
        ...(checked && { checked: '' }),
      }),
      label,
    );
  return element(
    'fieldset',
    { id: `row-${at}` },
    element('legend', {}, proposal.of === 'item' ? 'Item ' : 'Field ', words(proposal.name)),
    element('p', {}, `${filled} filled, ${blank} blank`),
    examples.length > 0 &&
      element(
        'p',
        {},
        'Values: ',
        examples.map(({ text, count }, index) => [index > 0 && ', ', words(text), ` (${count})`]),
      ),
    element(
      'p',
      {},
      meaning === '' ? 'Nothing is proposed.' : ['Proposed: ', element('strong', {}, meaning)],
      meaning !== '' && ` (score ${proposal.score.toFixed(2)})`,
    ),
    list(proposal.reasons.map((reason) => words(`since ${reasonText(reason)}`))),
    list(
      proposal.questions.map((one) =>
        element('span', { class: 'asked' }, words(questionText(one))),
      ),
    ),
    proposal.offers.length > 0 && element('p', {}, `Near: ${proposal.offers.join(', ')}`),
    radio('later', 'Not decided', true),
    choice !== undefined && radio('take', 'As proposed'),
    proposal.role === undefined && radio('other', 'Something else'),
    proposal.role === undefined && radio('text', 'Keep as text'),
    proposal.of === 'field' && proposal.role === undefined && radio('layout', 'Order or type only'),
    control(at, 'code', 'What it is', element('input', { ...partOf(at, 'code'), list: 'choices' })),
    control(at, 'side', 'Side', element('select', partOf(at, 'side'))),
    control(at, 'unit', 'Unit', element('select', partOf(at, 'unit'))),
    control(at, 'region', 'Region', element('input', { ...partOf(at, 'region'), list: 'regions' })),
    control(at, 'form', 'Form of its dates', element('select', partOf(at, 'form'))),
    answerBox(row, at),
    hidden > 0 && element('p', {}, `${hidden} answers are not shown.`),
  );
}

function partOf(at: number, name: string): { readonly [attribute: string]: string } {
  return { id: `${name}-${at}`, 'data-part': name };
}

function control(at: number, name: string, label: string, input: Content): Content {
  return element(
    'div',
    { 'data-control': name, hidden: '' },
    element('label', { for: `${name}-${at}` }, label),
    input,
  );
}

function answerBox({ words: answers }: Row, at: number): Content {
  return element(
    'div',
    { 'data-part': 'words', hidden: '' },
    answers.length > 0 && element('p', {}, 'What its answers mean:'),
    answers.map(([word], index) =>
      element(
        'div',
        { 'data-control': 'word' },
        element('label', { for: `word-${at}-${index}` }, words(word)),
        element('select', { id: `word-${at}-${index}` }),
      ),
    ),
  );
}

/** What no field answers: protocol, zone, name space of numbers. Fields are asked about where they stand. */
function openIssues(issues: readonly Issue[], rows: readonly Row[]): Content {
  const names = new Set(rows.map(({ proposal }) => proposal.name));
  const general = issues.filter((one) => hasErrors([one]) && !names.has(String(one.path[0])));
  const texts = [...new Set(general.map((one) => issueText(one)))];
  if (texts.length === 0) return undefined;
  return element(
    'section',
    { 'aria-labelledby': 'open' },
    element('h2', { id: 'open' }, 'Still to be written into the saved file'),
    list(texts.map((text) => words(text))),
  );
}

function datalist(id: string, rows: readonly (readonly [value: string, label: string])[]): Content {
  return element(
    'datalist',
    { id },
    rows.map(([value, label]) => element('option', { value }, label)),
  );
}

/** What the script puts the mapping together from. */
function partsOf({ mapping, proposals }: Suggestion): object {
  const { fields: _fields, exam, items, ...rest } = mapping;
  const dates = datesIn(exam);
  const list = Array.isArray(items)
    ? (items as readonly { readonly [role: string]: unknown }[])
    : []; // made by the suggestion
  const gender = proposals.find(({ head }) => head === 'gender');
  return {
    mapping: {
      ...rest,
      ...(list.length > 0 && { items: list.map((one) => ({ ...one, map: {} })) }),
    },
    beside: list.map(({ side, unit }) => ({ side: side !== undefined, unit: unit !== undefined })),
    dates,
    genders: gender === undefined ? {} : gendersIn(exam),
  };
}

/** Date fields of the exam whose form the suggestion states, by name. */
function datesIn(exam: unknown): object {
  const found: { [name: string]: object } = {};
  const waiting: unknown[] = [exam];
  for (let one = waiting.pop(); one !== undefined; one = waiting.pop()) {
    if (typeof one !== 'object' || one === null) continue;
    if ('from' in one && typeof one.from === 'string' && 'formats' in one) found[one.from] = one;
    for (const part of Object.values(one)) waiting.push(part);
  }
  return found;
}

function gendersIn(exam: unknown): unknown {
  const subject =
    typeof exam === 'object' && exam !== null && 'subject' in exam ? exam.subject : {};
  const gender =
    typeof subject === 'object' && subject !== null && 'gender' in subject ? subject.gender : {};
  return typeof gender === 'object' && gender !== null && 'words' in gender ? gender.words : {};
}
