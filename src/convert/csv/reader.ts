import type { CsvSource, TableRows } from '../mapping/source.ts';
import type {
  CellAbove,
  CellNote,
  Field,
  LegacyRecord,
  NotedCell,
  RawUnit,
  Reader,
  RecordGroup,
} from '../record/record.ts';
import { columnNames, renamedColumns } from './cells.ts';
import { type RowFault, rowBody } from './row-splitter.ts';
import { rowIssue } from './row-unit.ts';
import { tableSplitter } from './splitter.ts';
import { delimitedForm, type TableForm } from './table-form.ts';

/** Reader for delimited text; with `groupBy`, consecutive rows of one exam make one unit. */
export function csvReader(source: CsvSource): Reader {
  return tableReader(delimitedForm(source), source);
}

/** Reader for a table of any form. */
export function tableReader(form: TableForm, source: TableRows): Reader {
  return {
    splitter: (decode) => tableSplitter(form, source, decode ?? ((text) => text)),
    read: (units) => readUnits(units, form, source),
  };
}

interface UnitRow {
  readonly unit: number;
  readonly line: number;
  readonly body: string;
  readonly fault?: RowFault;
  readonly filled?: readonly CellAbove[];
  readonly notes?: readonly NotedCell[];
}

function readUnits(units: readonly RawUnit[], form: TableForm, source: TableRows): RecordGroup[] {
  const rows = units.flatMap((unit, at) => rowsOf(unit, at, form));
  const whole = rows.filter((row) => row.fault === undefined);
  const cells = form.cells(whole.map((row) => row.body));
  const cellsOf = new Map(whole.map((row, at) => [row, cells[at]]));
  const records: LegacyRecord[][] = units.map(() => []);
  const stated = renamedColumns(columnNames(form.columns ?? source.header ?? []), source);
  for (const row of rows) {
    const unit = units[row.unit];
    const header = unit?.header ?? stated;
    const found = form.fit(cellsOf.get(row), header.length);
    const place = (line: number, column?: number): Field['at'] =>
      form.place?.(unit?.at ?? { line }, line, column) ?? {
        line,
        ...(column !== undefined && { column }),
      };
    records[row.unit]?.push(record(row, header, found, place, form));
  }
  return units.map((unit, at) => ({
    records: records[at] ?? [],
    at: unit.at,
    issues: unit.issues ?? [],
  }));
}

function rowsOf(unit: RawUnit, at: number, form: TableForm): UnitRow[] {
  const splitter = form.rows();
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
      ...(lines !== undefined && unit.notes !== undefined && { notes: unit.notes[index] ?? [] }),
    }))
    .filter((row) => row.body !== '');
}

type PlaceOf = (line: number, column?: number) => Field['at'];

function record(
  row: UnitRow,
  header: readonly string[],
  cells: readonly string[] | undefined,
  placeOf: PlaceOf,
  form: TableForm,
): LegacyRecord {
  const at = placeOf(row.line);
  if (cells === undefined || header.length === 0) {
    return {
      kind: 'row',
      at,
      fields: [{ name: 'row', text: row.body, at }],
      malformed: [
        (row.fault === undefined ? form.fault?.(row.body, row.line) : undefined) ??
          rowIssue(row.fault ?? 'malformed-record', row.line),
      ],
    };
  }
  const own = header.map((name, column) => fieldAt(name, column, row, cells, placeOf));
  // Cells behind the last heading, where the syntax has them, are called by their place.
  const more = cells.slice(header.length).flatMap((text, index) => {
    const column = header.length + index;
    const name = form.furtherName?.(column) ?? `#${column + 1}`;
    return text.trim() === '' ? [] : [fieldAt(name, column, row, cells, placeOf)];
  });
  return { kind: 'row', at, fields: more.length === 0 ? own : [...own, ...more] };
}

function fieldAt(
  name: string,
  column: number,
  row: UnitRow,
  cells: readonly string[],
  placeOf: PlaceOf,
): Field {
  const above = row.filled?.find((one) => one.column === column);
  const text = above?.text ?? cells[column] ?? '';
  const note = above
    ? above.note
    : row.notes?.find((one) => one.column === column && one.of === text)?.note;
  return {
    name,
    text,
    at: placeOf(above?.line ?? row.line, column + 1),
    ...(note !== undefined && noted(note)),
  };
}

function noted(note: CellNote): Pick<Field, 'origin' | 'refused'> {
  return note === 'formula' ? { origin: note } : { refused: note };
}
