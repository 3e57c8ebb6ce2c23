import { convertAs } from '../exams/convert-as.ts';
import type { ConvertResult } from '../exams/convert-text.ts';
import type { WrittenMapping } from '../mapping/mapping.ts';
import type { MappingOptions } from '../prepare/prepare-mapping.ts';
import { xmlReader } from './reader.ts';

/**
 * Converts XML of any vocabulary to exams: each element at the path that the mapping states is one
 * exam. Data never makes it throw.
 *
 * @param text The export, decoded: bytes of older character sets are decoded before.
 * @param mapping What its fields and words mean, whole or as a preset with additions.
 * @param options The catalogue whose codes the mapping names.
 * @returns Every exam, converted or in quarantine with the reason, and what became of each field. A
 *   mapping that is wrong gives issues and no exam.
 * @example
 * const { exams, quarantine, ledger } = fromXmlExport(text, mapping);
 * console.log(exams.length, quarantine.length, ledger.coded, ledger.fields);
 * @see https://www.w3.org/TR/xml-names/
 */
export function fromXmlExport(
  text: string,
  mapping: WrittenMapping,
  options?: MappingOptions,
): ConvertResult {
  return convertAs({ syntax: 'xml', readerOf: xmlReader }, text, mapping, options);
}
