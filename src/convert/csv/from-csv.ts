import type { Issue } from '../../issues/issue.ts';
import { convertAs } from '../exams/convert-as.ts';
import type { ConvertResult } from '../exams/convert-text.ts';
import { issue } from '../issue.ts';
import type { WrittenMapping } from '../mapping/mapping.ts';
import type { Plan } from '../mapping/plan.ts';
import { isTable } from '../mapping/source.ts';
import { companionNames, headNames, itemNames, madeNames } from '../prepare/names.ts';
import type { MappingOptions } from '../prepare/prepare-mapping.ts';
import type { RawUnit } from '../record/record.ts';
import { csvReader } from './reader.ts';

/**
 * Converts CSV or TSV to exams, as a mapping says. Data never makes it throw.
 *
 * @param text The export, decoded: bytes of older character sets are decoded before.
 * @param mapping What its fields and words mean, whole or as a preset with additions.
 * @param options The catalogue whose codes the mapping names.
 * @returns Every exam, converted or in quarantine with the reason, and what became of each field. A
 *   mapping that is wrong gives issues and no exam.
 * @example
 * const { exams, quarantine, ledger } = fromCsv(text, mapping);
 * console.log(exams.length, quarantine.length, ledger.coded, ledger.fields);
 * @see https://www.rfc-editor.org/rfc/rfc4180
 */
export function fromCsv(
  text: string,
  mapping: WrittenMapping,
  options?: MappingOptions,
): ConvertResult {
  return convertAs(
    { syntax: 'csv', readerOf: csvReader, issuesOf: headingIssues },
    text,
    mapping,
    options,
  );
}

/** Columns that the mapping names and the table does not have: silence that nobody meant. */
export function missingColumns(header: readonly string[], plan: Plan): Issue[] {
  // Headings that cannot be read are told as such.
  if (header.length === 0) return [];
  const { exam, fields, items, layout, text, source } = plan.mapping;
  const wanted = new Set([
    ...headNames(exam),
    ...Object.entries(fields ?? {}).flatMap(([name, target]) => [name, ...companionNames(target)]),
    ...(items ?? []).flatMap(itemNames),
    ...(layout ?? []),
    ...(text ?? []),
    ...(isTable(source) ? (source.groupBy ?? []) : []),
  ]);
  const cells = (plan.mapping.cells ?? []).map(({ from }) => from);
  for (const name of cells) wanted.add(name);
  const there = new Set([...header, ...(plan.mapping.cells ?? []).flatMap(madeNames)]);
  return [...wanted]
    .filter((name) => !there.has(name))
    .map((name) =>
      issue(
        'missing-field',
        [name],
        { reason: 'mapped-column' },
        {
          severity: 'warning',
          source: { line: 1 },
        },
      ),
    );
}

/** The same of the units of a text. */
export function headingIssues([first]: readonly RawUnit[], plan: Plan): Issue[] {
  return first?.header === undefined ? [] : missingColumns(first.header, plan);
}
