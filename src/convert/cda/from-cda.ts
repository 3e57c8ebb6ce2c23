import { type ConvertResult, convertText, convertWithin } from '../exams/convert-text.ts';
import { noFields } from '../exams/ledger.ts';
import { issue } from '../issue.ts';
import type { WrittenMapping } from '../mapping/mapping.ts';
import { type MappingOptions, prepareMapping } from '../prepare/prepare-mapping.ts';
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
  options: MappingOptions = {},
): ConvertResult {
  return convertWithin(text, options, () => {
    const prepared = prepareMapping(mapping, options);
    const plan = prepared.value;
    const none = { exams: [], quarantine: [], ledger: noFields };
    if (plan === undefined) return { ...none, issues: prepared.issues };
    const { source } = plan.mapping;
    if (source.syntax !== 'cda') {
      const wrong = issue('invalid-value', ['source', 'syntax'], { reason: 'syntax', code: 'cda' });
      return { ...none, issues: [...prepared.issues, wrong] };
    }
    const result = convertText(text, cdaReaderOf(source), plan);
    return { ...result, issues: [...prepared.issues, ...result.issues] };
  });
}
