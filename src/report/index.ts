export type { ReportWords } from './report-words.ts';
export { type ReportOptions, toHtml } from './to-html.ts';
export { englishWords } from './words/english.ts';
export { germanWords } from './words/german.ts';
