import type { NotedCell } from '../record/record.ts';
import type { FilledCell } from './fill-down.ts';
import { quotedRowEnd } from './quoted-row.ts';

/** One row of a delimited text, with its line ending, and the line where it starts. */
export interface Row {
  readonly text: string;
  readonly line: number;
  /** The row cannot be read; it was cut after its first line. */
  readonly fault?: RowFault;
  /** What its blank cells stand for. */
  readonly filled?: readonly FilledCell[];
  /** Sheet of a workbook that it stands in. */
  readonly sheet?: string;
  /** What is to be known of single cells. */
  readonly notes?: readonly NotedCell[];
}

export type RowFault = 'unclosed-quote' | 'malformed-record' | 'too-large';

export interface RowSplitter {
  readonly push: (piece: string) => Row[];
  readonly end: () => Row[];
}

/** Longest row, in characters. A quote that is not closed within it counts as unclosed. */
export const LONGEST_ROW = 1_048_576;

interface Found {
  readonly end: number;
  readonly fault?: RowFault;
}

/**
 * Cuts a text into rows by the quoting rules of RFC 4180. After broken quoting the row ends with
 * its first line, so that one stray quote costs one line and not the rest of the file. Rows end with
 * CRLF or LF; with a lone CR only where the first line does.
 */
export function rowSplitter(delimiter: string): RowSplitter {
  let held = '';
  let line = 1;
  let ending: string | undefined;
  let insideLongLine = false;

  const take = (final: boolean): Row[] => {
    const rows: Row[] = [];
    ending ??= firstEnding(held, final);
    if (ending === undefined) return rows;
    let start = 0;
    let quote = held.indexOf('"');
    while (start < held.length) {
      if (quote >= 0 && quote < start) quote = held.indexOf('"', start);
      const found = rowEnd(held, start, { quote, delimiter, ending, final, insideLongLine });
      if (found === undefined) break;
      const text = held.slice(start, found.end);
      rows.push({ text, line, ...(found.fault !== undefined && { fault: found.fault }) });
      insideLongLine = found.fault === 'too-large' && !text.endsWith(ending);
      line += count(text, ending);
      start = found.end;
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

/** A row without its line ending. */
export function rowBody(text: string): string {
  return text.replace(/(?:\r?\n|\r)$/, '');
}

function firstEnding(text: string, final: boolean): string | undefined {
  const lf = text.indexOf('\n');
  const cr = text.indexOf('\r');
  if (cr >= 0 && (lf < 0 || cr < lf)) {
    // A CR at the end of what has come may be the first half of CRLF.
    if (cr === text.length - 1 && !final) return undefined;
    return text[cr + 1] === '\n' ? '\n' : '\r';
  }
  return lf >= 0 || final || text.length > LONGEST_ROW ? '\n' : undefined;
}

interface Scan {
  /** Next quote at or behind the start; -1 where there is none. */
  readonly quote: number;
  readonly delimiter: string;
  readonly ending: string;
  readonly final: boolean;
  /** What comes is the rest of a line that was cut at the limit. */
  readonly insideLongLine: boolean;
}

/** Undefined where more text is needed to tell. */
function rowEnd(text: string, start: number, scan: Scan): Found | undefined {
  const first = lineEnd(text, start, scan.ending, scan.final);
  if (scan.insideLongLine) return first && { ...first, fault: 'too-large' };
  if (scan.quote < 0 || (first !== undefined && scan.quote >= first.end)) return first;
  const row = quotedRowEnd(text, start, scan.delimiter, scan.ending);
  if (row === 'malformed-record') {
    return first === undefined ? undefined : { fault: row, ...first };
  }
  const whole =
    row !== 'unclosed-quote' && (scan.final || row < text.length || endsRow(text, row, scan));
  if (whole && row - start <= LONGEST_ROW) return { end: row };
  if (!scan.final && text.length - start <= LONGEST_ROW) return undefined;
  if (first === undefined) return undefined;
  return { fault: row === 'unclosed-quote' ? row : 'too-large', ...first };
}

function endsRow(text: string, row: number, scan: Scan): boolean {
  return text[row - 1] === scan.ending;
}

/** End of the line, quotes or not. A line over the limit is cut at the limit. */
function lineEnd(text: string, start: number, ending: string, final: boolean): Found | undefined {
  const at = text.indexOf(ending, start);
  if (at >= 0 && at - start < LONGEST_ROW) return { end: at + 1 };
  if (text.length - start > LONGEST_ROW) return { end: start + LONGEST_ROW, fault: 'too-large' };
  return final ? { end: text.length } : undefined;
}

function count(text: string, ending: string): number {
  let lines = 0;
  for (let at = text.indexOf(ending); at >= 0; at = text.indexOf(ending, at + 1)) lines += 1;
  return lines;
}
