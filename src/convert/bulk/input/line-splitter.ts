import { append } from '../../../data/append.ts';
/** A line without its ending, and its number from 1. */
export interface Line {
  readonly text: string;
  readonly number: number;
  /** The line was longer than the limit; `text` is its beginning. */
  readonly cut?: true;
}

export interface LineSplitter {
  readonly push: (piece: string) => Line[];
  readonly end: () => Line[];
}

/** The lines of a stream of bytes that may be cut anywhere; each byte is a character of their text. */
export async function* linesOf(input: AsyncIterable<Uint8Array>): AsyncGenerator<Line> {
  const lines = lineSplitter();
  for await (const piece of input) yield* lines.push(Buffer.from(piece).toString('latin1'));
  yield* lines.end();
}

/** Longest line: an exam of any syntax is a few megabytes at most. */
const LONGEST = 64 * 1024 * 1024;
/** What is kept of a line that is longer. */
const KEPT = 1000;

/** Cuts text into lines; blank lines are passed over. */
export function lineSplitter(longest: number = LONGEST): LineSplitter {
  let held: string[] = [];
  let length = 0;
  let number = 0;

  const hold = (text: string): void => {
    const room = Math.max(0, longest + 1 - length);
    length += text.length;
    if (room > 0) held.push(text.slice(0, room));
  };
  const take = (): Line[] => {
    const text = held.join('');
    const isCut = length > longest;
    held = [];
    length = 0;
    number += 1;
    if (isCut) return [{ text: text.slice(0, KEPT), number, cut: true }];
    const body = text.endsWith('\r') ? text.slice(0, -1) : text;
    return body.trim() === '' ? [] : [{ text: body, number }];
  };
  return {
    push: (piece) => {
      const parts = piece.split('\n');
      const last = parts.pop() ?? '';
      const lines: Line[] = [];
      for (const part of parts) {
        hold(part);
        append(lines, take());
      }
      hold(last);
      return lines;
    },
    end: () => (length === 0 ? [] : take()),
  };
}
