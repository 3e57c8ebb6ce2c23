import type { Issue } from './issue.ts';
import { knownNames } from './known-names.ts';
import { nearest } from './nearest.ts';
import type { Path } from './path.ts';

/** Whether a path may show the name of a property: a name that exams or FHIR have, or its companion. */
export function isKnownName(name: string): boolean {
  return unsafe.has(name) || knownNames.has(name.startsWith('_') ? name.slice(1) : name);
}

/** Refused by these names, and nobody's words. */
const unsafe: ReadonlySet<string> = new Set(['__proto__', 'constructor', 'prototype']);

/** What a path shows in place of a name that it may not show; properties count from 1. */
export function unknownStep(place: number): string {
  return `[unknown property ${place}]`;
}

/**
 * The same issues, with every name that neither exams nor FHIR have told by its place: what stands as
 * the name of a property may be a patient's words, as when a bracket was lost. A name that is near
 * the one expected is shown, since it is most likely that name, mistyped.
 * @param root the data that the paths lead into
 * @param isNamed whether a further name is one of the definitions in use
 */
export function withShownPaths(
  issues: readonly Issue[],
  root: unknown,
  isNamed: (name: string) => boolean = () => false,
): Issue[] {
  const isShown = (name: string): boolean =>
    isKnownName(name) || isNamed(name.startsWith('_') ? name.slice(1) : name);
  const places = new Map<object, Map<string, number>>();
  return issues.map((found) => {
    const { path, expected } = found;
    if (path.every((step) => typeof step === 'number' || isShown(step))) return found;
    return { ...found, path: shown(path, { root, places, expected, isShown }) };
  });
}

interface Showing {
  readonly root: unknown;
  readonly places: Map<object, Map<string, number>>;
  readonly expected: string | undefined;
  readonly isShown: (name: string) => boolean;
}

function shown(path: Path, { root, places, expected, isShown }: Showing): Path {
  let holder = root;
  return path.map((step, at) => {
    const here = holder;
    holder = memberOf(here, step);
    if (typeof step === 'number' || isShown(step)) return step;
    const last = at === path.length - 1;
    if (last && expected !== undefined && nearest(step, [expected]) !== undefined) return step;
    const place = placeOf(here, step, places);
    // What is not there was named by the library and not by the data.
    return place === undefined ? step : unknownStep(place);
  });
}

function memberOf(holder: unknown, step: string | number): unknown {
  if (typeof holder !== 'object' || holder === null || !Object.hasOwn(holder, step))
    return undefined;
  return (holder as Readonly<Record<string | number, unknown>>)[step]; // just seen to have it
}

/** Each object is gone through once, however many issues lead into it. */
function placeOf(
  holder: unknown,
  name: string,
  places: Map<object, Map<string, number>>,
): number | undefined {
  if (typeof holder !== 'object' || holder === null) return undefined;
  let known = places.get(holder);
  if (known === undefined) {
    known = new Map(Object.keys(holder).map((key, index) => [key, index + 1]));
    places.set(holder, known);
  }
  return known.get(name);
}
