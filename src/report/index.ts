export type { ReportOptions } from './report-options.ts';
export type { ReportWords } from './report-words.ts';
export { htmlForm, type ReportOptions, toHtml } from './to-html.ts';
export { englishWords } from './words/english.ts';
export { germanWords } from './words/german.ts';
