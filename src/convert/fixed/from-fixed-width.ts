import { headingIssues } from '../csv/from-csv.ts';
import { convertAs } from '../exams/convert-as.ts';
import type { ConvertResult } from '../exams/convert-text.ts';
import type { WrittenMapping } from '../mapping/mapping.ts';
import type { MappingOptions } from '../prepare/prepare-mapping.ts';
import { fixedReader } from './reader.ts';

/**
 * Converts lines in which each column has its place to exams, as a mapping says. Data never makes it
 * throw.
 *
 * @param text The export, decoded: bytes of older character sets are decoded before.
 * @param mapping Where the columns are, and what they and their words mean.
 * @param options The catalogue whose codes the mapping names.
 * @returns Every exam, converted or in quarantine with the reason, and what became of each field. A
 *   mapping that is wrong gives issues and no exam.
 * @example
 * const { exams, quarantine, ledger } = fromFixedWidth(text, mapping);
 * console.log(exams.length, quarantine.length, ledger.coded, ledger.fields);
 */
export function fromFixedWidth(
  text: string,
  mapping: WrittenMapping,
  options?: MappingOptions,
): ConvertResult {
  return convertAs(
    { syntax: 'fixed', readerOf: fixedReader, issuesOf: headingIssues },
    text,
    mapping,
    options,
  );
}
