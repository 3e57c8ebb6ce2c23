export { germanChecks } from '../checks/words/german.ts';
export { htmlForm } from './html-form.ts';
export type { ReportOptions } from './report-options.ts';
export { toHtml } from './to-html.ts';
export { englishWords } from './words/english.ts';
export { germanWords } from './words/german.ts';
export type { ReportWords } from './words/report-words.ts';
