import type { RawUnit, Splitter } from '../record/record.ts';

/** A line is a unit; blank lines are passed over. A broken line costs itself alone. */
export function lineSplitterOf(): Splitter {
  let rest = '';
  let line = 0;
  const unitsOf = (lines: readonly string[]): RawUnit[] =>
    lines.flatMap((text) => {
      line += 1;
      const raw = line === 1 ? text.replace(/^\uFEFF/, '') : text;
      return raw.trim() === '' ? [] : [{ raw: raw.replace(/\r$/, ''), at: { line } }];
    });
  return {
    push: (piece) => {
      // Pieces without a line end are only put together.
      if (!piece.includes('\n')) {
        rest += piece;
        return [];
      }
      const lines = (rest + piece).split('\n');
      rest = lines.pop() ?? '';
      return unitsOf(lines);
    },
    end: () => {
      const last = rest;
      rest = '';
      return last === '' ? [] : unitsOf([last]);
    },
  };
}
