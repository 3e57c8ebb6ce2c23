export type { ConvertedExam, ConvertResult } from '../exams/convert-text.ts';
export type { QuarantineEntry } from '../exams/quarantine.ts';
export type { Mapping } from '../mapping/mapping.ts';
export { fromXml } from './from-xml.ts';
export { type XmlLimits, xmlLimits } from './limits.ts';
export { xmlReader } from './reader.ts';
