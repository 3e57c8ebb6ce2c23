export type { ConvertedExam, ConvertResult } from '../exams/convert-text.ts';
export type { QuarantineEntry } from '../exams/quarantine.ts';
export type { Mapping } from '../mapping/mapping.ts';
export { fromJsonExport } from './from-json-export.ts';
