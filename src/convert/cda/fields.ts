import { append } from '../../data/append.ts';
import { attributeIn, localName, XSI } from '../../xml/namespaces.ts';
import type { XmlElement } from '../../xml/reader.ts';
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
  const text = ownText(element);
  const isNull = element.attributes.has('nullFlavor');
  if (text !== '') {
    fields.push({
      name: path,
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
      text === ''
        ? readFields(child, placeOf, nothing, below, inner)
        : attributeFields(child, below, placeOf(child.start), inner);
    if (!people.has(child.name)) append(fields, found);
    else
      append(
        fields,
        found.map((field) => ({ ...field, administrative: true as const })),
      );
  }
  return fields;
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
