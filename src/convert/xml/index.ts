export type { ConvertedExam, ConvertResult } from '../exams/convert-text.ts';
export type { QuarantineEntry } from '../exams/quarantine.ts';
export type { Mapping } from '../mapping/mapping.ts';
export { fromXmlExport } from './from-xml-export.ts';
export { type XmlLimits, xmlLimits } from './limits.ts';
