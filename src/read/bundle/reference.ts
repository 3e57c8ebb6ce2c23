import { isSame } from '../../data/plain-data.ts';
import type { Reading } from '../reading.ts';
import { type Element, isObject, lookAtList, peek, textOf } from './element.ts';
import type { Entry } from './entries.ts';

/** Where a reference leads: a resource of the bundle, or the text of one that leads out of it. */
export type Target = Entry | string;

/** Without a claim; undefined for a reference that has no literal. */
export function targetOf(
  { entries }: Pick<Reading, 'entries'>,
  reference: Element,
  from: Entry,
): Target | undefined {
  const literal = peek(reference, 'reference');
  if (typeof literal !== 'string') return undefined;
  return entries.resolve(literal, from) ?? literal;
}

/** Name that two references share exactly when they lead to the same resource. */
export function targetName(target: Target): string {
  if (typeof target === 'string') return target;
  return target.name;
}

/**
 * Claims the reference at `name`, or at `name[at]`. What it says besides its target is claimed where
 * it repeats what the report says of the same target, and else told apart.
 */
export function claimReference(
  { knownReferences }: Pick<Reading, 'knownReferences'>,
  holder: Element,
  name: string,
  at?: number,
): void {
  const { json, claims } = holder;
  claims.claim(json, name);
  let reference = json[name];
  if (at !== undefined && Array.isArray(reference)) {
    claims.claim(reference, at);
    reference = reference[at];
  }
  if (!isObject(reference)) return;
  const element = { json: reference, claims };
  const literal = textOf(element, 'reference');
  // The type only repeats what the target is.
  textOf(element, 'type');
  const said = knownReferences
    .get(literal ?? '')
    ?.some((known) => known !== reference && isSame(known, reference));
  if (!said) return;
  for (const part of Object.keys(reference)) claims.claimAll(reference, part);
}

/** Remembers what a reference says of its target besides leading there. */
export function rememberReference(
  { knownReferences }: Pick<Reading, 'knownReferences'>,
  reference: Element,
): void {
  const { json } = reference;
  const literal = peek(reference, 'reference');
  if (typeof literal !== 'string') return;
  const known = knownReferences.get(literal);
  if (known === undefined) knownReferences.set(literal, [json]);
  else known.push(json);
}

/** Claims each reference of a list that `known` accepts, and returns what it made of them. */
export function claimReferences<T>(
  reading: Pick<Reading, 'knownReferences'>,
  holder: Element,
  name: string,
  known: (reference: Element) => T | undefined,
): T[] {
  return lookAtList(holder, name).flatMap((reference) => {
    const found = known(reference);
    if (found === undefined) return [];
    claimReference(reading, holder, name, reference.at);
    return [found];
  });
}
