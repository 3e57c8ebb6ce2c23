import { type ConvertResult, convertText, convertWithin } from '../exams/convert-text.ts';
import { noFields } from '../exams/ledger.ts';
import { issue } from '../issue.ts';
import type { WrittenMapping } from '../mapping/mapping.ts';
import { type MappingOptions, prepareMapping } from '../prepare/prepare-mapping.ts';
import { hl7v2ReaderOf } from './reader.ts';

/**
 * Exams of HL7 v2 text: each ORU^R01 or MDM^T02 message is one exam, or each order
 * in it, where the mapping says so. Bytes are decoded before. Nothing throws on data; a mapping that is wrong gives issues and no exam.
 */
export function fromHl7v2(
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
    if (source.syntax !== 'hl7v2') {
      const wrong = issue('invalid-value', ['source', 'syntax'], {
        reason: 'syntax',
        code: 'hl7v2',
      });
      return { ...none, issues: [...prepared.issues, wrong] };
    }
    const result = convertText(text, hl7v2ReaderOf(source), plan);
    return { ...result, issues: [...prepared.issues, ...result.issues] };
  });
}
