import { XHTML } from '../../fhir/names/systems.ts';
import type { Severity } from '../../issues/issue.ts';
import { attributeFaults, plainAttribute } from './xhtml-attributes.ts';
import { type ElementRule, elementRules } from './xhtml-rules.ts';

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
  /** Elements that are open; the rule is absent of one that cannot be here. */
  readonly open: { readonly name: string; readonly rule: ElementRule | undefined }[];
  /** How many of them are links. */
  anchors: number;
  readonly faults: XhtmlFault[];
  readonly ids: Set<string>;
  readonly links: Set<string>;
  content: boolean;
}

const txt1 = 'txt-1';
/** One narrative can be wrong at every tag; the first ones tell enough. */
const mostFaults = 20;

/** Ends the reading: what is not well-formed cannot be understood. */
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
    anchors: 0,
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

/** How nearly every narrative begins, and what it takes the longest to read. */
const usualStart = `<div xmlns="${XHTML}">`;

function readDiv(reader: Reader): void {
  const { text } = reader;
  if (text.startsWith(usualStart)) {
    reader.at = usualStart.length;
    reader.open.push({ name: 'div', rule: elementRules.get('div') });
  } else {
    skip(reader, space);
    if (!/^<div[\s>/]/.test(text.slice(reader.at, reader.at + 5))) {
      stop(reader, 'the text does not begin with a div');
    }
    readTag(reader);
  }
  while (reader.open.length > 0) readContent(reader);
  skip(reader, space);
  if (reader.at < text.length) stop(reader, 'something stands after the div');
}

const space = /[ \t\r\n]*/y;
const plainText = /[^<&]+/y;

function skip(reader: Reader, form: RegExp): void {
  form.lastIndex = reader.at;
  if (form.test(reader.text)) reader.at = form.lastIndex;
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
  } else {
    skip(reader, plainText);
    if (hasText(text, at, reader.at)) addText(reader);
  }
}

function hasText(text: string, from: number, to: number): boolean {
  for (let at = from; at < to; at++) if (text.charCodeAt(at) > 0x20) return true;
  return false;
}

function readMarkup(reader: Reader): void {
  const { text, at } = reader;
  if (text.startsWith('</', at)) {
    closeTag(reader);
  } else if (text.startsWith('<!--', at)) {
    skipPast(reader, '-->', 4);
  } else if (text.startsWith('<![CDATA[', at)) {
    // Many readers drop it, and so it is not content.
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
  const parent = reader.open.at(-1)?.rule;
  if (parent?.children !== undefined || parent?.empty) {
    say(reader, `text directly in a ${parent.name}`);
  }
}

const reference = /&(?:(?:amp|lt|gt|quot|apos)|#(\d{1,7})|#x([0-9A-Fa-f]{1,6}));/y;

function readReference(reader: Reader): void {
  reference.lastIndex = reader.at;
  const found = reference.exec(reader.text);
  if (found === null) stop(reader, 'an & that begins no reference that XML has');
  if (!isCharacter(found)) say(reader, 'a reference to a character that XML cannot hold');
  reader.at += found[0].length;
}

/** @see https://www.w3.org/TR/xml/#charsets */
function isCharacter([, decimal, hex]: RegExpExecArray): boolean {
  if (decimal === undefined && hex === undefined) return true;
  const code = decimal === undefined ? Number.parseInt(hex ?? '', 16) : Number(decimal);
  if (code < 0x20) return code === 0x9 || code === 0xa || code === 0xd;
  return code < 0xd800 || (code > 0xdfff && code < 0xfffe) || (code > 0xffff && code < 0x110000);
}

const tagName = /<[A-Za-z][A-Za-z0-9:._-]*/y;
const tagEnd = /[ \t\r\n]*\/?>/y;

function readTag(reader: Reader): void {
  const { text, at } = reader;
  skip(reader, tagName);
  if (reader.at === at) stop(reader, 'a < that begins no tag');
  const name = text.slice(at + 1, reader.at);
  const rule = elementRules.get(name);
  const misplaced = placeFault(reader, name, rule);
  if (misplaced !== undefined) say(reader, misplaced);
  if (text.charCodeAt(reader.at) === greater && reader.open.length > 0) reader.at += 1;
  else readRestOfTag(reader, rule);
  if (name === 'img') reader.content = true;
  if (text.charCodeAt(reader.at - 2) === slash) return;
  reader.open.push({ name, rule });
  if (name === 'a') reader.anchors += 1;
}

const greater = 0x3e;
const slash = 0x2f;

function readRestOfTag(reader: Reader, rule: ElementRule | undefined): void {
  readAttributes(reader, rule);
  const before = reader.at;
  skip(reader, tagEnd);
  if (reader.at === before) stop(reader, 'a tag that is not well-formed');
}

/** What is wrong with an element where it stands. */
function placeFault(
  { open, anchors }: Reader,
  name: string,
  rule: ElementRule | undefined,
): string | undefined {
  if (rule === undefined) return 'an element that a narrative cannot have';
  const parent = open.at(-1);
  const parentName = parent?.name ?? '';
  if (rule.parents !== undefined && !rule.parents.has(parentName)) {
    return `a ${name} must stand in ${[...rule.parents].join(' or ')}`;
  }
  const outer = parent?.rule;
  if (outer === undefined) return undefined;
  if (outer.empty) return `a ${outer.name} can hold nothing`;
  if (outer.children !== undefined && !outer.children.has(name)) {
    return `a ${outer.name} can hold only ${[...outer.children].join(', ')}`;
  }
  if (outer.breaks?.has(name)) return `a ${name} cannot stand in a ${outer.name}`;
  return name === 'a' && anchors > 0 ? 'a link in a link' : undefined;
}

const attribute = /[ \t\r\n]+([A-Za-z_][A-Za-z0-9:._-]*)[ \t\r\n]*=[ \t\r\n]*("[^"<]*"|'[^'<]*')/y;

function readAttributes(reader: Reader, rule: ElementRule | undefined): void {
  const met = new Set<string>();
  for (;;) {
    attribute.lastIndex = reader.at;
    const found = attribute.exec(reader.text);
    if (found === null) break;
    const [whole, name = '', quoted = ''] = found;
    if (met.has(name)) stop(reader, 'an attribute that stands twice');
    met.add(name);
    if (rule !== undefined && !rule.attributes.has(name)) {
      say(reader, `an attribute that ${rule.name} cannot have here`);
    }
    readValue(reader, name, quoted.slice(1, -1));
    reader.at += whole.length;
  }
  if (reader.open.length === 0 && !met.has('xmlns')) {
    say(reader, 'the div does not have the namespace of XHTML');
  }
}

function readValue(reader: Reader, name: string, raw: string): void {
  const value = plainAttribute(raw);
  if (value === undefined) {
    say(reader, 'an attribute with an & that begins no reference');
  } else if (name === 'id' || name === 'name') {
    reader.ids.add(value);
  } else if ((name === 'href' || name === 'src') && value.startsWith('#')) {
    // "#" alone is the top of the page: https://html.spec.whatwg.org/#find-a-potential-indicated-element.
    if (value !== '#') reader.links.add(value.slice(1));
  } else {
    for (const { message, severity } of attributeFaults(name, value)) {
      say(reader, message, txt1, severity);
    }
  }
}

const unfitting = 'a closing tag that does not fit the open one';
const closing = /<\/([A-Za-z][A-Za-z0-9:._-]*)[ \t\r\n]*>/y;

function closeTag(reader: Reader): void {
  const { text, open } = reader;
  const name = open.at(-1)?.name ?? '';
  const end = reader.at + 2 + name.length;
  if (!text.startsWith(name, reader.at + 2)) stop(reader, unfitting);
  if (text.charCodeAt(end) === greater) {
    reader.at = end + 1;
  } else {
    closing.lastIndex = reader.at;
    if (closing.exec(text)?.[1] !== name) stop(reader, unfitting);
    reader.at = closing.lastIndex;
  }
  open.pop();
  if (name === 'a') reader.anchors -= 1;
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
