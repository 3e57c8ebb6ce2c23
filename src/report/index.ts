export { englishWords, type ReportWords } from './report-words.ts';
export { type ReportOptions, toHtml } from './to-html.ts';
