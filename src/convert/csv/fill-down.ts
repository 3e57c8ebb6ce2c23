import type { CellNote } from '../record/record.ts';
import { type Row, rowBody } from './row-splitter.ts';
import type { TableForm } from './table-form.ts';

/** A cell that is blank in its row and stands for one above. */
export interface FilledCell {
  readonly column: number;
  readonly text: string;
  /** The text as it stands in the input, whose bytes may not be decoded yet. */
  readonly raw: string;
  /** Line of the cell above. */
  readonly line: number;
  /** What is to be known of the cell above. */
  readonly note?: CellNote;
}

/** Marks in rows what their blank cells stand for; what was above is kept from one call to the next. */
export function fillerOf(
  form: TableForm,
  columns: readonly string[],
  decode: (bytes: string) => string,
): (rows: readonly Row[], names: readonly string[]) => Row[] {
  let above: readonly FilledCell[] = [];
  const same = (text: string): string => text;
  const [before, behind] = form.byPlace ? [decode, same] : [same, decode];
  return (rows, names) => {
    const readable = rows.filter(({ fault }) => fault === undefined);
    const cells = form.cells(readable.map(({ text }) => before(rowBody(text))));
    const cellsOf = new Map(readable.map((row, at) => [row, cells[at]]));
    const places = columns.map((name) => names.indexOf(name)).filter((column) => column >= 0);
    return rows.map((row) => {
      const own = form.fit(cellsOf.get(row), names.length);
      // Below a row that can not be read nothing is known of what stood there.
      if (own === undefined) {
        above = [];
        return row;
      }
      const filled: FilledCell[] = [];
      let isSame = true;
      above = places.flatMap((column): FilledCell[] => {
        const before = above.find((one) => one.column === column);
        const raw = own[column] ?? '';
        if (raw.trim() !== '') {
          isSame &&= before?.raw === raw;
          const note = row.notes?.find((one) => one.column === column)?.note;
          return [{ column, raw, text: behind(raw), line: row.line, ...(note && { note }) }];
        }
        if (!isSame || before === undefined) return [];
        filled.push(before);
        return [before];
      });
      return filled.length === 0 ? row : { ...row, filled };
    });
  };
}

/** The cells of a row with those of the rows above in the place of blank ones. */
export function filledCells(
  cells: readonly string[] | undefined,
  { filled = [] }: Pick<Row, 'filled'>,
): readonly string[] | undefined {
  if (cells === undefined || filled.length === 0) return cells;
  const result = [...cells];
  for (const { column, raw } of filled) result[column] = raw;
  return result;
}
