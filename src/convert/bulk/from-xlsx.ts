import { append } from '../../data/append.ts';
import { budgets } from '../../issues/budget.ts';
import type { Issue } from '../../issues/issue.ts';
import { headingIssues } from '../csv/from-csv.ts';
import { convertAs } from '../exams/convert-as.ts';
import type { ConvertResult } from '../exams/convert-text.ts';
import { issue } from '../issue.ts';
import type { WrittenMapping } from '../mapping/mapping.ts';
import type { XlsxSource } from '../mapping/source.ts';
import { type MappingOptions, prepareMapping } from '../prepare/prepare-mapping.ts';
import { xlsxReader } from '../xlsx/reader.ts';
import { workbookPieces } from './input/workbook-text.ts';

/** One sheet of a workbook as text. */
export interface WorkbookText {
  /** A line of comma separated values for each row; `#at` lines say where a row stands. */
  readonly text: string;
  readonly issues: readonly Issue[];
}

/**
 * Converts one sheet of a workbook (.xlsx, .xlsm) to exams, as a mapping says. Formulas are never
 * evaluated; nothing outside the file is looked up. Data never makes it throw. For Node.
 *
 * @param bytes The file.
 * @param mapping What its columns and words mean, whole or as a preset with additions.
 * @param options The catalogue whose codes the mapping names, and the budget.
 * @returns Every exam, converted or in quarantine with the reason, and what became of each cell. A
 *   workbook that cannot be read, and a mapping that is wrong, give issues and no exam.
 * @example
 * const { exams, quarantine, ledger } = await fromXlsx(bytes, mapping);
 * console.log(exams.length, quarantine.length, ledger.coded, ledger.fields);
 * @see https://ecma-international.org/publications-and-standards/standards/ecma-376/
 */
export async function fromXlsx(
  bytes: Uint8Array,
  mapping: WrittenMapping,
  options: MappingOptions = {},
): Promise<ConvertResult> {
  const source = prepareMapping(mapping, options).value?.mapping.source;
  const isSheet = source?.syntax === 'xlsx';
  const { text, issues } = isSheet ? await workbookText(bytes, source, options) : nothing;
  const way = { syntax: 'xlsx', readerOf: xlsxReader, issuesOf: headingIssues } as const;
  const result = convertAs(way, text, mapping, options);
  return { ...result, issues: [...issues, ...result.issues] };
}

const nothing: WorkbookText = { text: '', issues: [] };

/**
 * One sheet of a workbook as the text that `scanExport`, `suggestMapping`, `misfits`, `toDryRun` and the
 * tests of a mapping take. For Node.
 *
 * @param bytes The file.
 * @param source Which sheet. May be left out where one alone holds anything.
 * @param options The budget.
 * @returns The text, and what was met besides plain cells; an empty text where the workbook cannot be
 *   read.
 * @example
 * const { text } = await workbookText(bytes);
 */
export async function workbookText(
  bytes: Uint8Array,
  source: Pick<XlsxSource, 'sheet'> = {},
  options: Pick<MappingOptions, 'budget'> = {},
): Promise<WorkbookText> {
  const maximum = options.budget?.characters ?? budgets.legacy.characters;
  const { pieces, issues, closing } = await workbookPieces(whole(bytes), source);
  const found = [...issues];
  const parts: string[] = [];
  let length = 0;
  for await (const piece of pieces) {
    length += piece.length;
    if (length > maximum) {
      return { text: '', issues: [...found, issue('too-large', [], { reason: 'sheet', maximum })] };
    }
    parts.push(piece);
  }
  append(found, closing?.() ?? []);
  return { text: parts.join(''), issues: found };
}

async function* whole(bytes: Uint8Array): AsyncGenerator<Buffer> {
  yield Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}
