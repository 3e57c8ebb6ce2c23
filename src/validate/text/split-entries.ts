import type { TextPosition } from '../../data/text-position.ts';

/** One member of `entry`, as it is written. */
export interface EntryText {
  /** From 0. */
  readonly number: number;
  readonly text: string;
  /** Where it begins in the whole text. */
  readonly start: TextPosition;
}

/** The text around the entries, with 0 in place of each, so that its own faults can be told. */
export interface Frame {
  readonly text: string;
  /** Where a place of this text stands in the whole one. */
  readonly inWhole: (position: TextPosition) => TextPosition;
}

/** An entry, or the text around them, is longer than a text may be. */
export class TooLong extends Error {}

/**
 * Cuts the JSON text of a bundle into its entries as it comes; one entry is held at a time. Faults of
 * the JSON stay in the pieces, where those who read them find them.
 * @throws TooLong
 */
export async function* splitEntries(
  chunks: Iterable<string> | AsyncIterable<string>,
  most: number,
): AsyncGenerator<EntryText, Frame, undefined> {
  const splitter = new Splitter(most);
  for await (const chunk of chunks) yield* splitter.take(chunk);
  return splitter.frame();
}

const feed = 0x0a;
const [quote, backslash, comma, colon] = [0x22, 0x5c, 0x2c, 0x3a];
const [openBracket, closeBracket, openBrace, closeBrace] = [0x5b, 0x5d, 0x7b, 0x7d];

function isSpace(code: number): boolean {
  return code === 0x20 || code === feed || code === 0x0d || code === 0x09;
}

/** Depth of the members of `entry`: in the list in the object. */
const depthOfMembers = 2;

class Splitter {
  readonly #most: number;
  #depth = 0;
  #inText = false;
  #escaped = false;
  /** The last text in the outermost object, which names a property where a colon follows. */
  #name = '';
  #property = '';
  #inEntries = false;
  /** The entry that is read, or undefined between entries. */
  #pieces: string[] | undefined;
  #length = 0;
  #start: TextPosition = { line: 1, column: 1 };
  #count = 0;
  #line = 1;
  /** The chunk that is taken, and from where on it is not kept yet. */
  #chunk = '';
  #from = 0;
  #nameFrom = 0;
  #lineStart = 0;
  /** Characters of the current line in earlier chunks. */
  #before = 0;
  readonly #around: string[] = [];
  #aroundLength = 0;
  #aroundColumn = 0;
  readonly #cuts: { line: number; column: number; whole: number }[] = [];

  constructor(most: number) {
    this.#most = most;
  }

  *take(chunk: string): Generator<EntryText, void, undefined> {
    this.#chunk = chunk;
    this.#from = 0;
    this.#nameFrom = 0;
    this.#lineStart = -this.#before;
    for (let at = 0; at < chunk.length; at++) {
      const code = chunk.charCodeAt(at);
      if (code === feed) this.#newLine(at);
      if (this.#inText) {
        this.#textGoesOn(code, at);
      } else if (!isSpace(code)) {
        if (this.#endsEntry(code)) yield this.#entry(at);
        if (this.#beginsEntry(code)) this.#begin(at);
        this.#mark(code, at);
      }
    }
    if (this.#inText && this.#depth === 1) this.#name += chunk.slice(this.#nameFrom);
    this.#before = chunk.length - this.#lineStart;
    this.#keep(chunk.slice(this.#from));
  }

  #newLine(at: number): void {
    this.#line += 1;
    this.#lineStart = at + 1;
  }

  #textGoesOn(code: number, at: number): void {
    if (this.#escaped) {
      this.#escaped = false;
    } else if (code === backslash) {
      this.#escaped = true;
    } else if (code === quote) {
      this.#inText = false;
      if (this.#depth === 1) this.#name += this.#chunk.slice(this.#nameFrom, at);
    }
  }

  #betweenEntries(): boolean {
    return this.#inEntries && this.#depth === depthOfMembers;
  }

  #beginsEntry(code: number): boolean {
    const separates = code === comma || code === closeBracket;
    return this.#betweenEntries() && this.#pieces === undefined && !separates;
  }

  #endsEntry(code: number): boolean {
    const separates = code === comma || code === closeBracket;
    return this.#betweenEntries() && this.#pieces !== undefined && separates;
  }

  #begin(at: number): void {
    const around = this.#chunk.slice(this.#from, at);
    this.#around.push(around);
    this.#pass(around);
    this.#from = at;
    this.#pieces = [];
    this.#start = { line: this.#line, column: at - this.#lineStart + 1 };
  }

  #mark(code: number, at: number): void {
    switch (code) {
      case quote:
        this.#inText = true;
        this.#name = '';
        this.#nameFrom = at + 1;
        break;
      case colon:
        if (this.#depth === 1) this.#property = this.#name;
        break;
      case openBracket:
      case openBrace:
        this.#depth += 1;
        if (this.#depth === depthOfMembers)
          this.#inEntries = code === openBracket && this.#property === 'entry';
        break;
      case closeBracket:
      case closeBrace:
        this.#depth -= 1;
        if (this.#depth < depthOfMembers) this.#inEntries = false;
    }
  }

  /** The rest of a chunk belongs to the entry that is read, or stands around the entries. */
  #keep(rest: string): void {
    if (this.#pieces === undefined) {
      this.#around.push(rest);
      this.#pass(rest);
    } else {
      this.#pieces.push(rest);
      this.#length += rest.length;
    }
    if (this.#length > this.#most || this.#aroundLength > this.#most) throw new TooLong();
  }

  /** Counts the lines of what stands around the entries. */
  #pass(text: string): void {
    this.#aroundLength += text.length;
    const last = text.lastIndexOf('\n');
    this.#aroundColumn = last === -1 ? this.#aroundColumn + text.length : text.length - last - 1;
  }

  #entry(at: number): EntryText {
    const pieces = this.#pieces ?? [];
    pieces.push(this.#chunk.slice(this.#from, at));
    this.#from = at;
    const text = pieces.join('');
    this.#pieces = undefined;
    this.#length = 0;
    // As many lines as the entry has, so that lines are the same in both texts.
    const lines = this.#line - this.#start.line;
    const stand = `0${'\n'.repeat(lines)}`;
    this.#around.push(stand);
    this.#pass(stand);
    this.#cuts.push({
      line: this.#line,
      column: this.#aroundColumn + 1,
      whole: at - this.#lineStart + 1,
    });
    const number = this.#count;
    this.#count += 1;
    return { number, text, start: this.#start };
  }

  frame(): Frame {
    // What was cut off stays, so that the fault is found where it is.
    const open = this.#pieces?.join('') ?? '';
    const cuts = this.#cuts;
    return {
      text: this.#around.join('') + open,
      inWhole: ({ line, column }) => {
        const cut = lastBefore(cuts, line, column);
        const shift = cut?.line === line ? cut.whole - cut.column : 0;
        return { line, column: column + shift };
      },
    };
  }
}

/** The last cut at or before a position; they stand in the order of the text. */
function lastBefore<Cut extends TextPosition>(
  cuts: readonly Cut[],
  line: number,
  column: number,
): Cut | undefined {
  let [low, high] = [0, cuts.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    const cut = cuts[middle];
    const before = cut && (cut.line < line || (cut.line === line && cut.column <= column));
    if (before === true) low = middle + 1;
    else high = middle;
  }
  return cuts[low - 1];
}
