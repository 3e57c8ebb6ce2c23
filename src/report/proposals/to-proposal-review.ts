import type { HeadingPlace } from '../../convert/mapping/mapping.ts';
import type { Proposal } from '../../convert/proposals/proposal.ts';
import { plainDataIssues } from '../../data/plain-data.ts';
import { type BudgetOption, spend, within } from '../../issues/budget.ts';
import type { Issue } from '../../issues/issue.ts';
import { cutIssues, endedIssue } from '../../issues/issue-list.ts';
import type { Exam } from '../../model/exam.ts';
import { builtInCatalogue, type Catalogue } from '../../terminology/catalogue.ts';
import { english, inLanguage, type Language } from '../../terminology/languages/language.ts';
import { type Content, element, joined } from '../html.ts';
import { securePage } from '../review/secure-page.ts';
import { conversionStyle } from '../review/style.ts';
import { findingChoices, saidOf } from './choices.ts';
import { type BoxWriting, proposalBox } from './proposal-box.ts';
import type { ProposalReviewWords } from './review-words.ts';
import { type ExamRows, type Rows, rowsOf } from './rows.ts';
import { proposalScript } from './script.ts';
import { englishProposalReviewWords } from './words/english.ts';

export interface ProposalReviewOptions {
  /** Proposals that were confirmed or rejected before: they are not asked again, and the saved file keeps them. */
  readonly decided?: readonly Proposal[];
  /** Proposals after which no further exam is begun on the page; the others are counted. Default 1000. */
  readonly most?: number;
  /** What headings mean besides those that are known, as in the mapping. */
  readonly headings?: { readonly [heading: string]: HeadingPlace };
  /** Language of the displays of codes. Default English. */
  readonly language?: Language;
  /** Words of the page itself, those of `language`. Default English. */
  readonly words?: ProposalReviewWords;
  /** Default: the built-in catalogue. */
  readonly catalogue?: Catalogue;
  /** What the call may take; default `budgets.legacy`. */
  readonly budget?: BudgetOption;
}

export interface ProposalReview {
  /** The page, complete in itself. It holds patient data. */
  readonly html: string;
  /** Proposals on it. */
  readonly asked: number;
  /** Proposals of later exams, for a page that is made with what was decided on this one. */
  readonly left: number;
  /** What of the exams or decisions could not be read. */
  readonly issues: readonly Issue[];
}

/**
 * A page on which a person confirms, changes or rejects what the notes of exams could say as findings,
 * and saves the decisions as the lines that `parseProposals` and `confirmFindings` take. It needs no
 * server, sends nothing, and works by keyboard. Nothing is chosen beforehand, and who confirms must be
 * named; what is not decided is not in the file.
 *
 * @param exams Exams with notes, such as those of a conversion.
 * @param options What was decided before, headings, and the language; see {@link ProposalReviewOptions}.
 * @returns The page as HTML, with how many proposals it asks about.
 * @example
 * const { html, left } = toProposalReview([exam]);
 */
export function toProposalReview(
  exams: Iterable<Exam>,
  options: ProposalReviewOptions = {},
): ProposalReview {
  const none: Rows = { exams: [], asked: 0, left: 0, issues: [] };
  return within(
    'legacy',
    options.budget,
    () => pageOf(exams, options),
    (why) => written({ ...none, issues: [endedIssue(why)] }, [], options),
  );
}

function pageOf(exams: Iterable<Exam>, options: ProposalReviewOptions): ProposalReview {
  const { decided = [], most = 1000, catalogue = builtInCatalogue, headings } = options;
  const unfit = cutIssues(plainDataIssues(decided));
  const sound = unfit.length > 0 ? [] : decided.filter(isDecided);
  const rows = rowsOf(exams, sound, { catalogue, most, ...(headings && { headings }) });
  for (const { notes } of rows.exams) for (const { text } of notes) spend(text.length);
  return written({ ...rows, issues: [...unfit, ...rows.issues] }, sound, options);
}

function isDecided(one: Proposal): boolean {
  return one?.confirmed !== undefined || one?.rejected !== undefined;
}

const style = `${conversionStyle}
html { scroll-padding-block: 1rem 13rem; }
mark { background: var(--paper); color: inherit; border-block-end: 3px solid var(--ink); }
pre { white-space: pre-wrap; font: inherit; }
`;

function written(
  { exams, asked, left, issues }: Rows,
  decided: readonly Proposal[],
  options: ProposalReviewOptions,
): ProposalReview {
  const { language = english, words = englishProposalReviewWords } = options;
  const catalogue = inLanguage(options.catalogue ?? builtInCatalogue, language);
  const writing: BoxWriting = { catalogue, language, words };
  const proposals = exams.flatMap(({ notes }) => notes.flatMap((note) => note.proposals));
  const body = element(
    'main',
    {},
    element('h1', {}, words.title),
    intro(words, decided.length, left),
    asked === 0 ? element('p', {}, words.nothing) : examParts(exams, writing),
    asked > 0 && bar(words),
  );
  const data = {
    rows: proposals.map((proposal) => ({ proposal })),
    choices: findingChoices(catalogue, language),
    said: Object.fromEntries(exams.map(({ exam }) => [exam.id, saidOf(exam)])),
    decided,
    words: { told: words.told, presence: words.presence, noSide: words.noSide },
  };
  const html = securePage({
    title: words.title,
    language: language.tag,
    style,
    body,
    ...(asked > 0 && { script: proposalScript, data }),
  });
  return { html, asked, left, issues };
}

function intro(words: ProposalReviewWords, earlier: number, left: number): Content {
  const counted = (text: string, count: number): Content =>
    count > 0 && element('p', { class: 'asked' }, text.replace('{count}', String(count)));
  return joined(
    element('p', {}, words.intro),
    element('p', { class: 'soft' }, words.patientData),
    counted(words.earlier, earlier),
    counted(words.left, left),
    element('noscript', {}, element('p', { class: 'asked' }, words.needsScript)),
  );
}

function examParts(exams: readonly ExamRows[], writing: BoxWriting): Content {
  let at = 0;
  return exams.map(({ exam, notes }) =>
    element(
      'section',
      {},
      element('h2', {}, `${writing.words.exam} ${exam.id}`),
      notes.map(({ text, proposals }) => [
        proposals.map((proposal) => {
          const box = proposalBox(proposal, at, text, writing);
          at += 1;
          return box;
        }),
        element(
          'details',
          {},
          element('summary', {}, writing.words.wholeNote),
          element('pre', { dir: 'auto' }, text),
        ),
      ]),
    ),
  );
}

function bar(words: ProposalReviewWords): Content {
  return element(
    'div',
    { class: 'bar' },
    element('label', { for: 'by' }, words.name),
    element('input', { id: 'by', type: 'text', maxlength: 200, required: '', autocomplete: 'off' }),
    element('button', { type: 'button', id: 'next' }, words.nextOpen),
    element('button', { type: 'button', id: 'save' }, words.save),
    element('span', { id: 'count', role: 'status' }),
    element('span', { id: 'told', role: 'alert' }),
  );
}
