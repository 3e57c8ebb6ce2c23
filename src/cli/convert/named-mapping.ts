import { withWords, wordsFromCsv } from '../../convert/code-map/words-from-csv.ts';
import type { AnyMapping } from '../../convert/mapping/mapping.ts';
import { isPlainObject } from '../../data/plain-data.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import { textOption } from '../arguments.ts';
import type { Call, Choices } from '../command.ts';
import { UsageError } from '../failure.ts';
import { textFile } from '../input/text-file.ts';
import { issueFormatOf, writeIssues } from '../output/issue-writer.ts';
import { readMappingFile } from './read-mapping.ts';

/** The mapping file that is stated; `option` cannot do without. */
export function mappingFile({ options }: Call, option: string): string {
  const file = textOption(options, 'mapping');
  if (file === undefined) throw new UsageError(`--${option} needs --mapping FILE`);
  return file;
}

/** The mapping in a file; undefined where it cannot be read, which is told. Its use checks it. */
export async function mappingIn(
  { io, options }: Call,
  file: string,
): Promise<AnyMapping | undefined> {
  const { value, issues } = await readMappingFile(io, file);
  await writeIssues(io, issueFormatOf(options), { input: file }, issues);
  const words = textOption(options, 'words');
  if (words === undefined || !isPlainObject(value)) return value as AnyMapping | undefined; // what is not one is told by whatever uses it
  const tables = wordsFromCsv(await textFile(io, words));
  await writeIssues(io, issueFormatOf(options), { input: words }, tables.issues);
  return tables.value && (withWords(value, tables.value) as AnyMapping); // likewise
}

/** The tables of the clinic, where one is named. */
export function catalogueOf({ clinic }: Choices): { readonly catalogue?: Catalogue } {
  return clinic === undefined ? {} : { catalogue: clinic.catalogue };
}

/** What was found, to standard output: as text, or with `--format json` as one JSON object. */
export async function writeFound<Found>(
  { io, options }: Call,
  found: Found,
  text: (found: Found) => string,
): Promise<void> {
  const isText = textOption(options, 'format') !== 'json';
  await io.out(isText ? text(found) : `${JSON.stringify(found)}\n`);
}
