import type { CellNote, NotedCell } from '../record/record.ts';

/** Begins a line of the text of a sheet that says where the next row stands and what it is to be known of it. */
export const PLACE_MARK = '#at {';

/** What a line of place says. */
export interface SheetPlaceLine {
  readonly sheet?: string;
  /** Row of the next line of cells. Left out: the one below the last. */
  readonly row?: number;
  /** Numbers of columns, from 1, by what is to be known of their cells. */
  readonly notes?: { readonly [Note in CellNote]?: readonly number[] };
}

/**
 * Writes rows of a sheet as text: a line of comma separated values for each (RFC 4180), and before it,
 * where a row does not simply follow or has cells with notes, a line of place.
 */
export class SheetText {
  #sheet: string | undefined;
  #next = 1;

  constructor(sheet: string) {
    this.#sheet = sheet;
  }

  /** The line of a row, and of its place. */
  row(row: number, cells: readonly string[], notes: readonly NotedCell[]): string {
    const place: SheetPlaceLine = {
      ...(this.#sheet !== undefined && { sheet: this.#sheet }),
      ...(row !== this.#next && { row }),
      ...(notes.length > 0 && { notes: notesOf(notes) }),
    };
    this.#sheet = undefined;
    this.#next = row + 1;
    const line = `${cells.map(quoted).join(',')}\n`;
    return Object.keys(place).length === 0 ? line : `#at ${JSON.stringify(place)}\n${line}`;
  }
}

function notesOf(notes: readonly NotedCell[]): SheetPlaceLine['notes'] & {} {
  const all: { [Note in CellNote]?: number[] } = {};
  for (const { column, note } of notes) {
    all[note] = [...(all[note] ?? []), column + 1];
  }
  return all;
}

function quoted(cell: string): string {
  if (cell === '') return cell;
  const must = /[",\r\n]/.test(cell) || cell.startsWith('#at');
  return must ? `"${cell.replaceAll('"', '""')}"` : cell;
}

/** What a line of place says; undefined for any other line. */
export function placeIn(line: string): SheetPlaceLine | undefined {
  if (!line.startsWith(PLACE_MARK)) return undefined;
  try {
    return JSON.parse(line.slice('#at '.length)) as SheetPlaceLine; // as written above, or by hand
  } catch {
    return undefined;
  }
}
