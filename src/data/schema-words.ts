import { englishKinds, type Form, type FormWord, type JsonKind } from '../issues/forms.ts';

/** The part of a JSON Schema that is put into words. */
export interface SchemaNode {
  readonly title?: string;
  readonly $ref?: string;
  readonly type?: string | readonly string[];
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly minimum?: number;
  readonly maximum?: number;
  readonly properties?: Readonly<Record<string, SchemaNode>>;
  readonly discriminator?: { readonly propertyName: string };
  /** What the properties in `required` hold, where `properties` does not stand beside it. */
  readonly 'x-missing'?: Readonly<Record<string, SchemaNode>>;
  /** Values that the property named by `discriminator` can have. */
  readonly 'x-tags'?: readonly string[];
}

/** What a schema accepts; `undefined` where it says nothing of use. `forms` names those of its types. */
export function formOf(node: SchemaNode, forms: ReadonlyMap<string, FormWord>): Form | undefined {
  if (node.enum !== undefined) return oneOf(node.enum);
  if (node.const !== undefined) return oneOf([node.const]);
  const name = node.title ?? node.$ref?.slice(node.$ref.lastIndexOf('/') + 1);
  const known = name === undefined ? undefined : forms.get(name);
  if (known !== undefined) return known;
  if (typeof node.type === 'object') {
    return { anyOf: node.type.flatMap((type) => typeForms.get(type) ?? []) };
  }
  if (node.minimum !== undefined && node.maximum !== undefined) {
    return { minimum: node.minimum, maximum: node.maximum };
  }
  if (name !== undefined && !/^List\d/.test(name)) return { type: readableName(name) };
  return node.$ref === undefined ? typeForms.get(node.type ?? '') : 'list';
}

const typeForms: ReadonlyMap<string, FormWord> = new Map([
  ['string', 'text'],
  ['number', 'number'],
  ['integer', 'whole-number'],
  ['boolean', 'boolean'],
  ['object', 'object'],
  ['array', 'list'],
  ['null', 'null'],
]);

/** A list of codes longer than this is cut. */
const mostListed = 12;

function oneOf(values: readonly unknown[]): Form | undefined {
  if (values.length === 0) return undefined;
  const codes = values.map(String);
  const left = codes.length - mostListed;
  return { oneOf: codes.slice(0, mostListed), ...(left > 0 && { others: left }) };
}

/** `Observation_Component` is HL7's name for what people know as `Observation.component`. */
export function readableName(name: string): string {
  return name.replace(/_([A-Z])/, (_, letter: string) => `.${letter.toLowerCase()}`);
}

/** What kind of JSON value something is, for a message that must not show the value itself. */
export function kindOf(value: unknown): JsonKind {
  if (value === null) return 'null';
  if (Array.isArray(value)) return 'list';
  const type = typeof value;
  switch (type) {
    case 'string':
      return 'text';
    case 'number':
      return Number.isInteger(value) ? 'whole-number' : 'number';
    case 'boolean':
      return value ? 'true' : 'false';
    case 'bigint':
    case 'symbol':
    case 'undefined':
    case 'function':
    case 'object':
      return type;
  }
}

/** A value as text for `received`: small ones as they are, others by kind. */
export function receivedText(value: unknown): string {
  if (typeof value === 'string') return value;
  if (typeof value === 'number' || typeof value === 'bigint') return String(value);
  return englishKinds[kindOf(value)];
}
