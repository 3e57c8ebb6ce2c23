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

/** A list of codes longer than this is cut. */
const mostListed = 12;

/** What a schema accepts, in a few words; `undefined` where it says nothing of use. */
export function expectedText(
  node: SchemaNode,
  words: ReadonlyMap<string, string>,
): string | undefined {
  if (node.enum !== undefined) return oneOf(node.enum);
  if (node.const !== undefined) return String(node.const);
  const name = node.title ?? node.$ref?.slice(node.$ref.lastIndexOf('/') + 1);
  const known = name === undefined ? undefined : words.get(name);
  if (known !== undefined) return known;
  if (typeof node.type === 'object')
    return oneOf(node.type.map((type) => typeWords.get(type) ?? type));
  if (node.minimum !== undefined && node.maximum !== undefined) {
    return `a whole number from ${node.minimum} to ${node.maximum}`;
  }
  if (name !== undefined && !/^List\d/.test(name)) return `${article(name)} ${readableName(name)}`;
  return node.$ref === undefined ? typeWords.get(node.type ?? '') : 'a list';
}

const typeWords: ReadonlyMap<string, string> = new Map([
  ['string', 'text'],
  ['number', 'a number'],
  ['integer', 'a whole number'],
  ['boolean', 'true or false'],
  ['object', 'an object'],
  ['array', 'a list'],
  ['null', 'null'],
]);

function oneOf(values: readonly unknown[]): string | undefined {
  if (values.length === 0) return undefined;
  if (values.length > mostListed) {
    return `${values.slice(0, mostListed).join(', ')} or one of ${values.length - mostListed} others`;
  }
  return values.length === 1
    ? String(values[0])
    : `${values.slice(0, -1).join(', ')} or ${values.at(-1)}`;
}

function article(name: string): string {
  return /^[AEIOU]/i.test(name) ? 'an' : 'a';
}

/** `Observation_Component` is HL7's name for what people know as `Observation.component`. */
export function readableName(name: string): string {
  return name.replace(/_([A-Z])/, (_, letter: string) => `.${letter.toLowerCase()}`);
}

/** What kind of JSON value something is, for a message that must not show the value itself. */
export function kindOf(value: unknown): string {
  if (value === null) return 'null';
  if (Array.isArray(value)) return 'a list';
  switch (typeof value) {
    case 'string':
      return 'text';
    case 'number':
      return Number.isInteger(value) ? 'a whole number' : 'a number';
    case 'boolean':
      return String(value);
    case 'object':
      return 'an object';
    case 'undefined':
      return 'undefined';
    default:
      return `a ${typeof value}`;
  }
}

/** A value as text for `received`: small ones as they are, others by kind. */
export function receivedText(value: unknown): string {
  if (typeof value === 'string') return value;
  if (typeof value === 'number' || typeof value === 'bigint') return String(value);
  return kindOf(value);
}
