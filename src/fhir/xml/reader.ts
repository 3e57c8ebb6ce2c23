import { hasErrors, type Issue, issue, type Outcome } from '../../issue.ts';
import { plainDataIssues } from '../../plain-data.ts';
import { positionsIn, type TextPosition } from '../text-position.ts';
import { resolveReferences } from './references.ts';

export interface XmlLimits {
  /** UTF-16 units of the text. Default 100 million. */
  readonly characters?: number;
  /** Levels of elements; the root is 1. Default 200. */
  readonly depth?: number;
  /** Elements in the whole text. Default 5 million. */
  readonly elements?: number;
}

export interface XmlElement {
  /** Without its prefix. */
  readonly name: string;
  readonly namespace: string;
  /** As written, those that declare namespaces included. */
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: readonly XmlElement[];
  /** Where text other than white space first stands in it; -1 where there is none. */
  readonly textAt: number;
  readonly start: number;
  readonly end: number;
}

/** An XML text with its root element and the way from offsets to lines. */
export interface XmlText {
  readonly root: XmlElement;
  readonly position: (at: number) => TextPosition;
}

/**
 * The elements of an XML text. Comments and processing instructions are passed over. A document type
 * is refused, so that there are no entities but the five of XML, and nothing outside is ever read.
 * @see https://www.w3.org/TR/xml/ and https://www.w3.org/TR/xml-names/
 */
export function readXml(text: string, limits: XmlLimits = {}): Outcome<XmlText> {
  const { characters = 100_000_000, depth = 200, elements = 5_000_000 } = limits;
  if (text.length > characters) {
    return { issues: [tooLarge(`at most ${characters} characters`)] };
  }
  const unfit = plainDataIssues(text, { depth: 1, values: 1 });
  if (hasErrors(unfit)) return { issues: unfit };
  const position = positionsIn(text);
  // A byte order mark may stand first; it is no part of the document.
  const at = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  const cursor: Cursor = { text, at, open: [], depth, left: elements, root: undefined, position };
  try {
    if (text.startsWith('<?xml', at)) skipPast(cursor, '?>', 'the end of the XML declaration');
    while (cursor.at < text.length) readNext(cursor);
    if (cursor.open.length > 0 || cursor.root === undefined) fail(cursor, 'a closing tag');
    return { value: { root: cursor.root, position }, issues: [] };
  } catch (thrown) {
    if (thrown instanceof Stop) return { issues: [thrown.issue] };
    throw thrown;
  }
}

/** An element while it is read; it is not copied once it is done. */
interface OpenElement extends XmlElement {
  /** With its prefix. */
  readonly written: string;
  readonly children: OpenElement[];
  /** Namespaces by prefix; the default one under the empty name. */
  readonly scope: ReadonlyMap<string, string>;
  textAt: number;
  end: number;
}

interface Cursor {
  readonly text: string;
  at: number;
  readonly open: OpenElement[];
  readonly depth: number;
  /** How many more elements may come. */
  left: number;
  root: XmlElement | undefined;
  readonly position: (at: number) => TextPosition;
}

/** Ends the reading: what is not well-formed can not be understood. */
class Stop extends Error {
  readonly issue: Issue;

  constructor(found: Issue) {
    super(found.message);
    this.issue = found;
  }
}

function readNext(cursor: Cursor): void {
  const { text, at } = cursor;
  if (text.charAt(at) !== '<') {
    readText(cursor);
    return;
  }
  if (text.startsWith('</', at)) {
    readEnd(cursor);
    return;
  }
  if (text.startsWith('<!--', at)) {
    readComment(cursor);
    return;
  }
  if (text.startsWith('<?', at)) {
    readInstruction(cursor);
    return;
  }
  if (text.startsWith('<![CDATA[', at)) {
    readCdata(cursor);
    return;
  }
  if (text.startsWith('<!', at)) {
    const source = cursor.position(at);
    const message = 'a document type declaration is not accepted';
    throw new Stop(issue('forbidden-doctype', [], message, { source }));
  }
  readStart(cursor);
}

function readText(cursor: Cursor): void {
  const { text, at: start } = cursor;
  const next = text.indexOf('<', start);
  cursor.at = next === -1 ? text.length : next;
  const content = text.slice(start, cursor.at);
  const from = content.search(/[^ \t\r\n]/);
  if (from === -1) return;
  addText(cursor, start + from);
  const cdataEnd = content.indexOf(']]>');
  if (cdataEnd !== -1) failAt(cursor, start + cdataEnd, 'no ]]> in text');
  if (resolveReferences(content) === undefined) {
    failAt(cursor, start + content.indexOf('&'), 'only references that XML itself has');
  }
}

function addText(cursor: Cursor, at: number): void {
  const parent = cursor.open.at(-1);
  if (parent === undefined) failAt(cursor, at, 'no text outside the root element');
  if (parent.textAt === -1) parent.textAt = at;
}

function readComment(cursor: Cursor): void {
  const start = cursor.at;
  const end = cursor.text.indexOf('--', start + 4);
  if (end === -1 || cursor.text.charAt(end + 2) !== '>') fail(cursor, 'a comment that ends in -->');
  cursor.at = end + 3;
}

function readInstruction(cursor: Cursor): void {
  if (/^<\?xml[ \t\r\n?]/i.test(cursor.text.slice(cursor.at, cursor.at + 6))) {
    fail(cursor, 'the XML declaration at the start alone');
  }
  skipPast(cursor, '?>', 'the end of a processing instruction');
}

function readCdata(cursor: Cursor): void {
  addText(cursor, cursor.at);
  skipPast(cursor, ']]>', 'the end of a CDATA section');
}

function skipPast(cursor: Cursor, mark: string, expected: string): void {
  const end = cursor.text.indexOf(mark, cursor.at);
  if (end === -1) fail(cursor, expected);
  cursor.at = end + mark.length;
}

const nameStart = 'A-Za-z_\\u00C0-\\uFFFD';
const nameText = `[${nameStart}][${nameStart}0-9.\\u00B7-]*`;
const startTag = new RegExp(`<((?:${nameText}:)?${nameText})`, 'y');
const attribute = new RegExp(
  `[ \\t\\r\\n]+((?:${nameText}:)?${nameText})[ \\t\\r\\n]*=[ \\t\\r\\n]*("[^"<]*"|'[^'<]*')`,
  'y',
);
const tagEnd = /[ \t\r\n]*(\/?)>/y;
const endTag = new RegExp(`</((?:${nameText}:)?${nameText})[ \\t\\r\\n]*>`, 'y');

function matchAt(form: RegExp, { text, at }: Cursor): RegExpExecArray | null {
  form.lastIndex = at;
  return form.exec(text);
}

function readStart(cursor: Cursor): void {
  const start = cursor.at;
  const found = matchAt(startTag, cursor);
  if (found === null) fail(cursor, 'the name of an element');
  if (cursor.root !== undefined) fail(cursor, 'nothing after the root element');
  checkLimits(cursor);
  const [tag, written = ''] = found;
  cursor.at += tag.length;
  const attributes = readAttributes(cursor);
  const end = matchAt(tagEnd, cursor);
  if (end === null) fail(cursor, 'attributes with quoted values, then the end of the tag');
  const scope = scopeOf(cursor.open.at(-1)?.scope ?? outermost, attributes);
  const cut = written.indexOf(':');
  const namespace = scope.get(written.slice(0, Math.max(cut, 0)));
  if (namespace === undefined) failAt(cursor, start, 'a prefix that is declared');
  cursor.at += end[0].length;
  cursor.open.push({
    written,
    name: cut === -1 ? written : written.slice(cut + 1),
    namespace,
    attributes,
    children: [],
    scope,
    start,
    end: start,
    textAt: -1,
  });
  if (end[1] === '/') close(cursor);
}

const outermost: ReadonlyMap<string, string> = new Map([
  ['', ''],
  ['xml', 'http://www.w3.org/XML/1998/namespace'],
]);

function scopeOf(
  outer: ReadonlyMap<string, string>,
  attributes: ReadonlyMap<string, string>,
): ReadonlyMap<string, string> {
  let scope: Map<string, string> | undefined;
  for (const [name, value] of attributes) {
    if (name !== 'xmlns' && !name.startsWith('xmlns:')) continue;
    scope ??= new Map(outer);
    scope.set(name.slice('xmlns:'.length), value);
  }
  return scope ?? outer;
}

function checkLimits(cursor: Cursor): void {
  if (cursor.open.length >= cursor.depth) {
    const details = {
      expected: `at most ${cursor.depth} levels`,
      source: cursor.position(cursor.at),
    };
    throw new Stop(issue('too-deep', [], 'nested too deep', details));
  }
  if (cursor.left === 0) throw new Stop(tooLarge('fewer elements'));
  cursor.left -= 1;
}

function tooLarge(expected: string): Issue {
  return issue('too-large', [], 'the XML text is too large', { expected });
}

const noAttributes: ReadonlyMap<string, string> = new Map();

function readAttributes(cursor: Cursor): ReadonlyMap<string, string> {
  let attributes: Map<string, string> | undefined;
  for (;;) {
    const found = matchAt(attribute, cursor);
    if (found === null) return attributes ?? noAttributes;
    const [whole, name = '', quoted = ''] = found;
    attributes ??= new Map();
    if (attributes.has(name)) fail(cursor, 'each attribute once');
    // White space in an attribute becomes spaces; what is meant to stay is written as a reference.
    // https://www.w3.org/TR/xml/#AVNormalize
    const value = resolveReferences(quoted.slice(1, -1).replace(/\r\n|[\t\r\n]/g, ' '));
    if (value === undefined) fail(cursor, 'only references that XML itself has');
    attributes.set(name, value);
    cursor.at += whole.length;
  }
}

function readEnd(cursor: Cursor): void {
  const found = matchAt(endTag, cursor);
  if (found === null || found[1] !== cursor.open.at(-1)?.written) {
    fail(cursor, 'the closing tag of the element that is open');
  }
  cursor.at += found[0].length;
  close(cursor);
}

function close(cursor: Cursor): void {
  const done = cursor.open.pop();
  if (done === undefined) return;
  done.end = cursor.at;
  const parent = cursor.open.at(-1);
  if (parent === undefined) cursor.root = done;
  else parent.children.push(done);
}

function fail(cursor: Cursor, expected: string): never {
  failAt(cursor, cursor.at, expected);
}

function failAt(cursor: Cursor, at: number, expected: string): never {
  const message = at >= cursor.text.length ? 'the text ends too early' : 'this is no XML';
  const source = cursor.position(at);
  throw new Stop(issue('not-well-formed', [], message, { expected, source }));
}
