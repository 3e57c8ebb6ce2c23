import { isSame } from '../../../data/plain-data.ts';
import type { TypeInfo, Types } from '../../elements/definitions.ts';
import { isObject, type JsonObject } from '../../walk/json.ts';

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

export function one(items: Items): Item {
  const [item, second] = items;
  if (item === undefined || second !== undefined) throw new Undecided('not one item');
  return item;
}

export function bool(value: boolean): Items {
  return [{ value }];
}

/** A single item that is not a boolean counts as true. @see https://hl7.org/fhirpath/N1/#singleton-evaluation-of-collections */
export function truth(items: Items): boolean | undefined {
  if (items.length === 0) return undefined;
  const { value } = one(items);
  return typeof value === 'boolean' ? value : true;
}

export function numberOf({ value }: Item): number {
  if (typeof value !== 'number') throw new Undecided('no number');
  return value;
}

export function isTime(text: string): boolean {
  return /^\d{4}-\d\d(?:-\d\d(?:T.*)?)?$/.test(text);
}

export function isEqual({ value: a }: Item, { value: b }: Item): boolean {
  if (a === undefined || b === undefined) throw new Undecided('no value');
  // Dates that are told to different precision, or in different zones, can be the same or not.
  if (typeof a === 'string' && typeof b === 'string' && a !== b && isTime(a) && isTime(b)) {
    if (a.length !== b.length || a.slice(10) !== b.slice(10)) throw new Undecided('dates');
  }
  return isSame(a, b);
}

export function distinct(items: Items): Items {
  const found: Item[] = [];
  const plain = new Set<unknown>();
  for (const item of items) {
    if (item.value !== undefined && !isObject(item.value)) {
      if (plain.has(item.value)) continue;
      plain.add(item.value);
    } else if (found.some((each) => isSame(each.value, item.value))) continue;
    found.push(item);
  }
  return found;
}
