export type { Mapping } from '../mapping.ts';
export type { QuarantineEntry } from '../quarantine.ts';
export { type BulkResult, convertFiles, hasFailed } from './convert-files.ts';
export { convertLines, type LineResult } from './convert-lines.ts';
export type { BulkIo, BulkOptions, ConvertSettings, OutputKind } from './options.ts';
export { suggestFromFile } from './suggest-from-file.ts';
export { type Summary, summaryText } from './summary.ts';
