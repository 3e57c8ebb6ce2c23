import type { FhirVersion } from '../version.ts';
import { r4 } from './tables/r4.ts';
import { r4b } from './tables/r4b.ts';
import { r5 } from './tables/r5.ts';

/**
 * The elements of each type in the order that XML keeps, as text: `status:code category:CodeableConcept*
 * value[x]:Quantity|string`. `*` marks a list, `@` an attribute. Parts are types of their own, named
 * by their path.
 */
export type ElementTable = Readonly<Record<string, string>>;

export interface ElementRow {
  readonly name: string;
  readonly type: string;
  readonly list: boolean;
  /** An attribute in XML, where other primitives are elements with an attribute `value`. */
  readonly attribute: boolean;
  /** Place among the elements of its type; the same for all forms of a choice. */
  readonly order: number;
  /** Place among the rows of its type, in which each form of a choice has its own. */
  readonly place: number;
  readonly primitive: boolean;
  /** Under which JSON has ids and extensions of a primitive: its name with an underscore. */
  readonly companion: string | undefined;
}

/** What of a row is not to be concluded from the rest. */
export type ElementForm = Omit<ElementRow, 'place' | 'primitive' | 'companion'>;

/** @param place among the rows of its type */
export function elementRow(form: ElementForm, place: number): ElementRow {
  const primitive = isPrimitive(form.type);
  const beside = primitive && form.type !== 'xhtml' && !form.attribute;
  return { ...form, place, primitive, companion: beside ? `_${form.name}` : undefined };
}

/** Elements of a type by their name in JSON and XML, in order. */
export type TypeRows = ReadonlyMap<string, ElementRow>;

const tables: Readonly<Record<FhirVersion, ElementTable>> = { R4: r4, R4B: r4b, R5: r5 };

type Types = (type: string) => TypeRows | undefined;

const unfolded = new Map<FhirVersion, Types>();

/** Look-up of the types of a version. Each is unfolded when first asked for, and then kept. */
export function typesOf(version: FhirVersion): Types {
  const types = unfolded.get(version) ?? unfoldedTypes(tables[version]);
  unfolded.set(version, types);
  return types;
}

function unfoldedTypes(table: ElementTable): Types {
  const known = new Map<string, TypeRows>();
  return (type) => {
    let rows = known.get(type);
    if (rows !== undefined) return rows;
    const text = Object.hasOwn(table, type) ? table[type] : undefined;
    if (text === undefined) return undefined;
    rows = unfold(text);
    known.set(type, rows);
    return rows;
  };
}

function unfold(text: string): TypeRows {
  const rows = new Map<string, ElementRow>();
  for (const [order, row] of text.split(' ').entries()) {
    const cut = row.indexOf(':');
    const attribute = row.startsWith('@');
    const name = row.slice(attribute ? 1 : 0, cut);
    const list = row.endsWith('*');
    const types = row.slice(cut + 1, list ? -1 : undefined).split('|');
    for (const type of types) {
      const full = name.endsWith('[x]') ? name.slice(0, -3) + capital(type) : name;
      rows.set(full, elementRow({ name: full, type, list, attribute, order }, rows.size));
    }
  }
  return rows;
}

function capital(name: string): string {
  return name.charAt(0).toUpperCase() + name.slice(1);
}

/** The id of a resource is an element, that of any other type an attribute. */
export function isResource(rows: TypeRows): boolean {
  return rows.get('id')?.attribute === false;
}

/** Primitive types of FHIR begin with a small letter, all others with a capital. */
function isPrimitive(type: string): boolean {
  return /^[a-z]/.test(type);
}

/** How JSON holds a primitive. @see https://hl7.org/fhir/R4/json.html#primitive */
export function jsonForm(type: string): 'boolean' | 'number' | 'string' {
  switch (type) {
    case 'boolean':
      return 'boolean';
    case 'decimal':
    case 'integer':
    case 'positiveInt':
    case 'unsignedInt':
      return 'number';
    default:
      return 'string';
  }
}
