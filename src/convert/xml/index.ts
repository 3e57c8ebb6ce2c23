export type { ConvertedExam, ConvertResult } from '../convert-text.ts';
export type { Mapping } from '../mapping.ts';
export type { QuarantineEntry } from '../quarantine.ts';
export { fromXml } from './from-xml.ts';
export { type XmlLimits, xmlLimits } from './limits.ts';
export { xmlReader } from './reader.ts';
