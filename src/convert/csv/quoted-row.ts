/**
 * End of a row that holds a quote: the place behind its line ending, or the length of the text where
 * it has not come to an end. A quote opens only at the start of a field and must be followed, when it
 * closes, by a delimiter or the end of the row.
 * @see https://www.rfc-editor.org/rfc/rfc4180 section 2, rules 5 to 7
 */
export function quotedRowEnd(
  text: string,
  start: number,
  delimiter: string,
  ending: string,
): number | 'unclosed-quote' | 'malformed-record' {
  let at = start;
  for (;;) {
    at = quoteStart(text, at);
    if (text[at] === '"') {
      const close = closingQuote(text, at + 1);
      if (close < 0) return 'unclosed-quote';
      at = close + 1;
    } else {
      at = plainFieldEnd(text, at, delimiter, ending);
      if (text[at] === '"') return 'malformed-record';
    }
    if (ending === '\n' && text[at] === '\r' && isLineFeedOrUnknown(text, at + 1)) at += 1;
    if (at >= text.length) return text.length;
    if (text[at] === ending) return at + 1;
    if (text[at] !== delimiter) return 'malformed-record';
    at += 1;
  }
}

/** A spreadsheet writes ="00123" so that a number stays text. */
function quoteStart(text: string, at: number): number {
  return text[at] === '=' && text[at + 1] === '"' ? at + 1 : at;
}

function closingQuote(text: string, from: number): number {
  let at = text.indexOf('"', from);
  while (at >= 0 && text[at + 1] === '"') at = text.indexOf('"', at + 2);
  return at;
}

/** First delimiter, line ending or quote. */
function plainFieldEnd(text: string, from: number, delimiter: string, ending: string): number {
  let at = from;
  for (; at < text.length; at += 1) {
    const mark = text[at];
    if (mark === delimiter || mark === ending || mark === '"') break;
  }
  return at;
}

function isLineFeedOrUnknown(text: string, at: number): boolean {
  return at >= text.length || text[at] === '\n';
}
