import { resolveReferences } from '../../xml/characters.ts';
import { localName } from '../../xml/namespaces.ts';
import { type Token, type TokenText, tokenAt } from '../../xml/tokens.ts';

/** What is made of the elements of a part of a workbook. Names are without prefix. */
export interface MarkupUser {
  readonly start: (name: string, attribute: (name: string) => string | undefined) => void;
  readonly end: (name: string) => void;
  readonly text: (text: string) => void;
}

/** The part is no XML that can be read on. */
export class MarkupFault extends Error {
  readonly code = 'MARKUP_FAULT';
}

/** Characters of one token: a cell holds 32,767. */
const LONGEST_TOKEN = 1 << 20;
const DEEPEST = 100;

const LESS = 0x3c;
const SLASH = 0x2f;

/**
 * Reads XML that comes in pieces, with no more than a token held. A document type, an entity of one, and
 * markup that is not well-formed end the reading with a {@link MarkupFault}.
 */
export class Markup {
  readonly #user: MarkupUser;
  readonly #open: string[] = [];
  #pending = '';
  #begun = false;

  constructor(user: MarkupUser) {
    this.#user = user;
  }

  push(piece: string): void {
    this.#pending += piece;
    this.#take(false);
  }

  end(): void {
    this.#take(true);
    if (!this.#begun || this.#open.length > 0) throw new MarkupFault('the part ends too early');
  }

  #take(last: boolean): void {
    const text = this.#pending;
    const piece: TokenText = { text, last, found: new Map() };
    let from = 0;
    while (from < text.length) {
      const end = this.#takeOne(piece, from);
      if (end === undefined) break;
      from = end;
    }
    this.#pending = text.slice(from);
    if (this.#pending.length > LONGEST_TOKEN) throw new MarkupFault('a token is too long');
  }

  /** End of the token that begins here; undefined where the rest of it may come with the next piece. */
  #takeOne(piece: TokenText, from: number): number | undefined {
    const { text, last } = piece;
    // Texts and end tags are most of a sheet, and need no more than a search for their end.
    if (text.charCodeAt(from) !== LESS) {
      const next = text.indexOf('<', from);
      // A reference may be cut in two.
      if (next === -1 && !last) return undefined;
      const end = next === -1 ? text.length : next;
      if (this.#open.length > 0) this.#user.text(resolved(text.slice(from, end)));
      return end;
    }
    if (text.charCodeAt(from + 1) === SLASH) {
      const close = text.indexOf('>', from);
      if (close === -1 && !last) return undefined;
      this.#close(text.slice(from + 2, close === -1 ? text.length : close));
      return close + 1;
    }
    const token = tokenAt(piece, from);
    if (token === undefined && last) throw new MarkupFault('a token has no end');
    if (token !== undefined) this.#use(token, text, from);
    return token?.end;
  }

  #close(name: string): void {
    if (this.#open.pop() !== name.trimEnd()) throw new MarkupFault('elements cross');
    this.#user.end(localName(name.trimEnd()));
  }

  #use(token: Token, text: string, from: number): void {
    switch (token.kind) {
      case 'start':
      case 'empty': {
        const name = token.name ?? '';
        const local = localName(name);
        const tag = text.slice(from, token.end);
        this.#begun = true;
        this.#user.start(local, (wanted) => attributeIn(tag, wanted));
        if (token.kind === 'empty') this.#user.end(local);
        else this.#open.push(name);
        if (this.#open.length > DEEPEST) throw new MarkupFault('elements are too deep');
        return;
      }
      case 'cdata':
        this.#user.text(text.slice(from + '<![CDATA['.length, token.end - ']]>'.length));
        return;
      case 'comment':
      case 'instruction':
        return;
      default:
        throw new MarkupFault(`a ${token.kind} token`);
    }
  }
}

const patterns = new Map<string, RegExp>();

/** The attribute of this local name; a prefix such as that of `r:id` is not looked at. */
function attributeIn(tag: string, name: string): string | undefined {
  let pattern = patterns.get(name);
  if (pattern === undefined) {
    pattern = new RegExp(`\\s(?:[\\w.-]+:)?${name}\\s*=\\s*(?:"([^"]*)"|'([^']*)')`);
    patterns.set(name, pattern);
  }
  const found = pattern.exec(tag);
  return found === null ? undefined : resolved(found[1] ?? found[2] ?? '');
}

function resolved(raw: string): string {
  const { text, unknown } = resolveReferences(raw);
  if (unknown > 0) throw new MarkupFault('an entity that no document type may declare here');
  return text;
}
