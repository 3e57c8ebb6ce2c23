export type { ConvertedExam, ConvertResult } from '../convert-text.ts';
export type { Mapping, PresetMapping, WrittenMapping } from '../mapping.ts';
export type { QuarantineEntry } from '../quarantine.ts';
export { actStatusWords } from './complete.ts';
export { fromCda } from './from-cda.ts';
export { cdaReader, cdaReaderOf } from './reader.ts';
