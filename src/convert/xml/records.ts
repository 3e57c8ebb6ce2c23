import { append } from '../../data/append.ts';
import { attributeIn, isDeclaration, XSI } from '../../xml/namespaces.ts';
import { isElement, type XmlElement, type XmlNode } from '../../xml/tree.ts';
import type { Field, LegacyRecord, Scope } from '../record/record.ts';
import type { LinePlace } from './place.ts';

/** How the parts of one exam element become records. */
export interface RecordReading {
  /** Paths below the exam of the elements that are records of their own. */
  readonly items: ReadonlySet<string>;
  readonly placeOf: (offset: number) => LinePlace;
}

/**
 * The exam element and its items as records, in input order. Names of fields are paths: below the
 * exam for its own (`skin/cheek` for the text of an element, `skin/cheek/@side` for an attribute, `.`
 * for the text of the exam element itself), and from the item on for those of an item
 * (`finding/@code`), so that no name means two things. An item also has the attributes of the elements
 * between the exam and it, as `../@side` and `../../@name`.
 */
export function readRecords(exam: XmlElement, reading: RecordReading): LegacyRecord[] {
  const items: LegacyRecord[] = [];
  const fields = readElement({ element: exam, path: '', outer: [] }, reading, items);
  const at = reading.placeOf(exam.start);
  return [{ kind: exam.written, fields, at, looseSiblings: true }, ...items];
}

interface Visit {
  readonly element: XmlElement;
  /** Path below the exam, or from an item on; empty for the exam itself. */
  readonly path: string;
  /** Elements between the exam and this one, nearest last; only while looking for items. */
  readonly outer?: readonly OuterElement[];
  /** The element, with those around it; none for the exam itself. */
  readonly scope?: Scope;
}

interface OuterElement {
  readonly element: XmlElement;
  readonly scope: Scope;
}

function readElement(visit: Visit, reading: RecordReading, items: LegacyRecord[]): Field[] {
  const { element, path, outer, scope } = visit;
  const at = reading.placeOf(element.start);
  const within = scope === undefined ? {} : { scope };
  const fields = isText(element) ? [{ ...textField(element, path, at), ...within }] : [];
  const itemsBefore = items.length;
  for (const node of element.content) {
    if (isElement(node)) append(fields, readChild(node, visit, reading, items));
    else if ('comment' in node) {
      fields.push({ name: join(path, 'comment()'), text: node.comment, at, ...within });
    } else if ('instruction' in node) {
      const name = join(path, 'processing-instruction()');
      fields.push({ name, text: node.instruction, at, ...within });
    }
  }
  // Attributes around items go to the items, so that they are not told twice.
  const given = outer !== undefined && outer.length > 0 && items.length > itemsBefore;
  return given ? fields : [...attributeFields(element, path, at, scope), ...fields];
}

function textField(element: XmlElement, path: string, at: LinePlace): Field {
  const name = path === '' ? '.' : path;
  const text = textContent(element.content);
  if (!isNil(element)) return { name, text, at };
  return text.trim() === ''
    ? { name, text: '', at, explicitNull: 'xsi:nil' }
    : { name, text, at, contradicted: true };
}

function readChild(
  child: XmlElement,
  parent: Visit,
  reading: RecordReading,
  items: LegacyRecord[],
): Field[] {
  const path = join(parent.path, child.written);
  const scope = scopeBelow(child.written, parent.scope);
  if (parent.outer === undefined || !reading.items.has(path)) {
    // Text inside mixed content is part of the text around it; its attributes are still fields.
    const outer = parent.outer && [...parent.outer, { element: child, scope }];
    if (isText(parent.element)) return attributesBelow(child, path, reading, scope);
    return readElement({ element: child, path, scope, ...(outer && { outer }) }, reading, items);
  }
  const fields = readElement({ element: child, path: child.written, scope }, reading, items);
  items.push({
    kind: child.written,
    fields: [...fields, ...outerAttributes(parent.outer, reading)],
    at: reading.placeOf(child.start),
    looseSiblings: true,
  });
  return [];
}

export function scopeBelow(name: string, parent: Scope | undefined): Scope {
  return parent === undefined ? { name } : { name, parent };
}

/**
 * An element is one text when it holds no element, or text beside elements: the pieces of
 * "left <b>not</b> seen" mean nothing, or the opposite, alone.
 */
function isText(element: XmlElement): boolean {
  let elements = false;
  let text = false;
  for (const node of element.content) {
    if (isElement(node)) elements = true;
    else if ('text' in node && node.text.trim() !== '') text = true;
  }
  return text || !elements;
}

/** Elements that begin a line or a cell of their own, in XHTML and in the narrative of CDA. */
const blocks =
  /^(?:[\w.-]+:)?(?:br|p|div|li|ul|ol|tr|td|th|table|thead|tbody|tfoot|h[1-6]|paragraph|item|list|caption)$/i;

/**
 * All text below in input order, comments and instructions left out. What stands in a line or cell of
 * its own is not glued to its neighbours.
 */
export function textContent(nodes: readonly XmlNode[]): string {
  let text = '';
  for (const node of nodes) {
    if (isElement(node)) {
      const inner = textContent(node.content);
      const isBlock = blocks.test(node.name);
      if (isBlock && text !== '' && !text.endsWith('\n')) text += '\n';
      text += inner;
      if (isBlock && inner !== '' && !inner.endsWith('\n')) text += '\n';
    } else if ('text' in node) text += node.text;
  }
  return text;
}

function attributeFields(
  element: XmlElement,
  path: string,
  at: LinePlace,
  scope: Scope | undefined,
): Field[] {
  const fields: Field[] = [];
  for (const [name, text] of element.attributes) {
    if (isMarkup(element, name)) continue;
    fields.push({ name: join(path, `@${name}`), text, at, ...(scope && { scope }) });
  }
  return fields;
}

function attributesBelow(
  element: XmlElement,
  path: string,
  reading: RecordReading,
  scope: Scope,
): Field[] {
  const inner = element.children.flatMap((child) =>
    attributesBelow(child, join(path, child.written), reading, scopeBelow(child.written, scope)),
  );
  return [...attributeFields(element, path, reading.placeOf(element.start), scope), ...inner];
}

function outerAttributes(outer: readonly OuterElement[], reading: RecordReading): Field[] {
  return [...outer]
    .reverse()
    .flatMap(({ element, scope }, steps) =>
      attributeFields(
        element,
        '../'.repeat(steps + 1).slice(0, -1),
        reading.placeOf(element.start),
        scope,
      ),
    );
}

/** Attributes about the markup itself. */
function isMarkup({ attributeNamespaces }: XmlElement, name: string): boolean {
  const namespace = attributeNamespaces.get(name);
  return isDeclaration(name) || namespace === XSI || name.startsWith('xsi:');
}

/** @see https://www.w3.org/TR/xmlschema-1/#xsi_nil */
function isNil(element: XmlElement): boolean {
  const nil = attributeIn(element, XSI, 'xsi:nil');
  return nil === 'true' || nil === '1';
}

function join(path: string, step: string): string {
  return path === '' ? step : `${path}/${step}`;
}
