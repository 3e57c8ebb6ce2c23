export type { ConvertedExam, ConvertResult } from '../convert-text.ts';
export type { Mapping, PresetMapping, WrittenMapping } from '../mapping.ts';
export type { QuarantineEntry } from '../quarantine.ts';
export { fromCsv } from './from-csv.ts';
