import type { SourcePosition } from '../../issues/issue.ts';

export interface LinePlace {
  readonly line: number;
  readonly column: number;
}

/**
 * Place in the whole input of an offset into the text of a unit that starts at `start`. Lines and
 * columns count from 1; lines end in LF.
 */
export function placesIn(text: string, start: SourcePosition): (offset: number) => LinePlace {
  const first = 'line' in start ? start : { line: 1 };
  const starts = [0];
  for (let at = text.indexOf('\n'); at !== -1; at = text.indexOf('\n', at + 1)) starts.push(at + 1);
  return (offset) => {
    const row = rowOf(starts, offset);
    const column = offset - (starts[row] ?? 0) + 1;
    return {
      line: first.line + row,
      column: row === 0 ? column + (first.column ?? 1) - 1 : column,
    };
  };
}

/** Index of the last start that is not behind `offset`. */
function rowOf(starts: readonly number[], offset: number): number {
  let low = 0;
  let high = starts.length - 1;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if ((starts[middle] ?? 0) <= offset) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Line and column, both from 1, of the text that was passed so far. Lines end in LF. */
export class Place {
  #line = 1;
  #column = 1;

  now(): LinePlace {
    return { line: this.#line, column: this.#column };
  }

  pass(text: string): void {
    let from = 0;
    for (let at = text.indexOf('\n'); at !== -1; at = text.indexOf('\n', from)) {
      this.#line += 1;
      this.#column = 1;
      from = at + 1;
    }
    this.#column += text.length - from;
  }
}
