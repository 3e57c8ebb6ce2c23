import { within } from '../../issues/budget.ts';
import { failure, type Outcome } from '../../issues/issue.ts';
import { endedIssue } from '../../issues/issue-list.ts';
import { adopterCodes, type CodeMapOptions } from '../../terminology/code-map/adopter-codes.ts';
import type { AdopterCodes, CodeMapEntry } from '../../terminology/code-map/entry.ts';
import type { CsvSource } from '../mapping/source.ts';
import type { LegacyRecord } from '../record/record.ts';
import { tableRows } from './table-rows.ts';

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
  { delimiter, ...options }: CsvCodeMapOptions,
): Outcome<AdopterCodes> {
  const rows = tableRows(text, { delimiter, required, optional });
  return rows.ok ? adopterCodes(rows.value.map(entryOf), options) : rows;
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
