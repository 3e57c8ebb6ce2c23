import type { TypeInfo, Types } from '../../elements/definitions.ts';
import { isObject, type JsonObject, textOf } from '../../walk/json.ts';
import { calls } from './functions.ts';
import type { Node } from './parse.ts';

/** One item of a collection: a value, what stands beside a primitive, and the type if it is known. */
export interface Item {
  readonly value: unknown;
  /** Id and extensions of a primitive. */
  readonly extra?: unknown;
  readonly type?: string | undefined;
}

export type Items = readonly Item[];

export interface Context {
  readonly resource: JsonObject;
  readonly root: JsonObject;
  /** The element that the rule stands at. */
  readonly element: Item;
  readonly resolve: (reference: string) => JsonObject | undefined;
  /** Definitions of the types; without them a choice is told by the end of its name. */
  readonly types?: Types<TypeInfo>;
  /** Steps that may still be taken: an expression can be made to run for ever. */
  budget: number;
}

/** Thrown where the expression asks for what is not held here: nothing is said of it then. */
export class Undecided extends Error {}

export interface Frame {
  readonly context: Context;
  readonly index: number;
  /** What `$this` is. */
  readonly self: Item;
}

export function evaluate(node: Node, input: Items, frame: Frame): Items {
  frame.context.budget -= 1 + input.length;
  if (frame.context.budget < 0) throw new Undecided('too long');
  switch (node.is) {
    case 'literal':
      return [node.date ? { value: node.value, type: 'date' } : { value: node.value }];
    case 'empty':
      return [];
    case 'this':
      return input;
    case 'index':
      return [{ value: frame.index }];
    case 'variable':
      return variable(node.name, frame.context);
    case 'name':
      return input.flatMap((item) => childrenOf(item, node.name, frame.context.types));
    case 'call':
      return call(node.name, node.args, input, frame);
    case 'dot':
      return evaluate(node.right, evaluate(node.left, input, frame), frame);
    case 'at': {
      const [at] = evaluate(node.at, input, frame);
      const item = evaluate(node.left, input, frame)[Number(at?.value)];
      return item === undefined ? [] : [item];
    }
    case 'type': {
      const items = evaluate(node.left, input, frame);
      if (node.op === 'as') return items.filter((item) => isOfType(item, node.type));
      return items.length === 0 ? [] : bool(isOfType(one(items), node.type));
    }
    case 'minus': {
      const items = evaluate(node.of, input, frame);
      return items.map((item) => ({ value: -numberOf(item) }));
    }
    default:
      return binary(node.op, node.left, node.right, input, frame);
  }
}

function call(name: string, args: readonly Node[], input: Items, frame: Frame): Items {
  const found = calls.get(name);
  if (found === undefined) throw new Undecided(name);
  return found(input, args, frame);
}

function variable(name: string, { resource, root, element }: Context): Items {
  if (name === 'resource') return [{ value: resource }];
  if (name === 'rootResource') return [{ value: root }];
  if (name === 'context') return [element];
  if (name === 'sct') return [{ value: 'http://snomed.info/sct' }];
  if (name === 'loinc') return [{ value: 'http://loinc.org' }];
  if (name === 'ucum') return [{ value: 'http://unitsofmeasure.org' }];
  throw new Undecided(name);
}

/** What stands under a name; `Patient.name` on a patient is its `name`. */
export function childrenOf(item: Item, name: string, types?: Types<TypeInfo>): Items {
  const { value } = item;
  if (!isObject(value)) {
    // The id and the extensions of a primitive.
    return isObject(item.extra)
      ? childrenOf({ value: item.extra, type: 'Element' }, name, types)
      : [];
  }
  if (value['resourceType'] === name) return [item];
  const info = infoOf(item, types);
  if (info !== undefined) return definedChildren(value, name, info);
  if (Object.hasOwn(value, name) || Object.hasOwn(value, `_${name}`)) {
    return itemsUnder(value, name, undefined);
  }
  for (const key of Object.keys(value)) {
    const bare = key.startsWith('_') ? key.slice(1) : key;
    const suffix = bare.slice(name.length);
    if (!bare.startsWith(name) || !/^[A-Z]/.test(suffix)) continue;
    const type = typeOfSuffix(suffix);
    if (type !== undefined) return itemsUnder(value, bare, type);
  }
  return [];
}

/** What is known of the type; of a part of a resource that is known as that alone, nothing is. */
function infoOf({ value, type }: Item, types: Types<TypeInfo> | undefined): TypeInfo | undefined {
  const name = (isObject(value) ? textOf(value['resourceType']) : undefined) ?? type ?? '';
  return name === 'BackboneElement' || name === 'Element' ? undefined : types?.get(name);
}

/** The elements of a known type, with their types. */
function definedChildren(value: JsonObject, name: string, { properties }: TypeInfo): Items {
  const own = properties.get(name);
  if (own !== undefined || name === 'id') return itemsUnder(value, name, own?.type ?? 'string');
  for (const key of Object.keys(value)) {
    const bare = key.startsWith('_') ? key.slice(1) : key;
    const property = properties.get(bare);
    if (property?.choice?.name === name) return itemsUnder(value, bare, property.type);
  }
  return [];
}

function itemsUnder(holder: JsonObject, name: string, type: string | undefined): Items {
  const value = Object.hasOwn(holder, name) ? holder[name] : undefined;
  const extra = Object.hasOwn(holder, `_${name}`) ? holder[`_${name}`] : undefined;
  if (Array.isArray(value) || Array.isArray(extra)) {
    const values: readonly unknown[] = Array.isArray(value) ? value : [];
    const extras: readonly unknown[] = Array.isArray(extra) ? extra : [];
    return Array.from({ length: Math.max(values.length, extras.length) }, (_, at) => ({
      value: values[at] ?? undefined,
      extra: extras[at],
      type,
    })).filter(isThere);
  }
  const item: Item = { value: value ?? undefined, extra, type };
  return isThere(item) ? [item] : [];
}

function isThere({ value, extra }: Item): boolean {
  return value !== undefined || isObject(extra);
}

const primitives =
  'base64Binary boolean canonical code date dateTime decimal id instant integer integer64 markdown oid positiveInt string time unsignedInt uri url uuid'.split(
    ' ',
  );
const complex =
  'Address Age Annotation Attachment CodeableConcept CodeableReference Coding ContactDetail ContactPoint Contributor Count DataRequirement Distance Dosage Duration Expression Extension HumanName Identifier Meta Money ParameterDefinition Period Quantity Range Ratio RatioRange Reference RelatedArtifact SampledData Signature Timing TriggerDefinition UsageContext'.split(
    ' ',
  );

/** By the end of the name of a choice. @see https://hl7.org/fhir/R5/datatypes.html */
const suffixes: ReadonlyMap<string, string> = new Map([
  ...primitives.map((name): [string, string] => [
    name.charAt(0).toUpperCase() + name.slice(1),
    name,
  ]),
  ...complex.map((name): [string, string] => [name, name]),
]);

function typeOfSuffix(suffix: string): string | undefined {
  return suffixes.get(suffix);
}

export function isOfType({ value, type }: Item, wanted: string): boolean {
  if (isObject(value) && typeof value['resourceType'] === 'string') {
    return value['resourceType'] === wanted || wanted === 'Resource' || wanted === 'DomainResource';
  }
  if (type === undefined) {
    if (typeof value === 'boolean') return wanted === 'boolean' || wanted === 'Boolean';
    throw new Undecided('a type that is not known');
  }
  if (type === wanted) return true;
  const kind = type.toLowerCase() === wanted.toLowerCase() && primitives.includes(type);
  return kind || (specialised.get(wanted)?.includes(type) ?? false);
}

/** @see https://hl7.org/fhir/R4/datatypes.html */
const specialised: ReadonlyMap<string, readonly string[]> = new Map([
  ['Quantity', ['Age', 'Count', 'Distance', 'Duration']],
  ['string', ['code', 'id', 'markdown']],
  ['uri', ['canonical', 'oid', 'url', 'uuid']],
  ['integer', ['positiveInt', 'unsignedInt']],
]);

export function one(items: Items): Item {
  const [item, second] = items;
  if (item === undefined || second !== undefined) throw new Undecided('not one item');
  return item;
}

export function bool(value: boolean): Items {
  return [{ value }];
}

/** A single item that is no boolean counts as true. @see https://hl7.org/fhirpath/N1/#singleton-evaluation-of-collections */
export function truth(items: Items): boolean | undefined {
  if (items.length === 0) return undefined;
  const { value } = one(items);
  return typeof value === 'boolean' ? value : true;
}

export function numberOf({ value }: Item): number {
  if (typeof value !== 'number') throw new Undecided('no number');
  return value;
}

function binary(op: string, left: Node, right: Node, input: Items, frame: Frame): Items {
  const first = evaluate(left, input, frame);
  switch (op) {
    case 'and':
    case 'or':
    case 'xor':
    case 'implies':
      return logic(op, truth(first), () => truth(evaluate(right, input, frame)));
    default:
      return operator(op, first, evaluate(right, input, frame));
  }
}

function logic(
  op: 'and' | 'or' | 'xor' | 'implies',
  left: boolean | undefined,
  rightOf: () => boolean | undefined,
): Items {
  if (op === 'and' && left === false) return bool(false);
  if (op === 'or' && left === true) return bool(true);
  if (op === 'implies' && left === false) return bool(true);
  const right = rightOf();
  if (op === 'and') return right === false ? bool(false) : known(left, right, left && right);
  if (op === 'or') return right === true ? bool(true) : known(left, right, left || right);
  if (op === 'implies') return right === true ? bool(true) : known(left, right, right);
  return known(left, right, left !== right);
}

function known(
  left: boolean | undefined,
  right: boolean | undefined,
  value: boolean | undefined,
): Items {
  return left === undefined || right === undefined || value === undefined ? [] : bool(value);
}

function operator(op: string, left: Items, right: Items): Items {
  switch (op) {
    case '|':
      return distinct([...left, ...right]);
    case '=':
    case '!=': {
      if (left.length === 0 || right.length === 0) return [];
      return bool(sameLists(left, right) === (op === '='));
    }
    case '~':
    case '!~':
      return bool(alike(left, right) === (op === '~'));
    case 'in':
      return left.length === 0 ? [] : bool(right.some((each) => isEqual(each, one(left))));
    case 'contains':
      return right.length === 0 ? [] : bool(left.some((each) => isEqual(each, one(right))));
    case '&':
      return [{ value: textOrNone(left) + textOrNone(right) }];
    default:
      return left.length === 0 || right.length === 0 ? [] : arithmetic(op, one(left), one(right));
  }
}

function textOrNone(items: Items): string {
  if (items.length === 0) return '';
  const { value } = one(items);
  if (typeof value !== 'string') throw new Undecided('no text');
  return value;
}

function arithmetic(op: string, { value: a }: Item, { value: b }: Item): Items {
  if (typeof a === 'string' && typeof b === 'string') {
    if (op === '+') return [{ value: a + b }];
    return comparison(op, textOrder(a, b));
  }
  if (typeof a !== 'number' || typeof b !== 'number') throw new Undecided('no numbers');
  const result = arithmetics.get(op)?.(a, b);
  if (result === undefined) return comparison(op, a - b);
  return Number.isFinite(result) ? [{ value: result }] : [];
}

/** Division by nothing is empty. @see https://hl7.org/fhirpath/N1/#math-2 */
const arithmetics: ReadonlyMap<string, (a: number, b: number) => number> = new Map([
  ['+', (a: number, b: number) => a + b],
  ['-', (a: number, b: number) => a - b],
  ['*', (a: number, b: number) => a * b],
  ['/', (a: number, b: number) => a / b],
  ['mod', (a: number, b: number) => a % b],
  ['div', (a: number, b: number) => Math.trunc(a / b)],
]);

function isTime(text: string): boolean {
  return /^\d{4}-\d\d(?:-\d\d(?:T.*)?)?$/.test(text);
}

/** Dates that are told to different precision, or in different zones, are left to a whole engine. */
function textOrder(a: string, b: string): number {
  const years = /^\d{4}$/;
  const dates = (isTime(a) || years.test(a)) && (isTime(b) || years.test(b));
  if (dates && (a.length !== b.length || a.slice(19) !== b.slice(19))) {
    throw new Undecided('dates of different precision');
  }
  return a < b ? -1 : a > b ? 1 : 0;
}

function comparison(op: string, order: number): Items {
  if (op === '<') return bool(order < 0);
  if (op === '<=') return bool(order <= 0);
  if (op === '>') return bool(order > 0);
  if (op === '>=') return bool(order >= 0);
  throw new Undecided(op);
}

export function isEqual({ value: a }: Item, { value: b }: Item): boolean {
  if (a === undefined || b === undefined) throw new Undecided('no value');
  // Dates that are told to different precision, or in different zones, can be the same or not.
  if (typeof a === 'string' && typeof b === 'string' && a !== b && isTime(a) && isTime(b)) {
    if (a.length !== b.length || a.slice(10) !== b.slice(10)) throw new Undecided('dates');
  }
  return sameValue(a, b);
}

export function sameValue(a: unknown, b: unknown): boolean {
  if (Array.isArray(a) || Array.isArray(b)) {
    if (!Array.isArray(a) || !Array.isArray(b) || a.length !== b.length) return false;
    return a.every((each, at) => sameValue(each, b[at]));
  }
  if (!isObject(a) || !isObject(b)) return a === b;
  const names = Object.keys(a);
  return (
    names.length === Object.keys(b).length &&
    names.every((name) => Object.hasOwn(b, name) && sameValue(a[name], b[name]))
  );
}

function sameLists(left: Items, right: Items): boolean {
  if (left.length !== right.length) return false;
  return left.every((each, at) => isEqual(each, right[at] ?? { value: undefined }));
}

function alike(left: Items, right: Items): boolean {
  if (left.length !== right.length) return false;
  const plain = (item: Item): Item =>
    typeof item.value === 'string' ? { value: item.value.trim().toLowerCase() } : item;
  return left.every((each) => right.some((other) => isEqual(plain(each), plain(other))));
}

export function distinct(items: Items): Items {
  const found: Item[] = [];
  const plain = new Set<unknown>();
  for (const item of items) {
    if (item.value !== undefined && !isObject(item.value)) {
      if (plain.has(item.value)) continue;
      plain.add(item.value);
    } else if (found.some((each) => sameValue(each.value, item.value))) continue;
    found.push(item);
  }
  return found;
}
