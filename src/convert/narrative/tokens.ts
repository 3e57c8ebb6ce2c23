import { folded } from '../../find/fold.ts';

/** A word or number of a text. */
export interface Token {
  readonly text: string;
  /** As words are compared. */
  readonly low: string;
  readonly start: number;
  readonly end: number;
  /** A full stop stands directly behind it. */
  readonly point: boolean;
  /** What stands between the word before and this one. */
  readonly gap: string;
}

/** The words of a piece of a text, with their places in the whole. */
export function tokensIn(text: string, start = 0, end = text.length): readonly Token[] {
  const tokens: Token[] = [];
  const word = /\p{N}+(?:[.,]\p{N}+)?|\p{L}[\p{L}\p{N}\p{M}]*(?:[-'’][\p{L}\p{N}]+)*/gu;
  word.lastIndex = start;
  let from = start;
  for (let found = word.exec(text); found !== null; found = word.exec(text)) {
    const [piece] = found;
    if (found.index + piece.length > end) break;
    const last = found.index + piece.length;
    tokens.push({
      text: piece,
      low: folded(piece),
      start: found.index,
      end: last,
      point: text[last] === '.',
      gap: text.slice(from, found.index),
    });
    from = last;
  }
  return tokens;
}
