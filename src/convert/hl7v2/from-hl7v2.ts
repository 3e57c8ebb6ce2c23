import { convertAs } from '../exams/convert-as.ts';
import type { ConvertResult } from '../exams/convert-text.ts';
import type { WrittenMapping } from '../mapping/mapping.ts';
import type { MappingOptions } from '../prepare/prepare-mapping.ts';
import { hl7v2ReaderOf } from './reader.ts';

/**
 * Converts HL7 v2 messages to exams: each ORU^R01 or MDM^T02 message is one exam, or each order in
 * it where the mapping says so. Data never makes it throw.
 *
 * @param text The export, decoded: bytes of older character sets are decoded before.
 * @param mapping What its fields and words mean, whole or as a preset with additions.
 * @param options The catalogue whose codes the mapping names.
 * @returns Every exam, converted or in quarantine with the reason, and what became of each field. A
 *   mapping that is wrong gives issues and no exam.
 * @example
 * const { exams, quarantine, ledger } = fromHl7v2(text, mapping);
 * console.log(exams.length, quarantine.length, ledger.coded, ledger.fields);
 * @see https://www.hl7.org/implement/standards/product_brief.cfm?product_id=185
 */
export function fromHl7v2(
  text: string,
  mapping: WrittenMapping,
  options?: MappingOptions,
): ConvertResult {
  return convertAs({ syntax: 'hl7v2', readerOf: hl7v2ReaderOf }, text, mapping, options);
}
