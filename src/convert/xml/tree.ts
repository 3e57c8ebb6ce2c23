import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { hasForbiddenCharacter, resolveReferences } from './characters.ts';
import { xmlLimits } from './limits.ts';

/** An element with its attributes and content in input order. Names are as written. */
export interface XmlElement {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: readonly XmlNode[];
  /** Place of its `<` in the text that was read. */
  readonly offset: number;
}

export type XmlNode =
  | XmlElement
  | { readonly text: string }
  | { readonly comment: string }
  | { readonly instruction: string };

export interface XmlTree {
  readonly root: XmlElement;
  /** References that name no predefined entity; they stand in the text as written. */
  readonly unknownReferences: number;
}

/** Why a text is no tree, with the place where the parser gave up. */
export interface XmlFault {
  readonly message: string;
  readonly line?: number;
  readonly column?: number;
}

/**
 * Reads one element with its content. The text comes from the splitter, which has bounded its size,
 * depth and attributes and let no document type through; entities are not processed by the parser,
 * only the five predefined ones and character references are resolved, here.
 */
export function readTree(text: string): XmlTree | XmlFault {
  if (hasForbiddenCharacter(text)) return { message: 'a character that XML forbids' };
  if (text.includes('<!DOCTYPE')) return { message: 'a document type inside an element' };
  const valid = XMLValidator.validate(text);
  if (valid !== true) {
    return { message: 'no well-formed XML', line: valid.err.line, column: valid.err.col };
  }
  let nodes: unknown;
  try {
    nodes = parser().parse(text);
  } catch {
    // The parser refuses names such as `constructor`; its message would repeat the data.
    return { message: 'a name that is not accepted' };
  }
  const reading = { text, unknown: 0 };
  const roots = children(nodes, reading).filter(isElement);
  const [root, ...others] = roots;
  if (root === undefined || others.length > 0) return { message: 'not exactly one element' };
  return { root, unknownReferences: reading.unknown };
}

export function isElement(node: XmlNode): node is XmlElement {
  return 'name' in node;
}

const COMMENT = '#comment';
const CDATA = '#cdata';
const TEXT = '#text';
const ATTRIBUTES = ':@';

function parser(): XMLParser {
  return new XMLParser({
    preserveOrder: true,
    ignoreAttributes: false,
    attributeNamePrefix: '',
    trimValues: false,
    parseTagValue: false,
    parseAttributeValue: false,
    processEntities: false,
    captureMetaData: true,
    commentPropName: COMMENT,
    cdataPropName: CDATA,
    maxNestedTags: xmlLimits.depth,
    jPath: false,
    // Names are kept in an object of their own, so that `toString` is a name like any other.
    onDangerousProperty: (name: string) => name,
  });
}

interface Reading {
  readonly text: string;
  unknown: number;
}

/** The parser gives plain objects of one key, the name, beside `:@`; anything else is left out. */
function children(nodes: unknown, reading: Reading): XmlNode[] {
  return Array.isArray(nodes) ? nodes.flatMap((node) => readNode(node, reading)) : [];
}

function readNode(node: unknown, reading: Reading): XmlNode[] {
  if (typeof node !== 'object' || node === null) return [];
  const entry = Object.entries(node).find(([key]) => key !== ATTRIBUTES);
  if (entry === undefined) return [];
  const [name, content] = entry;
  if (name === TEXT) return [{ text: resolved(String(content), reading) }];
  if (name === CDATA) return [{ text: rawText(content) }];
  if (name === COMMENT) return [{ comment: rawText(content) }];
  if (name.startsWith('?')) return [{ instruction: instructionText(reading.text, offsetOf(node)) }];
  const attributes = Object.entries(attributesOf(node)).map(
    ([key, value]) => [key, resolved(String(value), reading)] as const,
  );
  return [
    {
      name,
      attributes: new Map(attributes),
      children: children(content, reading),
      offset: offsetOf(node),
    },
  ];
}

function attributesOf(node: object): object {
  // The parser's type for a node is `any`; the group is looked up and checked.
  const group: unknown = Object.hasOwn(node, ATTRIBUTES)
    ? (node as Record<string, unknown>)[ATTRIBUTES]
    : undefined;
  return typeof group === 'object' && group !== null ? group : {};
}

function offsetOf(node: object): number {
  // The symbol is the parser's own; its value has no published type.
  const meta: unknown = (node as Record<symbol, unknown>)[
    XMLParser.getMetaDataSymbol() as unknown as symbol
  ];
  if (typeof meta !== 'object' || meta === null || !('startIndex' in meta)) return 0;
  return typeof meta.startIndex === 'number' ? meta.startIndex : 0;
}

/** Content of a comment or CDATA section: a list with one text node. */
function rawText(content: unknown): string {
  if (!Array.isArray(content)) return '';
  return content
    .map((node: unknown) =>
      typeof node === 'object' && node !== null ? Object.values(node).join('') : '',
    )
    .join('');
}

/** The parser keeps only what looks like attributes, so the text is cut from the input. */
function instructionText(text: string, offset: number): string {
  return text.slice(offset + 2, text.indexOf('?>', offset));
}

function resolved(raw: string, reading: Reading): string {
  const { text, unknown } = resolveReferences(raw);
  reading.unknown += unknown;
  return text;
}
