import { type Difference, differences } from './differences.ts';
import type { JsonResource } from './json.ts';
import { textOf } from './json.ts';
import type { Place } from './place.ts';

/** What servers do to what they are given and may do, since it does not touch the record. */
export const allowedChanges = {
  id: 'an id that the server was left to give',
  meta: 'the notes of the server on its own storing',
  reference: 'a reference within the bundle, rewritten to where its target was stored',
  narrative: 'generated narrative, which holds nothing that the data does not',
} as const;

/** A change that FHIR lets a server make. */
export type AllowedChange = keyof typeof allowedChanges;

/** What a server does to what it is given and may not do, since the record is another one then. */
export const forbiddenChanges = {
  'changed-ids': 'a resource was stored under an id other than the one asked for',
  'dropped-extension': 'an extension was dropped',
  'dropped-content': 'content was dropped',
  'changed-content': 'content was changed',
  'added-content': 'content was added',
  'changed-reference': 'a reference leads to another resource than before',
} as const;

/** A change that makes another record of what was sent. */
export type ForbiddenChange = keyof typeof forbiddenChanges;

/** One kind of change that the server made to what it was sent. */
export interface ServerChange {
  readonly what: AllowedChange | ForbiddenChange;
  readonly allowed: boolean;
  /** Where: `Observation.subject.reference`. */
  readonly element: string;
  /** In how many places. */
  readonly count: number;
}

/** A resource as sent and as read back. */
export interface Pair {
  readonly sent: JsonResource;
  readonly received: JsonResource;
}

/**
 * What the server changed, counted by kind and element, in the order met.
 * @param placeOf where the resource of a `urn:uuid:` was stored
 */
export function changesIn(
  pairs: readonly Pair[],
  placeOf: (fullUrl: string) => Place | undefined,
): ServerChange[] {
  const counted = new Map<string, ServerChange>();
  for (const { sent, received } of pairs) {
    for (const difference of differences(sent, received)) {
      const what = kindOf(difference, sent, received, placeOf);
      const element = elementOf(sent.resourceType, difference);
      const key = `${what} ${element}`;
      const count = (counted.get(key)?.count ?? 0) + 1;
      counted.set(key, { what, allowed: Object.hasOwn(allowedChanges, what), element, count });
    }
  }
  return [...counted.values()];
}

function kindOf(
  { path, kind }: Difference,
  sent: JsonResource,
  received: JsonResource,
  placeOf: (fullUrl: string) => Place | undefined,
): ServerChange['what'] {
  const [first] = path;
  if (first === 'meta') return 'meta';
  if (first === 'text') return isGenerated(sent) ? 'narrative' : contentKind(kind);
  if (path.length === 1 && first === 'id') return kind === 'added' ? 'id' : 'changed-ids';
  if (path.at(-1) === 'reference' && kind === 'changed') {
    const place = placeOf(String(valueAt(sent, path)));
    const after = String(valueAt(received, path)).replace(/\/_history\/[^/]*$/, '');
    const name = place && `${place.type}/${place.id}`;
    const same = name !== undefined && (after === name || after.endsWith(`/${name}`));
    return same ? 'reference' : 'changed-reference';
  }
  if (kind === 'dropped' && path.some((step) => step === 'extension')) return 'dropped-extension';
  return contentKind(kind);
}

function contentKind(kind: Difference['kind']): ForbiddenChange {
  return `${kind}-content`;
}

function isGenerated({ text }: JsonResource): boolean {
  // Without narrative of our own, the server may make some.
  return text === undefined || (typeof text === 'object' && text !== null && isStatus(text));
}

function isStatus(text: object): boolean {
  return textOf({ ...text }, 'status') === 'generated';
}

function valueAt(resource: unknown, path: Difference['path']): unknown {
  let value = resource;
  for (const step of path) {
    if (typeof value !== 'object' || value === null) return undefined;
    value = Object.getOwnPropertyDescriptor(value, step)?.value;
  }
  return value;
}

/** Names come from a server, so only those that an element can have are told. */
function elementOf(type: string, { path }: Difference): string {
  const names = path.filter((step) => typeof step === 'string');
  return [type, ...names.map((name) => (/^\w{1,60}$/.test(name) ? name : '?'))].join('.');
}
