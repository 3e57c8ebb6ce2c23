import { LONGEST_ROW, type Row, type RowSplitter } from '../csv/row-splitter.ts';

/** Cuts a text into its lines, which end in LF or CRLF; a line over the limit is cut at the limit. */
export function lineRows(): RowSplitter {
  let held = '';
  let line = 1;
  let isRest = false;
  const take = (last: boolean): Row[] => {
    const rows: Row[] = [];
    let start = 0;
    const add = (end: number, isLarge: boolean): void => {
      const fault = isLarge || isRest ? ({ fault: 'too-large' } as const) : {};
      rows.push({ text: held.slice(start, end), line, ...fault });
      start = end;
      isRest = isLarge;
    };
    while (start < held.length) {
      const end = held.indexOf('\n', start);
      if (end >= 0 && end - start <= LONGEST_ROW) {
        add(end + 1, false);
        line += 1;
      } else if (held.length - start > LONGEST_ROW) add(start + LONGEST_ROW, true);
      else if (last) add(held.length, false);
      else break;
    }
    held = held.slice(start);
    return rows;
  };
  return {
    push: (piece) => {
      held += piece;
      return take(false);
    },
    end: () => take(true),
  };
}
