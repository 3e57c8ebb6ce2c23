export type { ConvertedExam, ConvertResult } from '../exams/convert-text.ts';
export type { QuarantineEntry } from '../exams/quarantine.ts';
export type { Mapping, PresetMapping, WrittenMapping } from '../mapping/mapping.ts';
export { fromFixedWidth } from './from-fixed-width.ts';
