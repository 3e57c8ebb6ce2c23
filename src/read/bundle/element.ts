import { isSame, withoutBadCharacters } from '../../data/plain-data.ts';
import { decimalText } from '../../fhir/json/decimal.ts';
import { decimalForm } from '../../model/primitive.ts';
import { spanOf } from '../../model/time.ts';
import type { Claims } from './claims.ts';

/**
 * A JSON object of a bundle. Each reader below claims what it returns, and
 * returns undefined, without a claim, for what is missing or has another form.
 */
export interface Element {
  readonly json: Readonly<Record<string, unknown>>;
  readonly claims: Claims;
}

export function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** The value of an own property. */
export function ownProperty(json: Readonly<Record<string, unknown>>, name: string): unknown {
  return Object.hasOwn(json, name) ? json[name] : undefined;
}

/** The value of an own property, without a claim. */
export function peek({ json }: Element, name: string): unknown {
  return ownProperty(json, name);
}

/** An inner object without a claim, to be claimed once it is known what it is. */
export function lookAt(element: Element, name: string): Element | undefined {
  const value = peek(element, name);
  if (!isObject(value)) return undefined;
  return { json: value, claims: element.claims };
}

export function innerOf(element: Element, name: string): Element | undefined {
  const value = peek(element, name);
  if (!isObject(value)) return undefined;
  element.claims.claim(element.json, name);
  return { json: value, claims: element.claims };
}

/** An entry of a list, and its place there. */
export interface ListedElement extends Element {
  readonly at: number;
}

/** The objects of a list without a claim. */
export function lookAtList({ json, claims }: Element, name: string): ListedElement[] {
  const list = ownProperty(json, name);
  if (!Array.isArray(list)) return [];
  return list.flatMap((entry: unknown, at) =>
    isObject(entry) ? [{ json: entry, claims, at }] : [],
  );
}

/** The objects of a list; the list is claimed, and of each object what is read of it. */
export function innersOf(element: Element, name: string): ListedElement[] {
  const { json, claims } = element;
  const inners = lookAtList(element, name);
  const list = json[name];
  if (inners.length === 0 || !Array.isArray(list)) return inners;
  claims.claim(json, name);
  for (const { at } of inners) claims.claim(list, at);
  return inners;
}

/** Text that is not blank and holds no character that FHIR forbids. */
export function textOf(element: Element, name: string): string | undefined {
  return matching(element, name, isText);
}

function isText(text: string): boolean {
  return /\S/.test(text) && text.length <= 1_000_000 && withoutBadCharacters(text) === text;
}

const uri = /^[a-z][a-z0-9+.-]*:\S+$/;

export function uriOf(element: Element, name: string): string | undefined {
  return matching(element, name, (text) => text.length <= 2000 && uri.test(text));
}

const dateTime = /^\d{4}(-\d{2}(-\d{2}(T\d{2}:\d{2}:\d{2}(\.\d{1,9})?(Z|[+-]\d{2}:\d{2}))?)?)?$/;

/** A date or time that exists in the calendar. */
export function dateTimeOf(element: Element, name: string): string | undefined {
  return matching(element, name, (text) => dateTime.test(text) && spanOf(text) !== undefined);
}

export function instantOf(element: Element, name: string): string | undefined {
  const value = peek(element, name);
  return typeof value === 'string' && value.includes('T') ? dateTimeOf(element, name) : undefined;
}

export function dateOf(element: Element, name: string): string | undefined {
  const value = peek(element, name);
  return typeof value === 'string' && !value.includes('T') ? dateTimeOf(element, name) : undefined;
}

/** One of the words of a list. */
export function wordOf<W extends string>(
  element: Element,
  name: string,
  words: readonly W[],
): W | undefined {
  const word = words.find((known) => known === peek(element, name));
  if (word !== undefined) element.claims.claim(element.json, name);
  return word;
}

export function flagOf(element: Element, name: string): boolean | undefined {
  const value = peek(element, name);
  if (typeof value !== 'boolean') return undefined;
  element.claims.claim(element.json, name);
  return value;
}

export function wholeOf(element: Element, name: string): number | undefined {
  const value = peek(element, name);
  if (!Number.isInteger(value)) return undefined;
  element.claims.claim(element.json, name);
  return value as number; // Number.isInteger is true for numbers alone
}

/** A decimal as it was written, without exponent. */
export function decimalOf(element: Element, name: string): string | undefined {
  const text = decimalText(element.json, name);
  if (text === undefined || !decimalForm.test(text)) return undefined;
  element.claims.claim(element.json, name);
  return text;
}

/** Claims a property with all below it where it is what follows from the exam; true when it is. */
export function claimEqual(element: Element, name: string, expected: unknown): boolean {
  if (!isSame(peek(element, name), expected)) return false;
  if (expected !== undefined) element.claims.claimAll(element.json, name);
  return true;
}

function matching(
  element: Element,
  name: string,
  fits: (text: string) => boolean,
): string | undefined {
  const value = peek(element, name);
  if (typeof value !== 'string' || !fits(value)) return undefined;
  element.claims.claim(element.json, name);
  return value;
}
