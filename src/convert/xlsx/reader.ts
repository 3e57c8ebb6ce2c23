import type { SourcePosition } from '../../issues/issue.ts';
import { type Cells, parsedRows } from '../csv/cells.ts';
import { tableReader } from '../csv/reader.ts';
import { type Row, type RowSplitter, rowBody, rowSplitter } from '../csv/row-splitter.ts';
import { isEmpty, type TableForm } from '../csv/table-form.ts';
import type { XlsxSource } from '../mapping/source.ts';
import { cellNotes, type NotedCell, type Reader } from '../record/record.ts';
import { columnLetters } from './cell-name.ts';
import { placeIn, type SheetPlaceLine } from './sheet-text.ts';

/** Reads the text of a sheet, as `workbookText` makes it of a workbook. */
export function xlsxReader(source: XlsxSource): Reader {
  return tableReader(sheetForm, source);
}

/** The text of a sheet as a table. */
export const sheetForm: TableForm = {
  rows: sheetRows,
  cells: (bodies) => parsedRows(bodies, ','),
  fit: padded,
  isEmpty: (text) => isEmpty(text, ','),
  place: (unit, line, column): SourcePosition => ({
    ...('sheet' in unit && { sheet: unit.sheet }),
    line,
    ...(column !== undefined && { column, cell: `${columnLetters(column)}${line}` }),
  }),
};

/** Cells of a sheet have their columns by themselves: a row may end early, and have cells further on. */
function padded(cells: Cells, columns: number): readonly string[] | undefined {
  if (cells === undefined || cells.length >= columns) return cells;
  return [...cells, ...Array.from({ length: columns - cells.length }, () => '')];
}

/** Rows with the number that they have in the sheet. */
function sheetRows(): RowSplitter {
  const lines = rowSplitter(',');
  let next = 1;
  let sheet: string | undefined;
  let place: SheetPlaceLine | undefined;
  const rowsOf = (found: readonly Row[]): Row[] =>
    found.flatMap((row) => {
      const told = placeIn(rowBody(row.text));
      if (told !== undefined) {
        place = told;
        sheet = typeof told.sheet === 'string' ? told.sheet : sheet;
        return [];
      }
      const line = isRow(place?.row) ? place.row : next;
      const notes = place?.notes === undefined ? [] : notesIn(row, place.notes);
      next = line + 1;
      place = undefined;
      return [
        { ...row, line, ...(sheet !== undefined && { sheet }), ...(notes.length > 0 && { notes }) },
      ];
    });
  return {
    push: (piece) => rowsOf(lines.push(piece)),
    end: () => rowsOf(lines.end()),
  };
}

function isRow(row: unknown): row is number {
  return typeof row === 'number' && Number.isInteger(row) && row > 0;
}

function notesIn(row: Row, told: SheetPlaceLine['notes'] & {}): NotedCell[] {
  const [cells = []] = row.fault === undefined ? parsedRows([rowBody(row.text)], ',') : [];
  return cellNotes.flatMap((note) =>
    (Array.isArray(told[note]) ? told[note] : []).map((column) => ({
      ...{ column: column - 1, note, of: cells[column - 1] ?? '' },
    })),
  );
}
