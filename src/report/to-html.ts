import { checkExam } from '../checks/check-exam.ts';
import type { CheckOptions } from '../checks/settings/check-settings.ts';
import { IssueError } from '../issue.ts';
import { cutIssues } from '../issue-list.ts';
import type { Exam } from '../model/exam.ts';
import { structureIssues } from '../model/schema-issues.ts';
import { builtInCatalogue } from '../terminology/catalogue.ts';
import { english, inLanguage, type Language } from '../terminology/language.ts';
import { element, joined } from './html.ts';
import { mapPart } from './map/region-map.ts';
import type { Page } from './page.ts';
import { changePart } from './parts/change.ts';
import { circumstancePart } from './parts/circumstances.ts';
import { conclusionPart, promptPart } from './parts/conclusion.ts';
import { gapPart } from './parts/gaps.ts';
import { cautionPart, headPart, recordPart } from './parts/head.ts';
import { statementParts } from './parts/statements.ts';
import { versionPart } from './parts/version.ts';
import type { ReportWords } from './report-words.ts';
import { style } from './style.ts';
import { createTeller } from './teller.ts';
import { englishWords } from './words/english.ts';

export interface ReportOptions {
  /** Exam, rule sets, thresholds and prior exam to check with; without rule sets no prompt is shown. */
  readonly checks?: CheckOptions;
  /** Language of the displays of codes. Default English. */
  readonly language?: Language;
  /** Words of the page itself, those of `language`. Default English. */
  readonly words?: ReportWords;
  /** The version before the last step, so that the page shows what stood there beside what now does. */
  readonly versionBefore?: Exam;
}

/**
 * A page for people, complete in itself: no script, nothing fetched, every text of the exam escaped.
 * Conclusion first, then what is present, what was looked for and not found, what was not examined
 * and why, and what nothing was said about. The exam is taken to be well formed (`parseExam`).
 * @throws IssueError with all that was found, where the exam has not the structure of one
 */
export function toHtml(exam: Exam, options: ReportOptions = {}): string {
  const misshapen = structureIssues(exam);
  if (misshapen.length > 0) throw new IssueError('write a page', cutIssues(misshapen));
  const language = options.language ?? english;
  const labels = options.words ?? englishWords;
  const catalogue = inLanguage(options.checks?.catalogue ?? builtInCatalogue, language);
  const page: Page = {
    exam,
    prior: options.checks?.prior,
    versionBefore: options.versionBefore,
    checks: checkExam(exam, { ...options.checks, catalogue }),
    catalogue,
    labels,
    teller: createTeller(catalogue, language),
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
      // The style is a constant of this library and holds no character that HTML would read.
      { markup: `<style>${style}</style>` },
    ),
    element('body', {}, headPart(page), mainPart(page), cautionPart(page)),
  );
  return `<!DOCTYPE html>\n${html.markup}\n`;
}

function mainPart(page: Page): ReturnType<typeof element> {
  const { regions, takenOver, others } = statementParts(page);
  return element(
    'main',
    {},
    joined(
      conclusionPart(page),
      versionPart(page),
      promptPart(page),
      changePart(page),
      mapPart(page),
      regions,
      takenOver,
      gapPart(page),
      others,
      circumstancePart(page),
      recordPart(page),
    ),
  );
}
