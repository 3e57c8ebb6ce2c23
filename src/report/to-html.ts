import { within } from '../issues/budget.ts';
import { IssueError } from '../issues/issue.ts';
import { cutIssues, endedIssue } from '../issues/issue-list.ts';
import type { Exam } from '../model/exam.ts';
import { structureIssues } from '../model/schema-issues.ts';
import { languageIssues } from '../terminology/languages/language-issues.ts';
import type { AbnormalPart } from './abnormal.ts';
import { createPage } from './create-page.ts';
import { drawingPart } from './drawing/drawing.ts';
import { element, pageHead } from './html.ts';
import type { Page } from './page.ts';
import { abnormalPart } from './parts/abnormal.ts';
import { changePart } from './parts/change.ts';
import { circumstancePart } from './parts/circumstances.ts';
import { conclusionPart, planPart, promptPart, urgentPart } from './parts/conclusion.ts';
import { coursePart } from './parts/course.ts';
import { disagreementPart } from './parts/disagreement.ts';
import { gapPart } from './parts/gaps.ts';
import { cautionPart, headPart, recordPart, stripPart } from './parts/head.ts';
import { statementParts } from './parts/statements.ts';
import { versionPart } from './parts/version.ts';
import { warningPart } from './parts/warnings.ts';
import type { ReportOptions } from './report-options.ts';
import { pageStyle } from './style.ts';

/**
 * A page for people, complete in itself: no script, nothing fetched, every text of the exam
 * escaped. The first page answers who, when, by whom, why, how much it worries, what is to be done,
 * what is abnormal and what was not examined; all else follows. Each statement is told once, in a
 * line that holds when it is read alone. The exam is taken to be well formed (`parseExam`).
 *
 * @param exam An exam that `parseExam` accepts.
 * @param options Language, settings of the checks, and the version before; see
 *   {@link ReportOptions}.
 * @returns The page as HTML.
 * @throws {IssueError} Where `exam` does not have the structure of an exam, or the language that of
 *   one; it holds all that was found.
 * @example
 * const page = toHtml(exam, { checks: { prior: before } });
 */
export function toHtml(exam: Exam, options: ReportOptions = {}): string {
  const { budget } = options.checks ?? {};
  return within(
    'exam',
    budget,
    () => page(exam, options),
    (why) => {
      throw new IssueError('write a page', [endedIssue(why)]);
    },
  );
}

function page(exam: Exam, options: ReportOptions): string {
  const misshapen = structureIssues(exam);
  if (misshapen.length > 0) throw new IssueError('write a page', cutIssues(misshapen));
  const misfits =
    options.language === undefined ? [] : languageIssues(options.language, ['language']);
  if (misfits.length > 0) throw new IssueError('write a page', misfits);
  const { page, parts } = createPage(exam, options);
  const { labels } = page;
  const html = element(
    'html',
    { lang: options.language?.tag ?? 'en' },
    pageHead(labels.title, pageStyle(labels.pageNumber)),
    element(
      'body',
      { class: `record-${exam.status}` },
      stripPart(page),
      headPart(page),
      mainPart(page, parts, options.appendix === true),
      cautionPart(page),
    ),
  );
  return `<!DOCTYPE html>\n${html.markup}\n`;
}

function mainPart(
  page: Page,
  abnormal: readonly AbnormalPart[],
  asAppendix: boolean,
): ReturnType<typeof element> {
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
    disagreementPart(page),
    drawingPart(page),
    changePart(page),
    coursePart(page),
    element(
      'div',
      { class: asAppendix ? 'details appendix' : 'details' },
      asAppendix && element('h2', { class: 'whole' }, page.labels.appendix),
      signs,
      tables,
      words,
      promptPart(page),
      gapPart(page),
      circumstancePart(page),
      warningPart(page),
      recordPart(page),
    ),
  );
}
