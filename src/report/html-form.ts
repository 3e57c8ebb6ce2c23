import type { FormMaker } from '../export/resources/presented-form.ts';
import { english } from '../terminology/languages/language.ts';
import type { ReportOptions } from './report-options.ts';
import { toHtml } from './to-html.ts';
import { englishWords } from './words/english.ts';

/**
 * Makes the page a form of the report in an export: the option `presentedForms`.
 *
 * @param options As for `toHtml`.
 * @returns The maker to give to the export.
 * @example
 * const forms = [htmlForm()];
 */
export function htmlForm(options: ReportOptions = {}): FormMaker {
  const { words = englishWords, language = english } = options;
  return (exam) => [
    {
      contentType: 'text/html',
      content: toHtml(exam, options),
      title: words.title,
      language: language.tag ?? 'en',
    },
  ];
}
