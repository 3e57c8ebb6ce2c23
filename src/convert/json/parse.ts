/** A value of JSON with its place. Numbers and literals are kept as they are written. */
export type JsonNode =
  | JsonObject
  | { readonly kind: 'array'; readonly at: number; readonly nodes: readonly JsonNode[] }
  | { readonly kind: 'text'; readonly at: number; readonly text: string }
  | { readonly kind: 'null'; readonly at: number };

export interface JsonObject {
  readonly kind: 'object';
  readonly at: number;
  readonly entries: readonly JsonEntry[];
}

export interface JsonEntry {
  readonly name: string;
  readonly node: JsonNode;
}

/** Why a text is not JSON, and where that was seen. */
export interface JsonFault {
  readonly fault: 'malformed' | 'duplicate' | 'too-deep';
  readonly at: number;
}

/** Levels of objects and lists of one exam. */
export const MOST_LEVELS = 200;

const token =
  /[ \t\r\n]*(?:([{}[\],:])|(")|(-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null)(?![\w.+-]))/y;

/**
 * Reads one JSON text. An object that names a property twice is a fault, since one of the two would be
 * lost.
 * @see https://www.rfc-editor.org/rfc/rfc8259
 */
export function parseJson(text: string): JsonNode | JsonFault {
  const reader = new JsonText(text);
  try {
    return reader.whole();
  } catch (thrown) {
    if (thrown instanceof Stop) return { fault: thrown.fault, at: thrown.at };
    throw thrown;
  }
}

export function isFault(read: JsonNode | JsonFault): read is JsonFault {
  return 'fault' in read;
}

class Stop extends Error {
  readonly fault: JsonFault['fault'];
  readonly at: number;

  constructor(fault: JsonFault['fault'], at: number) {
    super(fault);
    this.fault = fault;
    this.at = at;
  }
}

interface Token {
  readonly at: number;
  readonly mark?: string;
  readonly quoted?: string;
  readonly plain?: string;
}

class JsonText {
  readonly #text: string;
  #at = 0;

  constructor(text: string) {
    this.#text = text;
  }

  whole(): JsonNode {
    const node = this.#value(this.#next(), 1);
    if (this.#text.slice(this.#at).trim() !== '') throw new Stop('malformed', this.#at);
    return node;
  }

  #next(): Token {
    token.lastIndex = this.#at;
    const found = token.exec(this.#text);
    if (found === null) throw new Stop('malformed', this.#at);
    const [whole, mark, quote, plain] = found;
    const at = this.#at + whole.length - whole.trimStart().length;
    this.#at = token.lastIndex;
    if (quote !== undefined) return { at, quoted: this.#string(at) };
    return { at, ...(mark !== undefined && { mark }), ...(plain !== undefined && { plain }) };
  }

  /** The string that begins at a quote, without its escapes. */
  #string(start: number): string {
    let end = this.#text.indexOf('"', start + 1);
    while (end !== -1 && this.#isEscaped(end)) end = this.#text.indexOf('"', end + 1);
    if (end === -1) throw new Stop('malformed', start);
    this.#at = end + 1;
    try {
      return String(JSON.parse(this.#text.slice(start, end + 1)));
    } catch {
      throw new Stop('malformed', start);
    }
  }

  #isEscaped(at: number): boolean {
    let first = at;
    while (this.#text[first - 1] === '\\') first -= 1;
    return (at - first) % 2 === 1;
  }

  #value({ at, mark, quoted, plain }: Token, level: number): JsonNode {
    if (quoted !== undefined) return { kind: 'text', at, text: quoted };
    if (plain === 'null') return { kind: 'null', at };
    if (plain !== undefined) return { kind: 'text', at, text: plain };
    if (level > MOST_LEVELS) throw new Stop('too-deep', at);
    if (mark === '{') return { kind: 'object', at, entries: this.#entries(level) };
    if (mark === '[') return { kind: 'array', at, nodes: this.#nodes(level) };
    throw new Stop('malformed', at);
  }

  #entries(level: number): JsonEntry[] {
    const entries: JsonEntry[] = [];
    const names = new Set<string>();
    for (let one = this.#next(); one.mark !== '}' || entries.length > 0; one = this.#next()) {
      if (one.quoted === undefined) throw new Stop('malformed', one.at);
      const name = one.quoted;
      if (names.has(name)) throw new Stop('duplicate', one.at);
      names.add(name);
      this.#mark(':');
      entries.push({ name, node: this.#value(this.#next(), level + 1) });
      if (this.#ends('}')) break;
    }
    return entries;
  }

  #nodes(level: number): JsonNode[] {
    const nodes: JsonNode[] = [];
    for (let one = this.#next(); one.mark !== ']' || nodes.length > 0; one = this.#next()) {
      nodes.push(this.#value(one, level + 1));
      if (this.#ends(']')) break;
    }
    return nodes;
  }

  /** Whether the list ends here; a comma means that it goes on. */
  #ends(end: string): boolean {
    const { mark, at } = this.#next();
    if (mark !== ',' && mark !== end) throw new Stop('malformed', at);
    return mark === end;
  }

  #mark(wanted: string): void {
    const { mark, at } = this.#next();
    if (mark !== wanted) throw new Stop('malformed', at);
  }
}
