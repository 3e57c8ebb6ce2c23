import type { CsvSource } from '../mapping/source.ts';
import type { CellAbove, LegacyRecord, RawUnit, Reader, RecordGroup } from '../record/record.ts';
import { columnNames, fittingCells, readCells, renamedColumns } from './cells.ts';
import { type RowFault, rowBody, rowSplitter } from './row-splitter.ts';
import { rowIssue } from './row-unit.ts';
import { csvSplitter } from './splitter.ts';

/** Reader for delimited text; with `groupBy`, consecutive rows of one exam make one unit. */
export function csvReader(source: CsvSource): Reader {
  return {
    splitter: (decode) => csvSplitter(source, decode ?? ((text) => text)),
    read: (units) => readUnits(units, source),
  };
}

interface UnitRow {
  readonly unit: number;
  readonly line: number;
  readonly body: string;
  readonly fault?: RowFault;
  readonly filled?: readonly CellAbove[];
}

function readUnits(units: readonly RawUnit[], source: CsvSource): RecordGroup[] {
  const delimiter = source.delimiter ?? ',';
  const rows = units.flatMap((unit, at) => rowsOf(unit, at, delimiter));
  const whole = rows.filter((row) => row.fault === undefined);
  const cells = readCells(
    whole.map((row) => row.body),
    delimiter,
  );
  const cellsOf = new Map(whole.map((row, at) => [row, cells[at]]));
  const records: LegacyRecord[][] = units.map(() => []);
  for (const row of rows) {
    const header =
      units[row.unit]?.header ?? renamedColumns(columnNames(source.header ?? []), source);
    records[row.unit]?.push(
      record(
        row,
        header,
        fittingCells(cellsOf.get(row), header.length, source.trailingDelimiter ?? false),
      ),
    );
  }
  return units.map((unit, at) => ({
    records: records[at] ?? [],
    at: unit.at,
    issues: unit.issues ?? [],
  }));
}

function rowsOf(unit: RawUnit, at: number, delimiter: string): UnitRow[] {
  const splitter = rowSplitter(delimiter);
  const rows = [...splitter.push(unit.raw), ...splitter.end()];
  // A unit that was mended by hand may have other rows than the one that was cut out.
  const lines = unit.lines?.length === rows.length ? unit.lines : undefined;
  const first = 'line' in unit.at ? unit.at.line : 1;
  return rows
    .map((row, index) => ({
      unit: at,
      line: lines?.[index] ?? first + row.line - 1,
      body: rowBody(row.text),
      ...(row.fault !== undefined && { fault: row.fault }),
      ...(lines !== undefined && unit.filled !== undefined && { filled: unit.filled[index] ?? [] }),
    }))
    .filter((row) => row.body !== '');
}

function record(
  row: UnitRow,
  header: readonly string[],
  cells: readonly string[] | undefined,
): LegacyRecord {
  const at = { line: row.line };
  if (cells === undefined || header.length === 0) {
    return {
      kind: 'row',
      at,
      fields: [{ name: 'row', text: row.body, at }],
      malformed: [rowIssue(row.fault ?? 'malformed-record', row.line)],
    };
  }
  return {
    kind: 'row',
    at,
    fields: header.map((name, column) => {
      const above = row.filled?.find((one) => one.column === column);
      const text = above?.text ?? cells[column] ?? '';
      return { name, text, at: { line: above?.line ?? row.line, column: column + 1 } };
    }),
  };
}
