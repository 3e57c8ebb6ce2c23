import { spend } from '../issues/budget.ts';
import type { FormWord } from '../issues/forms.ts';
import { forbiddenCharacter, resolveReferences } from './characters.ts';
import { isDeclaration, localName, Namespaces, prefixOf } from './namespaces.ts';
import { type Token, type TokenText, tokenAt } from './tokens.ts';
import type { XmlElement, XmlFault, XmlNode, XmlReading, XmlReadOptions } from './tree.ts';

/**
 * The elements of an XML text, with their places and namespaces: the one reader for FHIR XML, legacy
 * XML and CDA. A document type is refused, so that there are no entities but the five of XML, and
 * nothing outside is ever read. One pass, without recursion; time and memory grow with the text alone.
 * @see https://www.w3.org/TR/xml/ and https://www.w3.org/TR/xml-names/
 */
export function readXml(text: string, options: XmlReadOptions = {}): XmlReading {
  try {
    return new Reading(text, options).read();
  } catch (thrown) {
    if (thrown instanceof Stop) return { fault: thrown.fault };
    throw thrown;
  }
}

/** Ends the reading: what is not well-formed cannot be understood. */
class Stop extends Error {
  readonly fault: XmlFault;

  constructor(fault: XmlFault) {
    super(fault.code);
    this.fault = fault;
  }
}

/** An element while it is read; it is not copied once it is done. */
interface OpenElement extends XmlElement {
  /** Most elements hold none and share one empty list. */
  children: XmlElement[];
  content: XmlNode[];
  textAt: number;
  end: number;
}

const nothing: never[] = [];

const nameStart = 'A-Za-z_\\u00C0-\\uFFFD';
const nameText = `[${nameStart}][${nameStart}0-9.\\u00B7-]*`;
const startTag = new RegExp(`<((?:${nameText}:)?${nameText})`, 'y');
const attribute = new RegExp(
  `[ \\t\\r\\n]+((?:${nameText}:)?${nameText})[ \\t\\r\\n]*=[ \\t\\r\\n]*("[^"<]*"|'[^'<]*')`,
  'y',
);
const tagEnd = /[ \t\r\n]*\/?>/y;
const endTag = new RegExp(`</((?:${nameText}:)?${nameText})[ \\t\\r\\n]*>`, 'y');

const noAttributes: ReadonlyMap<string, string> = new Map();

class Reading {
  readonly #text: string;
  readonly #piece: TokenText;
  readonly #content: boolean;
  readonly #lenient: boolean;
  readonly #characters: number;
  readonly #depth: number;
  readonly #elements: number;
  readonly #namespaces = new Namespaces();
  readonly #open: OpenElement[] = [];
  /** Prefixes that each of the open elements declares. */
  readonly #declared: (readonly string[])[] = [];
  readonly #instructions: number[] = [];
  #read = 0;
  #unknown = 0;
  #root: XmlElement | undefined;

  constructor(text: string, options: XmlReadOptions) {
    this.#text = text;
    this.#piece = { text, last: true, found: new Map() };
    this.#content = options.content ?? false;
    this.#lenient = options.lenient ?? false;
    this.#characters = options.characters ?? 100_000_000;
    this.#depth = options.depth ?? 200;
    this.#elements = options.elements ?? 5_000_000;
    this.#namespaces.enter(options.around ?? noAttributes);
  }

  read(): XmlReading {
    const text = this.#text;
    if (text.length > this.#characters) this.#tooLarge('xml', this.#characters);
    const bad = forbiddenCharacter(text);
    if (bad !== -1) {
      const unit = text.charCodeAt(bad);
      const reason = unit >= 0xd800 && unit <= 0xdfff ? 'surrogate' : 'character';
      const character = `U+${unit.toString(16).toUpperCase().padStart(4, '0')}`;
      throw new Stop({ code: 'invalid-unicode', facts: { reason, character }, at: bad });
    }
    // A byte order mark may stand first; it is not part of the document.
    const first = text.charCodeAt(0) === 0xfeff ? 1 : 0;
    for (let at = first; at < text.length; ) {
      const token = tokenAt(this.#piece, at) ?? this.#broken(at);
      spend(1);
      this.#take(token, at, first);
      at = token.end;
    }
    if (this.#open.length > 0 || this.#root === undefined)
      this.#fail(text.length, 'xml-closing-tag');
    const instructions = this.#instructions;
    return { root: this.#root, unknownReferences: this.#unknown, instructions };
  }

  #take(token: Token, at: number, first: number): void {
    switch (token.kind) {
      case 'text':
        this.#takeText(at, token.end);
        break;
      case 'start':
      case 'empty':
        this.#start(at, token);
        break;
      case 'end':
        this.#end(at, token.end);
        break;
      case 'comment':
        if (this.#text.indexOf('--', at + 4) !== token.end - 3) this.#comment(at);
        this.#keep(() => ({ comment: this.#text.slice(at + 4, token.end - 3) }));
        break;
      case 'cdata':
        this.#addText(at);
        this.#keep(() => ({ text: withLineFeeds(this.#text.slice(at + 9, token.end - 3)) }));
        break;
      case 'instruction':
        this.#instruction(at, token.end, first);
        break;
      case 'doctype':
        this.#doctype(at);
        break;
      case 'broken':
        this.#broken(at);
    }
  }

  #keep(node: () => XmlNode): void {
    const parent = this.#open.at(-1);
    if (!this.#content || parent === undefined) return;
    if (parent.content.length === 0) parent.content = [node()];
    else parent.content.push(node());
  }

  #takeText(start: number, end: number): void {
    const from = afterSpace(this.#text, start, end);
    if (from === end) {
      this.#keep(() => ({ text: withLineFeeds(this.#text.slice(start, end)) }));
      return;
    }
    this.#addText(from);
    const raw = this.#text.slice(start, end);
    const cdataEnd = raw.indexOf(']]>');
    if (cdataEnd !== -1) this.#fail(start + cdataEnd, 'xml-no-cdata-end');
    const text = this.#resolved(this.#content ? withLineFeeds(raw) : raw, start + raw.indexOf('&'));
    this.#keep(() => ({ text }));
  }

  #addText(at: number): void {
    const parent = this.#open.at(-1);
    if (parent === undefined) this.#fail(at, 'xml-no-outside-text');
    if (parent.textAt === -1) parent.textAt = at;
  }

  #resolved(raw: string, at: number): string {
    const { text, unknown } = resolveReferences(raw);
    if (unknown > 0 && !this.#lenient) this.#fail(at, 'xml-references');
    this.#unknown += unknown;
    return text;
  }

  #instruction(at: number, end: number, first: number): void {
    const text = this.#text;
    if (/^<\?xml[ \t\r\n?]/i.test(text.slice(at, at + 6))) {
      if (at !== first || !text.startsWith('<?xml', at)) {
        this.#fail(at, 'xml-declaration');
      }
      return;
    }
    this.#instructions.push(at);
    this.#keep(() => ({ instruction: text.slice(at + 2, end - 2) }));
  }

  #start(start: number, { end, kind }: Token): void {
    const found = matchAt(startTag, this.#text, start);
    if (found === null) this.#fail(start, 'xml-element-name');
    if (this.#root !== undefined) this.#fail(start, 'xml-one-root');
    this.#checkLimits(start);
    const [tag, written = ''] = found;
    const { attributes, at } = this.#attributes(start + tag.length);
    const close = matchAt(tagEnd, this.#text, at);
    if (close === null || at + close[0].length !== end) {
      this.#fail(at, 'xml-attributes');
    }
    this.#declared.push(this.#namespaces.enter(attributes));
    const namespace = this.#namespaces.of(prefixOf(written)) ?? this.#undeclared(start);
    this.#open.push({
      written,
      name: localName(written),
      namespace,
      attributes,
      attributeNamespaces: this.#attributeNamespaces(attributes),
      children: nothing,
      content: nothing,
      start,
      end: start,
      textAt: -1,
    });
    if (kind === 'empty') this.#close(end);
  }

  #undeclared(at: number): string {
    if (!this.#lenient) this.#fail(at, 'xml-declared-prefix');
    return '';
  }

  #attributes(from: number): { attributes: ReadonlyMap<string, string>; at: number } {
    let attributes: Map<string, string> | undefined;
    let at = from;
    for (;;) {
      const found = matchAt(attribute, this.#text, at);
      if (found === null) return { attributes: attributes ?? noAttributes, at };
      const [whole, name = '', quoted = ''] = found;
      attributes ??= new Map();
      if (attributes.has(name)) this.#fail(at, 'xml-attribute-once');
      // White space in an attribute becomes spaces; what is meant to stay is written as a reference.
      // https://www.w3.org/TR/xml/#AVNormalize
      const raw = quoted.slice(1, -1).replace(/\r\n|[\t\r\n]/g, ' ');
      attributes.set(name, this.#resolved(raw, at));
      at += whole.length;
    }
  }

  #attributeNamespaces(attributes: ReadonlyMap<string, string>): ReadonlyMap<string, string> {
    let found: Map<string, string> | undefined;
    for (const name of attributes.keys()) {
      const prefix = prefixOf(name);
      if (prefix === '' || isDeclaration(name)) continue;
      const namespace = this.#namespaces.of(prefix);
      if (namespace === undefined) continue;
      found ??= new Map();
      found.set(name, namespace);
    }
    return found ?? noAttributes;
  }

  #end(at: number, end: number): void {
    const found = matchAt(endTag, this.#text, at);
    if (found === null || found[1] !== this.#open.at(-1)?.written) {
      this.#fail(at, 'xml-matching-tag');
    }
    this.#close(end);
  }

  #close(end: number): void {
    const done = this.#open.pop();
    if (done === undefined) return;
    this.#namespaces.leave(this.#declared.pop() ?? nothing);
    done.end = end;
    const parent = this.#open.at(-1);
    if (parent === undefined) {
      this.#root = done;
      return;
    }
    if (parent.children.length > 0) parent.children.push(done);
    else parent.children = [done];
    if (this.#content) this.#keep(() => done);
    else parent.content = parent.children;
  }

  #checkLimits(at: number): void {
    if (this.#open.length >= this.#depth) {
      const facts = { reason: 'levels', maximum: this.#depth } as const;
      throw new Stop({ code: 'too-deep', facts, at });
    }
    this.#read += 1;
    if (this.#read > this.#elements) this.#tooLarge('xml-elements', this.#elements);
  }

  #tooLarge(reason: 'xml' | 'xml-elements', maximum: number): never {
    throw new Stop({ code: 'too-large', facts: { reason, maximum }, at: -1 });
  }

  #doctype(at: number): never {
    throw new Stop({ code: 'forbidden-doctype', facts: { reason: 'xml' }, at });
  }

  #comment(at: number): never {
    this.#fail(at, 'xml-comment-end');
  }

  /** What stands at a place where no token can be read. */
  #broken(at: number): never {
    const text = this.#text;
    if (text.startsWith('<!--', at)) this.#comment(at);
    if (text.startsWith('<![CDATA[', at)) this.#fail(at, 'xml-cdata-end');
    if (text.startsWith('<?', at)) this.#fail(at, 'xml-instruction-end');
    if (text.startsWith('<!', at)) this.#doctype(at);
    return this.#fail(at, 'xml-tag');
  }

  #fail(at: number, form: FormWord): never {
    const reason = at >= this.#text.length ? 'ends-early' : 'syntax';
    throw new Stop({ code: 'not-well-formed', facts: { reason, form }, at });
  }
}

/** Place of the first character from `from` on that is not white space, or `end`. */
function afterSpace(text: string, from: number, end: number): number {
  let at = from;
  for (; at < end; at++) {
    const code = text.charCodeAt(at);
    if (code !== 0x20 && code !== 0x0a && code !== 0x09 && code !== 0x0d) break;
  }
  return at;
}

/** @see https://www.w3.org/TR/xml/#sec-line-ends */
function withLineFeeds(text: string): string {
  return text.includes('\r') ? text.replace(/\r\n?/g, '\n') : text;
}

function matchAt(form: RegExp, text: string, at: number): RegExpExecArray | null {
  form.lastIndex = at;
  return form.exec(text);
}
