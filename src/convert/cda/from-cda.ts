import { convertAs } from '../exams/convert-as.ts';
import type { ConvertResult } from '../exams/convert-text.ts';
import type { WrittenMapping } from '../mapping/mapping.ts';
import type { MappingOptions } from '../prepare/prepare-mapping.ts';
import { cdaReaderOf } from './reader.ts';

/**
 * Converts CDA R2 documents to exams: each ClinicalDocument with a physical exam section is one
 * exam. Data never makes it throw.
 *
 * @param text The export, decoded: bytes of older character sets are decoded before.
 * @param mapping What its fields and words mean, whole or as a preset with additions.
 * @param options The catalogue whose codes the mapping names.
 * @returns Every exam, converted or in quarantine with the reason, and what became of each field. A
 *   mapping that is wrong gives issues and no exam.
 * @example
 * const { exams, quarantine, ledger } = fromCda(text, mapping);
 * console.log(exams.length, quarantine.length, ledger.coded, ledger.fields);
 * @see https://www.hl7.org/implement/standards/product_brief.cfm?product_id=7
 */
export function fromCda(
  text: string,
  mapping: WrittenMapping,
  options?: MappingOptions,
): ConvertResult {
  return convertAs({ syntax: 'cda', readerOf: cdaReaderOf }, text, mapping, options);
}
