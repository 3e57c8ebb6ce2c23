import type { Source } from '../../convert/mapping/source.ts';
import { hasErrors } from '../../issues/issue.ts';
import { textOption } from '../arguments.ts';
import type { Call } from '../command.ts';
import { UsageError } from '../failure.ts';
import { issueFormatOf, writeIssues } from '../output/issue-writer.ts';
import { readMappingFile } from './read-mapping.ts';

/** The one file that is looked at as a sample. */
export function sampleFile({ files }: Call, option: string): string {
  const [file, ...more] = files;
  if (file === undefined || file === '-' || more.length > 0) {
    throw new UsageError(`--${option} takes one named file as its sample`);
  }
  return file;
}

/**
 * The `source` of the mapping that is given, which may hold no more than that; none where no mapping is
 * given. Undefined where the mapping cannot be read, which is told.
 */
export async function statedSource(call: Call): Promise<{ readonly source?: Source } | undefined> {
  const { io, options } = call;
  const file = textOption(options, 'mapping');
  if (file === undefined) return {};
  const { value, issues } = await readMappingFile(io, file);
  if (hasErrors(issues)) {
    await writeIssues(io, issueFormatOf(options), { input: file }, issues);
    return undefined;
  }
  const source = sourceOf(value);
  return source === undefined ? {} : { source };
}

const syntaxes: ReadonlySet<unknown> = new Set([
  'csv',
  'xlsx',
  'fixed',
  'hl7v2',
  'xml',
  'cda',
  'json',
]);

/** What uses the source checks the rest of it. */
function sourceOf(mapping: unknown): Source | undefined {
  if (typeof mapping !== 'object' || mapping === null || !('source' in mapping)) return undefined;
  const { source } = mapping;
  if (typeof source !== 'object' || source === null || !('syntax' in source)) return undefined;
  const isXml = source.syntax === 'xml';
  if (isXml && !('exam' in source && typeof source.exam === 'string')) return undefined;
  if (source.syntax === 'fixed' && !('columns' in source && areColumns(source.columns))) {
    return undefined;
  }
  return syntaxes.has(source.syntax) ? (source as Source) : undefined; // its syntax is known
}

function areColumns(columns: unknown): boolean {
  return Array.isArray(columns) && columns.length > 0 && columns.every(isColumn);
}

function isColumn(column: unknown): boolean {
  if (typeof column !== 'object' || column === null) return false;
  const { name, start, length, end } = column as { readonly [name: string]: unknown }; // an object
  const isPlace = (place: unknown): boolean => Number.isInteger(place);
  return typeof name === 'string' && isPlace(start) && (isPlace(length) || isPlace(end));
}
