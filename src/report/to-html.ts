import { checkExam } from '../checks/check-exam.ts';
import type { CheckOptions } from '../checks/settings/check-settings.ts';
import { IssueError } from '../issue.ts';
import { cutIssues } from '../issue-list.ts';
import type { Exam } from '../model/exam.ts';
import { structureIssues } from '../model/schema-issues.ts';
import { builtInCatalogue } from '../terminology/catalogue.ts';
import { english, inLanguage, type Language } from '../terminology/language.ts';
import { type AbnormalPart, abnormalParts, signNumbers } from './abnormal.ts';
import { drawingPart } from './drawing/drawing.ts';
import { element } from './html.ts';
import type { Page } from './page.ts';
import { abnormalPart } from './parts/abnormal.ts';
import { changePart } from './parts/change.ts';
import { circumstancePart } from './parts/circumstances.ts';
import { conclusionPart, planPart, promptPart, urgentPart } from './parts/conclusion.ts';
import { gapPart } from './parts/gaps.ts';
import { cautionPart, headPart, recordPart, stripPart } from './parts/head.ts';
import { statementParts } from './parts/statements.ts';
import { versionPart } from './parts/version.ts';
import type { ReportWords } from './report-words.ts';
import { pageStyle } from './style.ts';
import { createTeller } from './teller.ts';
import { englishWords } from './words/english.ts';

export interface ReportOptions {
  /** Exam, rule sets, thresholds and prior exam to check with; without rule sets no prompt is shown. */
  readonly checks?: CheckOptions;
  /** Exams before the prior one, in any order, whose figures are drawn beside today's. */
  readonly earlier?: readonly Exam[];
  /** Language of the displays of codes. Default English. */
  readonly language?: Language;
  /** Words of the page itself, those of `language`. Default English. */
  readonly words?: ReportWords;
  /** The version before the last step, so that the page shows what stood there beside what now does. */
  readonly versionBefore?: Exam;
}

/**
 * A page for people, complete in itself: no script, nothing fetched, every text of the exam escaped.
 * The first page answers who, when, by whom, why, how much it worries, what is to be done, what is
 * abnormal and what was not examined; all else follows. Each statement is told once, in a line that
 * holds when it is read alone. The exam is taken to be well formed (`parseExam`).
 * @throws IssueError with all that was found, where the exam has not the structure of one
 */
export function toHtml(exam: Exam, options: ReportOptions = {}): string {
  const misshapen = structureIssues(exam);
  if (misshapen.length > 0) throw new IssueError('write a page', cutIssues(misshapen));
  const language = options.language ?? english;
  const labels = options.words ?? englishWords;
  const catalogue = inLanguage(options.checks?.catalogue ?? builtInCatalogue, language);
  const parts = abnormalParts(exam, catalogue);
  const page: Page = {
    exam,
    prior: options.checks?.prior,
    versionBefore: options.versionBefore,
    earlier: options.earlier ?? [],
    checks: checkExam(exam, { ...options.checks, catalogue }),
    catalogue,
    labels,
    teller: createTeller(catalogue, language, labels),
    numbers: signNumbers(parts),
  };
  const html = element(
    'html',
    { lang: language.tag },
    element(
      'head',
      {},
      element('meta', { charset: 'utf-8' }),
      element('meta', {
        'http-equiv': 'Content-Security-Policy',
        content: "default-src 'none'; style-src 'unsafe-inline'",
      }),
      element('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
      element('title', {}, labels.title),
      // Ours but for two words, which are written so that HTML and CSS read nothing in them.
      { markup: `<style>${pageStyle(labels.pageNumber)}</style>` },
    ),
    element(
      'body',
      { class: `record-${exam.status}` },
      stripPart(page),
      headPart(page),
      mainPart(page, parts),
      cautionPart(page),
    ),
  );
  return `<!DOCTYPE html>\n${html.markup}\n`;
}

function mainPart(page: Page, abnormal: readonly AbnormalPart[]): ReturnType<typeof element> {
  const { notExamined, signs, tables, words } = statementParts(page);
  return element(
    'main',
    {},
    conclusionPart(page),
    versionPart(page),
    planPart(page),
    urgentPart(page),
    abnormalPart(page, abnormal),
    notExamined,
    drawingPart(page),
    changePart(page),
    element(
      'div',
      { class: 'details' },
      signs,
      tables,
      words,
      promptPart(page),
      gapPart(page),
      circumstancePart(page),
      recordPart(page),
    ),
  );
}
