import { XHTML } from '../../fhir/systems.ts';
import type { Severity } from '../../issue.ts';
import { attributes, breaksLine, children, empty, parents } from './xhtml-rules.ts';

export interface XhtmlFault {
  readonly severity: Severity;
  readonly message: string;
  /** Character, from 1, at which it was met. */
  readonly at: number;
  readonly rule: string;
}

/** What was found in the text of a narrative. */
export interface XhtmlReading {
  readonly faults: readonly XhtmlFault[];
  /** Names after `#` in links and images that the narrative itself does not have. */
  readonly outward: readonly string[];
}

interface Reader {
  readonly text: string;
  at: number;
  readonly open: string[];
  readonly faults: XhtmlFault[];
  readonly ids: Set<string>;
  readonly links: Set<string>;
  content: boolean;
}

const txt1 = 'txt-1';
/** One narrative can be wrong at every tag; the first ones tell enough. */
const mostFaults = 20;

/** Ends the reading: what is not well-formed can not be understood. */
class Stop extends Error {}

/**
 * Reads the `div` of a narrative, which must be well-formed XHTML of the elements and attributes that
 * FHIR allows, without scripts or other active content.
 */
export function readXhtml(text: string): XhtmlReading {
  const reader: Reader = {
    text,
    at: 0,
    open: [],
    faults: [],
    ids: new Set(),
    links: new Set(),
    content: false,
  };
  try {
    readDiv(reader);
    if (!reader.content) say(reader, 'the narrative is blank', 'txt-2');
  } catch (thrown) {
    if (!(thrown instanceof Stop)) throw thrown;
  }
  const outward = [...reader.links].filter((name) => !reader.ids.has(name));
  return { faults: reader.faults.slice(0, mostFaults), outward };
}

function readDiv(reader: Reader): void {
  const { text } = reader;
  skip(reader, space);
  if (!/^<div[\s>/]/.test(text.slice(reader.at, reader.at + 5))) {
    stop(reader, 'the text does not begin with a div');
  }
  readTag(reader);
  while (reader.open.length > 0) readContent(reader);
  skip(reader, space);
  if (reader.at < text.length) stop(reader, 'something stands after the div');
}

const space = /[ \t\r\n]*/y;
const plainText = /[^<&]+/y;

function skip(reader: Reader, form: RegExp): string {
  form.lastIndex = reader.at;
  const found = form.exec(reader.text)?.[0] ?? '';
  reader.at += found.length;
  return found;
}

function readContent(reader: Reader): void {
  const { text, at } = reader;
  if (at >= text.length) stop(reader, 'an element is not closed');
  const next = text.charAt(at);
  if (next === '&') {
    readReference(reader);
    addText(reader);
  } else if (next === '<') {
    readMarkup(reader);
  } else if (/[^ \t\r\n]/.test(skip(reader, plainText))) {
    addText(reader);
  }
}

function readMarkup(reader: Reader): void {
  const { text, at } = reader;
  if (text.startsWith('</', at)) {
    closeTag(reader);
  } else if (text.startsWith('<!--', at)) {
    skipPast(reader, '-->', 4);
  } else if (text.startsWith('<![CDATA[', at)) {
    // Many readers drop it, and so it is no content.
    skipPast(reader, ']]>', 9);
  } else if (text.startsWith('<?', at) || text.startsWith('<!', at)) {
    stop(reader, 'a declaration or processing instruction');
  } else {
    readTag(reader);
  }
}

function skipPast(reader: Reader, end: string, start: number): void {
  const at = reader.text.indexOf(end, reader.at + start);
  if (at === -1) stop(reader, `${end} is missing`);
  reader.at = at + end.length;
}

function addText(reader: Reader): void {
  reader.content = true;
  const parent = reader.open.at(-1) ?? '';
  if (children.has(parent) || empty.has(parent)) say(reader, `text directly in a ${parent}`);
}

const reference = /&(?:(?:amp|lt|gt|quot|apos)|#(\d{1,7})|#x([0-9A-Fa-f]{1,6}));/y;

function readReference(reader: Reader): void {
  reference.lastIndex = reader.at;
  const found = reference.exec(reader.text);
  if (found === null) stop(reader, 'an & that begins no reference that XML has');
  if (!isCharacter(found)) say(reader, 'a reference to a character that XML can not hold');
  reader.at += found[0].length;
}

/** @see https://www.w3.org/TR/xml/#charsets */
function isCharacter([, decimal, hex]: RegExpExecArray): boolean {
  if (decimal === undefined && hex === undefined) return true;
  const code = decimal === undefined ? Number.parseInt(hex ?? '', 16) : Number(decimal);
  if (code < 0x20) return code === 0x9 || code === 0xa || code === 0xd;
  return code < 0xd800 || (code > 0xdfff && code < 0xfffe) || (code > 0xffff && code < 0x110000);
}

const tagName = /<([A-Za-z][A-Za-z0-9:._-]*)/y;
const tagEnd = /[ \t\r\n]*(\/?)>/y;

function readTag(reader: Reader): void {
  tagName.lastIndex = reader.at;
  const name = tagName.exec(reader.text)?.[1];
  if (name === undefined) stop(reader, 'a < that begins no tag');
  const misplaced = placeFault(reader, name);
  if (misplaced !== undefined) say(reader, misplaced);
  reader.at += name.length + 1;
  readAttributes(reader, name);
  tagEnd.lastIndex = reader.at;
  const end = tagEnd.exec(reader.text);
  if (end === null) stop(reader, 'a tag that is not well-formed');
  reader.at += end[0].length;
  if (name === 'img') reader.content = true;
  if (end[1] === '') reader.open.push(name);
}

/** What is wrong with an element where it stands. */
function placeFault({ open }: Reader, name: string): string | undefined {
  const parent = open.at(-1) ?? '';
  if (!attributes.has(name)) return 'an element that a narrative can not have';
  const allowed = parents.get(name);
  if (allowed !== undefined && !allowed.has(parent)) {
    return `a ${name} must stand in ${[...allowed].join(' or ')}`;
  }
  if (empty.has(parent)) return `a ${parent} can hold nothing`;
  const inner = children.get(parent);
  if (inner !== undefined && !inner.has(name)) {
    return `a ${parent} can hold only ${[...inner].join(', ')}`;
  }
  if (breaksLine(name, parent)) return `a ${name} can not stand in a ${parent}`;
  return name === 'a' && open.includes('a') ? 'a link in a link' : undefined;
}

const attribute = /[ \t\r\n]+([A-Za-z_][A-Za-z0-9:._-]*)[ \t\r\n]*=[ \t\r\n]*("[^"<]*"|'[^'<]*')/y;

function readAttributes(reader: Reader, element: string): void {
  const known = attributes.get(element);
  const met = new Set<string>();
  for (;;) {
    attribute.lastIndex = reader.at;
    const found = attribute.exec(reader.text);
    if (found === null) break;
    const [whole, name = '', quoted = ''] = found;
    if (met.has(name)) stop(reader, 'an attribute that stands twice');
    met.add(name);
    if (known !== undefined && !known.has(name)) {
      say(reader, `an attribute that ${element} can not have here`);
    }
    checkValue(reader, name, attributeValue(reader, quoted.slice(1, -1)));
    reader.at += whole.length;
  }
  const isRoot = reader.open.length === 0;
  if (isRoot && !met.has('xmlns')) say(reader, 'the div does not have the namespace of XHTML');
}

/** An attribute with its references resolved. */
function attributeValue(reader: Reader, raw: string): string {
  if (!raw.includes('&')) return raw;
  const inner: Reader = { ...reader, text: raw, at: 0 };
  let value = '';
  while (inner.at < raw.length) {
    value += skip(inner, plainText);
    if (inner.at >= raw.length) break;
    const from = inner.at;
    readReference(inner);
    value += resolved(raw.slice(from, inner.at));
  }
  return value;
}

const named: ReadonlyMap<string, string> = new Map([
  ['&amp;', '&'],
  ['&lt;', '<'],
  ['&gt;', '>'],
  ['&quot;', '"'],
  ['&apos;', "'"],
]);

function resolved(text: string): string {
  const known = named.get(text);
  if (known !== undefined) return known;
  const hex = text.startsWith('&#x');
  const code = Number.parseInt(text.slice(hex ? 3 : 2, -1), hex ? 16 : 10);
  return code < 0x110000 ? String.fromCodePoint(code) : '\uFFFD';
}

function checkValue(reader: Reader, name: string, value: string): void {
  if (name === 'xmlns' && value !== XHTML) {
    say(reader, 'the namespace is not that of XHTML');
  } else if (name === 'id' || name === 'name') {
    reader.ids.add(value);
  } else if (name === 'href' || name === 'src') {
    checkLink(reader, name, value);
  } else if (name === 'style') {
    checkStyle(reader, value);
  }
}

const activeScheme = /^(?:javascript|vbscript):|^data:(?:text\/html|image\/svg)/i;

function checkLink(reader: Reader, name: string, value: string): void {
  // Browsers drop control characters and spaces before they look at the scheme.
  const bare = value.replace(/[\s\p{Cc}]/gu, '');
  if (activeScheme.test(bare)) {
    say(reader, 'a link with active content');
  } else if (bare !== value) {
    say(reader, 'a URL with a space or control character');
  } else if (value.startsWith('#')) {
    reader.links.add(value.slice(1));
  } else if (name === 'src' && /^https?:/i.test(value)) {
    say(reader, 'an image from outside the resource', txt1, 'warning');
  }
}

function checkStyle(reader: Reader, value: string): void {
  const bare = value.replace(/[\s\\]/g, '').toLowerCase();
  // A comment can split a word that a browser puts together again.
  if (/\/\*|expression\(|javascript:|vbscript:|behavior:|-moz-binding/.test(bare)) {
    say(reader, 'a style with active content');
  } else if (/url\((?!['"]?(?:data:|#))|@import/.test(bare)) {
    say(reader, 'a style that loads something from outside the resource', txt1, 'warning');
  }
}

const closing = /<\/([A-Za-z][A-Za-z0-9:._-]*)[ \t\r\n]*>/y;

function closeTag(reader: Reader): void {
  closing.lastIndex = reader.at;
  const found = closing.exec(reader.text);
  if (found === null || found[1] !== reader.open.at(-1)) {
    stop(reader, 'a closing tag that does not fit the open one');
  }
  reader.open.pop();
  reader.at += found[0].length;
}

function say(
  reader: Reader,
  message: string,
  rule: string = txt1,
  severity: Severity = 'error',
): void {
  reader.faults.push({ severity, message, at: reader.at + 1, rule });
}

function stop(reader: Reader, message: string): never {
  say(reader, message);
  throw new Stop();
}
