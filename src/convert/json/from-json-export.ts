import { convertAs } from '../exams/convert-as.ts';
import type { ConvertResult } from '../exams/convert-text.ts';
import type { WrittenMapping } from '../mapping/mapping.ts';
import type { MappingOptions } from '../prepare/prepare-mapping.ts';
import { jsonReader } from './reader.ts';

/**
 * Converts JSON of any vocabulary to exams: each object at the path that the mapping states, or on each
 * line, is one exam. Numbers are read as they are written. Data never makes it throw.
 *
 * @param text The export, decoded.
 * @param mapping What its fields and words mean.
 * @param options The catalogue whose codes the mapping names.
 * @returns Every exam, converted or in quarantine with the reason, and what became of each field. A
 *   mapping that is wrong gives issues and no exam.
 * @example
 * const { exams, quarantine, ledger } = fromJsonExport(text, mapping);
 * console.log(exams.length, quarantine.length, ledger.coded, ledger.fields);
 * @see https://www.rfc-editor.org/rfc/rfc8259
 */
export function fromJsonExport(
  text: string,
  mapping: WrittenMapping,
  options?: MappingOptions,
): ConvertResult {
  return convertAs({ syntax: 'json', readerOf: jsonReader }, text, mapping, options);
}
