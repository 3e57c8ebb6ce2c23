import { append } from '../../data/append.ts';
import { attributeIn, localName, XSI } from '../../xml/namespaces.ts';
import type { XmlElement } from '../../xml/tree.ts';
import type { Field, Scope } from '../record/record.ts';
import type { LinePlace } from '../xml/place.ts';
import { scopeBelow, textContent } from '../xml/records.ts';
import { childElements } from './names.ts';

export type PlaceOf = (offset: number) => LinePlace;

/** Attributes that say how to read the markup, and parts that every entry repeats. */
const markup = /^(?:xmlns(?::.*)?|xsi:schemaLocation|classCode|moodCode|typeCode)$/;

const nothing: ReadonlySet<string> = new Set();

/** Parts of a section or an entry that say who took part. @see CDA R2, section 4.3.4 */
const people: ReadonlySet<string> = new Set(['author', 'performer', 'informant', 'participant']);

/**
 * The fields of a CDA element by their paths from `path` on: `observation/code/@code`,
 * `observation/targetSiteCode/qualifier/value/@code`. Children named in `skip` are told elsewhere.
 * A `nullFlavor` makes the element explicitly nothing: `nullFlavor=UNK` instead of a blank.
 */
export function readFields(
  element: XmlElement,
  placeOf: PlaceOf,
  skip: ReadonlySet<string>,
  path: string,
  scope?: Scope,
): Field[] {
  const at = placeOf(element.start);
  const within = scope === undefined ? {} : { scope };
  const fields = attributeFields(element, path, at, scope);
  const isStray = isStructure(element);
  const text = isStray ? strayText(element) : ownText(element);
  const isNull = element.attributes.has('nullFlavor');
  if (text !== '') {
    fields.push({
      name: isStray ? `${path}/text()` : path,
      text,
      at,
      ...within,
      ...(element.name === 'originalText' ? { wording: true } : isNull && { contradicted: true }),
    });
  }
  for (const child of childElements(element)) {
    if (skip.has(child.name)) continue;
    const below = `${path}/${child.name}`;
    const inner = scopeBelow(child.name, scope);
    // The text of mixed content is told whole; its elements add their attributes only.
    const found =
      text === '' || isStray
        ? readFields(child, placeOf, nothing, below, inner)
        : attributeFields(child, below, placeOf(child.start), inner);
    const isDoubtful = child.name === 'translation' && isOtherNull(element);
    const isApart = people.has(child.name);
    append(
      fields,
      found.map((field) => ({
        ...field,
        ...(isApart && { administrative: true as const }),
        ...(isDoubtful && isCode(field.name) && { contradicted: true as const }),
      })),
    );
  }
  return fields;
}

/**
 * Elements of CDA that hold text beside elements: names, addresses and whatever is written for people.
 * In every other element text beside elements is stray: it is told as `text()`, and the elements are
 * read as if it were not there.
 */
const mixed: ReadonlySet<string> = new Set([
  'addr',
  'desc',
  'name',
  'originalText',
  'text',
  'title',
  'value',
]);

function isStructure({ name, children }: XmlElement): boolean {
  return children.length > 0 && !mixed.has(name);
}

function strayText({ content }: XmlElement): string {
  return content
    .flatMap((node) => ('text' in node ? [node.text.trim()] : []))
    .filter((text) => text !== '')
    .join(' ');
}

/**
 * A code that is null because it is of another system (OTH) is said by its translations; a null of
 * another kind says that nothing is known, and a translation that something is.
 * @see CDA R2, data types: CD.translation; v3-NullFlavor of HL7 terminology
 */
function isOtherNull({ attributes }: XmlElement): boolean {
  const flavor = attributes.get('nullFlavor');
  return flavor !== undefined && flavor !== 'OTH';
}

function isCode(name: string): boolean {
  return name.endsWith('/@code');
}

/** Attributes that are the value of an element. Beside a nullFlavor they contradict it. */
const values: ReadonlySet<string> = new Set(['code', 'value', 'extension']);

function attributeFields(
  element: XmlElement,
  path: string,
  at: LinePlace,
  scope: Scope | undefined,
): Field[] {
  const within = scope === undefined ? {} : { scope };
  const isNull = element.attributes.has('nullFlavor');
  const fields: Field[] = [];
  for (const [written, text] of element.attributes) {
    const known = element.attributeNamespaces.get(written) === XSI;
    const name = known ? `xsi:${localName(written)}` : written;
    if (name === 'nullFlavor') {
      fields.push({ name: path, text: '', at, explicitNull: flavour(text), ...within });
    } else if (!markup.test(name)) {
      fields.push({
        name: `${path}/@${name}`,
        text,
        at,
        ...within,
        ...(isNull && values.has(name) && { contradicted: true }),
        ...(name === 'displayName' && { wording: true }),
      });
    }
  }
  return fields;
}

/** Text of an element that has text of its own, with everything inside it; else nothing. */
function ownText(element: XmlElement): string {
  const hasText = element.content.some((node) => 'text' in node && node.text.trim() !== '');
  return hasText ? textContent(element.content).trim() : '';
}

/**
 * The value of an observation as one field `path`, whatever its type: the code of a coded value, the
 * number of a quantity, the text of a string. What else it says has its own path, as in readFields.
 * @see CDA R2, ObservationBase.value; data types CD, CE, CV, CO, PQ, INT, REAL, BL, TS, ST, ED
 */
export function valueFields(value: XmlElement, path: string, placeOf: PlaceOf): Field[] {
  const at = placeOf(value.start);
  // Beside a nullFlavor a code or number is not a value.
  const isNull = value.attributes.has('nullFlavor');
  const main = isNull ? '' : isCoded(value) ? '@code' : '@value';
  return readFields(value, placeOf, nothing, path, { name: 'value' }).map((field) =>
    field.name === `${path}/${main}` ? { ...field, name: path, at } : field,
  );
}

/** Types as `xsi:type` names them; a prefix there is for the namespace of the data types. */
export function typeOf(value: XmlElement): string {
  return localName(attributeIn(value, XSI, 'xsi:type') ?? '');
}

function isCoded(value: XmlElement): boolean {
  return /^(?:CD|CE|CV|CO|CS|SC)$/.test(typeOf(value));
}

export function flavour(code: string): string {
  return `nullFlavor=${code}`;
}
