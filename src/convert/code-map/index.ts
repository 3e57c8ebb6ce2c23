export { type CsvCodeMapOptions, codesFromCsv } from './from-csv.ts';
export {
  type CsvWordOptions,
  type WordTables,
  withWords,
  wordsFromCsv,
} from './words-from-csv.ts';
