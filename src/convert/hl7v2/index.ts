export type { ConvertedExam, ConvertResult } from '../exams/convert-text.ts';
export type { QuarantineEntry } from '../exams/quarantine.ts';
export type { Mapping, PresetMapping, WrittenMapping } from '../mapping/mapping.ts';
export { fromHl7v2 } from './from-hl7v2.ts';
export {
  documentStatusWords,
  reportStatusWords,
  resultStatusWords,
  siteSideWords,
} from './tables.ts';
