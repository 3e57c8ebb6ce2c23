import { attributeIn, isDeclaration, XSI } from '../../xml/namespaces.ts';
import { isElement, type XmlElement, type XmlNode } from '../../xml/reader.ts';
import type { Field, LegacyRecord } from '../record.ts';
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
  return [{ kind: exam.written, fields, at: reading.placeOf(exam.start) }, ...items];
}

interface Visit {
  readonly element: XmlElement;
  /** Path below the exam, or from an item on; empty for the exam itself. */
  readonly path: string;
  /** Elements between the exam and this one, nearest last; only while looking for items. */
  readonly outer?: readonly XmlElement[];
}

function readElement(visit: Visit, reading: RecordReading, items: LegacyRecord[]): Field[] {
  const { element, path, outer } = visit;
  const at = reading.placeOf(element.start);
  const fields = isText(element) ? [textField(element, path, at)] : [];
  const itemsBefore = items.length;
  for (const node of element.content) {
    if (isElement(node)) fields.push(...readChild(node, visit, reading, items));
    else if ('comment' in node) {
      fields.push({ name: join(path, 'comment()'), text: node.comment, at });
    } else if ('instruction' in node) {
      fields.push({ name: join(path, 'processing-instruction()'), text: node.instruction, at });
    }
  }
  // Attributes around items go to the items, so that they are not told twice.
  const given = outer !== undefined && outer.length > 0 && items.length > itemsBefore;
  return given ? fields : [...attributeFields(element, path, at), ...fields];
}

function textField(element: XmlElement, path: string, at: LinePlace): Field {
  const name = path === '' ? '.' : path;
  const text = textContent(element.content);
  return isNil(element) && text.trim() === ''
    ? { name, text: '', at, explicitNull: 'xsi:nil' }
    : { name, text, at };
}

function readChild(
  child: XmlElement,
  parent: Visit,
  reading: RecordReading,
  items: LegacyRecord[],
): Field[] {
  const path = join(parent.path, child.written);
  if (parent.outer === undefined || !reading.items.has(path)) {
    // Text inside mixed content is part of the text around it; its attributes are still fields.
    const outer = parent.outer && [...parent.outer, child];
    if (isText(parent.element)) return attributesBelow(child, path, reading);
    return readElement({ element: child, path, ...(outer && { outer }) }, reading, items);
  }
  const fields = readElement({ element: child, path: child.written }, reading, items);
  items.push({
    kind: child.written,
    fields: [...fields, ...outerAttributes(parent.outer, reading)],
    at: reading.placeOf(child.start),
  });
  return [];
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

/** All text below in input order, comments and instructions left out. */
export function textContent(nodes: readonly XmlNode[]): string {
  return nodes
    .map((node) => {
      if (isElement(node)) return textContent(node.content);
      return 'text' in node ? node.text : '';
    })
    .join('');
}

function attributeFields(element: XmlElement, path: string, at: LinePlace): Field[] {
  const fields: Field[] = [];
  for (const [name, text] of element.attributes) {
    if (!isMarkup(element, name)) fields.push({ name: join(path, `@${name}`), text, at });
  }
  return fields;
}

function attributesBelow(element: XmlElement, path: string, reading: RecordReading): Field[] {
  const inner = element.children.flatMap((child) =>
    attributesBelow(child, join(path, child.written), reading),
  );
  return [...attributeFields(element, path, reading.placeOf(element.start)), ...inner];
}

function outerAttributes(outer: readonly XmlElement[], reading: RecordReading): Field[] {
  return [...outer]
    .reverse()
    .flatMap((element, steps) =>
      attributeFields(
        element,
        '../'.repeat(steps + 1).slice(0, -1),
        reading.placeOf(element.start),
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
