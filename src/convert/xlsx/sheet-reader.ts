import type { NotedCell } from '../record/record.ts';
import { cellPlace, columnLetters, MOST_COLUMNS, MOST_ROWS } from './cell-name.ts';
import { Markup, MarkupFault } from './markup.ts';
import { SheetText } from './sheet-text.ts';
import { type CellContext, isOn, richText, textOfCell } from './workbook-parts.ts';

/** What a sheet has that a plain table has not: how often, and the first place. */
export interface SheetFindings {
  readonly mergedCells: Found;
  readonly hiddenRows: Found;
  readonly hiddenColumns: Found;
  readonly formulas: Found;
  /** Rows that hold anything. */
  readonly rows: number;
}

export interface Found {
  readonly count: number;
  readonly first?: string;
}

/** More rows than a sheet can have. */
export class TooManyRows extends Error {
  readonly maximum = MOST_ROWS;
}

/** Blank cells that may be written between others, besides a hundred for each that holds anything. */
const FREE_BLANKS = 1_000_000;

interface OpenCell {
  readonly column: number;
  readonly type: string;
  readonly style: number;
  value?: string;
  formula?: string;
}

/**
 * Turns the markup of a sheet, as it comes, into its text (ECMA-376 part 1, 18.3). Cells are never
 * evaluated. A row or cell that does not stand behind the one before is a {@link MarkupFault}.
 */
export class SheetReader {
  readonly #context: CellContext;
  readonly #writer: SheetText;
  readonly #markup: Markup;
  readonly #inline = richText();
  readonly #hiddenRanges: (readonly [from: number, to: number])[] = [];
  readonly #hidden = new Set<number>();
  readonly #counts = { mergedCells: none(), hiddenRows: none(), formulas: none() };
  #made = '';
  #row = 0;
  #rowHidden = false;
  #rows = 0;
  #cells: string[] = [];
  #notes: NotedCell[] = [];
  #column = 0;
  #cell: OpenCell | undefined;
  #into: 'value' | 'formula' | undefined;
  #filled = 0;
  #blanks = 0;

  constructor(sheet: string, context: CellContext) {
    this.#context = context;
    this.#writer = new SheetText(sheet);
    this.#markup = new Markup({
      start: (name, attribute) => this.#start(name, attribute),
      end: (name) => this.#end(name),
      text: (text) => this.#text(text),
    });
  }

  /** The text that is complete with this piece. */
  push(piece: string): string {
    this.#markup.push(piece);
    return this.taken();
  }

  end(): string {
    this.#markup.end();
    return this.taken();
  }

  /** What is complete and was not yet given, where a fault ended the reading. */
  taken(): string {
    const made = this.#made;
    this.#made = '';
    return made;
  }

  findings(): SheetFindings {
    const [column] = this.#hidden;
    return {
      ...this.#counts,
      hiddenColumns: {
        count: this.#hidden.size,
        ...(column !== undefined && { first: columnLetters(column) }),
      },
      rows: this.#rows,
    };
  }

  #start(name: string, attribute: (name: string) => string | undefined): void {
    switch (name) {
      case 'row':
        this.#beginRow(attribute('r'), isOn(attribute('hidden')));
        return;
      case 'c':
        this.#beginCell(attribute('r'), attribute('t') ?? 'n', Number(attribute('s') ?? 0));
        return;
      case 'v':
        this.#begin('value');
        return;
      case 'f':
        this.#begin('formula');
        return;
      case 'mergeCell':
        count(this.#counts.mergedCells, (attribute('ref') ?? '').split(':', 1)[0] ?? '');
        return;
      case 'col':
        if (isOn(attribute('hidden'))) {
          this.#hiddenRanges.push([Number(attribute('min')), Number(attribute('max'))]);
        }
        return;
      default:
        if (this.#cell !== undefined) this.#inline.start(name);
    }
  }

  #end(name: string): void {
    if (name === 'row') this.#finishRow();
    else if (name === 'c') this.#finishCell();
    else if (name === 'v' || name === 'f') this.#into = undefined;
    else if (this.#cell !== undefined && name === 'is') this.#cell.value = this.#inline.take();
    else if (this.#cell !== undefined) this.#inline.end(name);
  }

  #text(text: string): void {
    const cell = this.#cell;
    if (cell === undefined) return;
    if (this.#into !== undefined) cell[this.#into] = (cell[this.#into] ?? '') + text;
    else this.#inline.text(text);
  }

  #begin(part: 'value' | 'formula'): void {
    if (this.#cell === undefined) return;
    this.#into = part;
    this.#cell[part] ??= '';
  }

  #beginRow(number: string | undefined, hidden: boolean): void {
    const row = number === undefined ? this.#row + 1 : Number(number);
    if (row > MOST_ROWS) throw new TooManyRows('too many rows');
    if (!Number.isInteger(row) || row <= this.#row) throw new MarkupFault('rows are out of order');
    this.#row = row;
    this.#rowHidden = hidden;
    this.#cells = [];
    this.#notes = [];
    this.#column = 0;
  }

  #beginCell(name: string | undefined, type: string, style: number): void {
    const place = name === undefined ? undefined : cellPlace(name);
    const column = name === undefined ? this.#column + 1 : (place?.column ?? 0);
    const isInRow = place === undefined || place.row === this.#row;
    if (!isInRow || column <= this.#column || column > MOST_COLUMNS) {
      throw new MarkupFault('cells are out of order');
    }
    this.#column = column;
    this.#cell = { column, type, style };
  }

  #finishCell(): void {
    const cell = this.#cell;
    this.#cell = undefined;
    if (cell === undefined) return;
    const { text, note } = textOfCell(this.#context, cell);
    const at = cell.column - 1;
    if (cell.formula !== undefined) {
      count(this.#counts.formulas, `${columnLetters(cell.column)}${this.#row}`);
    }
    if (note !== undefined) this.#notes.push({ column: at, note, of: text });
    if (text.trim() === '') return;
    this.#blanks += at - this.#cells.length;
    this.#filled += 1;
    if (this.#blanks > FREE_BLANKS + 100 * this.#filled) throw new MarkupFault('cells too sparse');
    while (this.#cells.length < at) this.#cells.push('');
    this.#cells.push(text);
    if (this.#hiddenRanges.some(([from, to]) => from <= cell.column && cell.column <= to)) {
      this.#hidden.add(cell.column);
    }
  }

  #finishRow(): void {
    if (this.#cells.length === 0) return;
    this.#rows += 1;
    if (this.#rowHidden) count(this.#counts.hiddenRows, `A${this.#row}`);
    this.#made += this.#writer.row(this.#row, this.#cells, this.#notes);
  }
}

interface Counted {
  count: number;
  first?: string;
}

function none(): Counted {
  return { count: 0 };
}

function count(counted: Counted, place: string): void {
  counted.count += 1;
  counted.first ??= place;
}
