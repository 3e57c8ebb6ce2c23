export type { ConvertedExam, ConvertResult } from '../exams/convert-text.ts';
export type { QuarantineEntry } from '../exams/quarantine.ts';
export type { Mapping, PresetMapping, WrittenMapping } from '../mapping/mapping.ts';
export { actStatusWords } from './complete.ts';
export { fromCda } from './from-cda.ts';
