/** What stands between two places of an XML text. Names are as written, with their prefix. */
export type TokenKind =
  | 'text'
  | 'start'
  | 'empty'
  | 'end'
  | 'comment'
  | 'cdata'
  | 'instruction'
  | 'doctype'
  | 'broken';

export interface Token {
  readonly kind: TokenKind;
  /** Where the next token begins. */
  readonly end: number;
  /** Of start, empty and end tags. */
  readonly name?: string;
  /** Of start and empty tags. */
  readonly attributes?: number;
}

/** A piece of XML text that is being read. */
export interface TokenText {
  readonly text: string;
  /** No more text will follow. */
  readonly last: boolean;
  /** Where each mark was last found, so that no part of the text is searched twice for it. */
  readonly found: Map<string, number>;
}

/**
 * Reads the token at `from`, or undefined when the text ends before the token does. Only finds where
 * tokens end and counts; well-formedness is for `readXml`. Each kind is found by one forward search,
 * and a tag never runs past the next `<`, so reading a whole text is linear.
 */
export function tokenAt(piece: TokenText, from: number): Token | undefined {
  const { text, last } = piece;
  if (text.charAt(from) !== '<') return textToken(text, from);
  // Nearly all are tags, which begin with neither mark.
  const mark = text.charAt(from + 1);
  if (mark !== '!' && mark !== '?' && mark !== '') return tagToken(text, from, last);
  for (const [open, close, kind] of sections) {
    if (text.startsWith(open, from)) return sectionToken(piece, from + open.length, close, kind);
    // `<!` and `<![CDA` may be the first half of a longer mark.
    if (!last && open.startsWith(text.slice(from, from + open.length))) return undefined;
  }
  if (text.startsWith('<!', from)) return doctypeToken(piece, from);
  return tagToken(text, from, last);
}

const sections: readonly (readonly [open: string, close: string, kind: TokenKind])[] = [
  ['<!--', '-->', 'comment'],
  ['<![CDATA[', ']]>', 'cdata'],
  ['<?', '?>', 'instruction'],
];

function textToken(text: string, from: number): Token {
  const next = text.indexOf('<', from);
  return { kind: 'text', end: next === -1 ? text.length : next };
}

function sectionToken(
  piece: TokenText,
  from: number,
  close: string,
  kind: TokenKind,
): Token | undefined {
  const at = nextPlace(piece, close, from);
  // A comment in which another begins has lost its end (XML 1.0, 2.5: no `--` inside), unless the
  // dashes of what looks like a beginning are those of the end: `<!-- <!-->`.
  if (kind === 'comment' && nextPlace(piece, '<!--', from) + '<!'.length < at) {
    return at === Number.POSITIVE_INFINITY && !piece.last
      ? undefined
      : { kind: 'broken', end: nextPlace(piece, '<', from) };
  }
  return at === Number.POSITIVE_INFINITY ? undefined : { kind, end: at + close.length };
}

/** The next place of a mark, or infinity. Places are asked for from the start of the text to its end. */
function nextPlace({ text, found }: TokenText, mark: string, from: number): number {
  const known = found.get(mark);
  if (known !== undefined && known >= from) return known;
  const at = text.indexOf(mark, from);
  const place = at === -1 ? Number.POSITIVE_INFINITY : at;
  found.set(mark, place);
  return place;
}

const slash = 0x2f;
const greater = 0x3e;
const quote = 0x22;
const apostrophe = 0x27;

/** A `<` cannot stand inside a tag (https://www.w3.org/TR/xml/#NT-AttValue), so it ends a broken one. */
function tagToken(text: string, from: number, last: boolean): Token | undefined {
  const next = text.indexOf('<', from + 1);
  if (next === -1 && !last && !text.includes('>', from)) return undefined;
  const stop = next === -1 ? text.length : next;
  const close = tagClose(text, from + 1, stop);
  if (close === undefined) {
    return next === -1 && !last ? undefined : { kind: 'broken', end: stop };
  }
  const ends = text.charCodeAt(from + 1) === slash;
  const name = nameAt(text, from + (ends ? 2 : 1), close.at);
  if (name === '') return { kind: 'broken', end: stop };
  if (ends) return { kind: 'end', end: close.at + 1, name };
  const kind = text.charCodeAt(close.at - 1) === slash ? 'empty' : 'start';
  return { kind, end: close.at + 1, name, attributes: close.quoted };
}

/** What stands before white space, a slash or the end of the tag. */
function nameAt(text: string, from: number, stop: number): string {
  let at = from;
  for (; at < stop; at++) {
    const code = text.charCodeAt(at);
    if (code === slash || code === 0x20 || (code >= 9 && code <= 13)) break;
  }
  return text.slice(from, at);
}

interface TagClose {
  readonly at: number;
  readonly quoted: number;
}

/** The `>` outside quotes, and how many quoted values stand before it. */
function tagClose(text: string, from: number, stop: number): TagClose | undefined {
  let quoted = 0;
  for (let at = from; at < stop; at++) {
    const mark = text.charCodeAt(at);
    if (mark === greater) return { at, quoted };
    if (mark !== quote && mark !== apostrophe) continue;
    at = text.indexOf(mark === quote ? '"' : "'", at + 1);
    if (at === -1 || at >= stop) return undefined;
    quoted += 1;
  }
  return undefined;
}

/** A document type with its internal subset, found but never read. */
function doctypeToken(piece: TokenText, from: number): Token | undefined {
  if (piece.found.has('doctype')) return undefined;
  const { text } = piece;
  let depth = 0;
  for (let at = from + 2; at < text.length; at++) {
    const mark = text.charAt(at);
    if (mark === '>' && depth <= 0) return { kind: 'doctype', end: at + 1 };
    if (mark === '[') depth += 1;
    else if (mark === ']') depth -= 1;
    else at = pastQuoted(text, at);
  }
  piece.found.set('doctype', Number.POSITIVE_INFINITY);
  return undefined;
}

/** The last place of the literal or comment that begins at `at`, or `at` where none begins. */
function pastQuoted(text: string, at: number): number {
  const mark = text.charAt(at);
  if (mark !== '"' && mark !== "'" && !text.startsWith('<!--', at)) return at;
  const close = mark === '<' ? '-->' : mark;
  const found = text.indexOf(close, at + (mark === '<' ? 4 : 1));
  return found === -1 ? text.length : found + close.length - 1;
}
