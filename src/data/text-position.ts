/** Line and column from 1; a column counts UTF-16 units. */
export interface TextPosition {
  readonly line: number;
  readonly column: number;
}

/**
 * Tells positions in a text. It remembers the last one, so that places asked for in their order cost
 * one pass over the text, however many they are.
 */
export function positionsIn(text: string): (at: number) => TextPosition {
  let line = 1;
  let start = 0;
  let feed = text.indexOf('\n');
  return (at) => {
    if (at < start) {
      line = 1;
      start = 0;
      feed = text.indexOf('\n');
    }
    while (feed !== -1 && feed < at) {
      line += 1;
      start = feed + 1;
      feed = text.indexOf('\n', start);
    }
    return { line, column: at - start + 1 };
  };
}
