import { type ConvertResult, convertText, convertWithin } from '../exams/convert-text.ts';
import { noFields } from '../exams/ledger.ts';
import { issue } from '../issue.ts';
import type { WrittenMapping } from '../mapping/mapping.ts';
import { type MappingOptions, prepareMapping } from '../prepare/prepare-mapping.ts';
import { xmlReader } from './reader.ts';

/**
 * Exams of XML text: each element at the path that the mapping states is one exam. Bytes are decoded
 * before. Nothing throws on data; a mapping that is wrong gives issues and no exam.
 */
export function fromXmlExport(
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
    if (source.syntax !== 'xml') {
      const wrong = issue('invalid-value', ['source', 'syntax'], { reason: 'syntax', code: 'xml' });
      return { ...none, issues: [...prepared.issues, wrong] };
    }
    const result = convertText(text, xmlReader(source), plan);
    return { ...result, issues: [...prepared.issues, ...result.issues] };
  });
}
