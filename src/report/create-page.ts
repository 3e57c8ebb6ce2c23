import { checkExam } from '../checks/check-exam.ts';
import type { Exam } from '../model/exam.ts';
import { builtInCatalogue } from '../terminology/catalogue.ts';
import { english, inLanguage } from '../terminology/languages/language.ts';
import { type AbnormalPart, abnormalParts, signNumbers } from './abnormal.ts';
import type { Page } from './page.ts';
import type { ReportOptions } from './report-options.ts';
import { createTeller } from './teller.ts';
import { englishWords } from './words/english.ts';

/** What pages and letters are made from: the exam with its checks, its words, and what is abnormal. */
export function createPage(
  exam: Exam,
  options: ReportOptions,
): { readonly page: Page; readonly parts: readonly AbnormalPart[] } {
  const language = options.language ?? english;
  const labels = options.words ?? englishWords;
  const catalogue = inLanguage(options.checks?.catalogue ?? builtInCatalogue, language);
  const parts = abnormalParts(exam, catalogue);
  const page: Page = {
    exam,
    prior: options.checks?.prior,
    versionBefore: options.versionBefore,
    earlier: options.earlier ?? [],
    samePatient: options.checks?.samePatient === 'assumed',
    checks: checkExam(exam, { ...options.checks, catalogue, words: labels.checks }),
    catalogue,
    labels,
    issueLanguage: options.issues,
    teller: createTeller(catalogue, language, labels),
    numbers: signNumbers(parts),
  };
  return { page, parts };
}
