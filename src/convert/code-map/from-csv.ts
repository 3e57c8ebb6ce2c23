import { within } from '../../issues/budget.ts';
import { failure, type Issue, issue, type Outcome } from '../../issues/issue.ts';
import { cutIssues, endedIssue, longTextIssues } from '../../issues/issue-list.ts';
import { adopterCodes, type CodeMapOptions } from '../../terminology/code-map/adopter-codes.ts';
import type { AdopterCodes, CodeMapEntry } from '../../terminology/code-map/entry.ts';
import { csvReader } from '../csv/reader.ts';
import type { CsvSource } from '../mapping/source.ts';
import type { LegacyRecord } from '../record/record.ts';

/** How the table is read. */
export interface CsvCodeMapOptions extends CodeMapOptions {
  /** Default: `,` */
  readonly delimiter?: CsvSource['delimiter'];
}

const required = ['source', 'code', 'system', 'target', 'relation'] as const;
const optional = ['action', 'version', 'display', 'unit'] as const;

/**
 * Reads a code map from delimited text with the columns source, code, system, target and relation,
 * and where needed action, version, display and unit; see {@link CodeMapEntry} for what each holds.
 * A blank cell means nothing is stated.
 *
 * @param text The table, decoded, with its header line.
 * @param options `delimiter` (default a comma), and those of `adopterCodes`.
 * @returns The map. It fails where `adopterCodes` does and where a column is missing or unknown;
 *   issues hold the line.
 * @example
 * const row = 'findings,naevus,https://harbour.example/codes,M7,equivalent';
 * const codes = codesFromCsv(`source,code,system,target,relation\n${row}\n`);
 */
export function codesFromCsv(text: string, options: CsvCodeMapOptions = {}): Outcome<AdopterCodes> {
  return within(
    'codeMap',
    options.budget,
    () => readMap(text, options),
    (why) => failure([endedIssue(why)]),
  );
}

function readMap(
  text: string,
  { delimiter = ',', ...options }: CsvCodeMapOptions,
): Outcome<AdopterCodes> {
  const long = longTextIssues(text);
  if (long.length > 0) return failure(long);
  const records = readRecords(text, delimiter);
  const broken = records.flatMap(({ malformed = [] }) => malformed);
  if (broken.length > 0) return failure(cutIssues(broken));
  const [first] = records;
  if (first === undefined) {
    return failure([issue('empty-value', [], { reason: 'map', names: required })]);
  }
  const columns = columnIssues(first, required, optional);
  if (columns.length > 0) return failure(cutIssues(columns));
  return adopterCodes(records.map(entryOf), options);
}

/** The rows of a table with its headings. */
export function readRecords(
  text: string,
  delimiter: NonNullable<CsvSource['delimiter']>,
): readonly LegacyRecord[] {
  const reader = csvReader({ syntax: 'csv', delimiter });
  const splitter = reader.splitter();
  const units = [...splitter.push(text), ...splitter.end()];
  return reader.read(units).flatMap((group) => {
    // What is wrong with a unit as a whole is wrong with each of its rows.
    if (group.issues.length === 0) return group.records;
    return group.records.map((record) => ({ ...record, malformed: group.issues }));
  });
}

/** Columns that are missing, and those that have no meaning. */
export function columnIssues(
  { fields }: LegacyRecord,
  required: readonly string[],
  optional: readonly string[],
): Issue[] {
  const given = new Set(fields.map(({ name }) => name.toLowerCase()));
  const known = new Set<string>([...required, ...optional]);
  return [
    ...required
      .filter((name) => !given.has(name))
      .map((name) => issue('missing-field', [name], { reason: 'column' })),
    ...[...given]
      .filter((name) => !known.has(name))
      .map((name) => issue('unknown-property', [name], { reason: 'column', codes: [...known] })),
  ];
}

function entryOf(record: LegacyRecord): CodeMapEntry {
  const cells = new Map(
    record.fields.map(({ name, text }) => [name.toLowerCase(), text.trim()] as const),
  );
  const cell = (name: (typeof required | typeof optional)[number]): string | undefined =>
    cells.get(name) || undefined;
  return {
    source: cell('source') ?? '',
    code: cell('code') ?? '',
    system: cell('system') ?? '',
    target: cell('target'),
    version: cell('version'),
    display: cell('display'),
    relation: cell('relation')?.toLowerCase(),
    action: cell('action')?.toLowerCase(),
    unit: cell('unit'),
    path: [],
    position: record.at,
  };
}
