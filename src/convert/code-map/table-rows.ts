import { failure, type Issue, issue, type Outcome, success } from '../../issues/issue.ts';
import { cutIssues, longTextIssues } from '../../issues/issue-list.ts';
import { csvReader } from '../csv/reader.ts';
import type { CsvSource } from '../mapping/source.ts';
import type { LegacyRecord } from '../record/record.ts';

interface Columns {
  /** Default: `,` */
  readonly delimiter?: CsvSource['delimiter'] | undefined;
  readonly required: readonly string[];
  readonly optional: readonly string[];
}

/** The rows of a delimited table with a header line, or what is wrong with the table as a whole. */
export function tableRows(
  text: string,
  { delimiter = ',', required, optional }: Columns,
): Outcome<readonly LegacyRecord[]> {
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
  return columns.length > 0 ? failure(cutIssues(columns)) : success(records);
}

/** The rows of a table with its headings. */
function readRecords(
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
function columnIssues(
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
