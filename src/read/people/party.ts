import { tokenIn } from '../../fhir/names/search-token.ts';
import type { Subject } from '../../model/people.ts';
import { type Element, innerOf, lookAt, lookAtList } from '../bundle/element.ts';
import type { Entry } from '../bundle/entries.ts';
import { claimReference, rememberReference, targetName, targetOf } from '../bundle/reference.ts';
import { identifierOf } from '../observation/values.ts';
import type { Reading } from '../reading.ts';

export interface ReferencePlace {
  readonly holder: Element;
  readonly name: string;
  readonly at?: number;
  readonly types: readonly string[];
}

/** Someone or something that a reference names. */
export interface Party {
  readonly name: string;
  /** The resource, where it is in the bundle. */
  readonly entry: Entry | undefined;
  readonly literal: string | undefined;
  readonly reference: Element;
}

/** Whoever the reference names; undefined where it leads to a resource of another type. */
export function partyOf(
  reading: Reading,
  from: Entry,
  { holder, name, at, types }: ReferencePlace,
): Party | undefined {
  const reference = at === undefined ? lookAt(holder, name) : lookAtList(holder, name)[at];
  if (reference === undefined) return undefined;
  const target = targetOf(reading, reference, from);
  if (typeof target === 'object' && !types.includes(target.type)) return undefined;
  claimReference(reading, holder, name, at);
  rememberReference(reading, reference);
  return {
    name: target === undefined ? '' : targetName(target),
    entry: typeof target === 'object' ? target : undefined,
    literal: typeof target === 'string' ? target : undefined,
    reference,
  };
}

/** What a reference says of its target, for a person or place that is not in the bundle. */
export function statedBy(party: Party): Pick<Subject, 'reference' | 'identifiers'> {
  const { reference } = party;
  const identifier = lookAt(reference, 'identifier');
  const stated = identifier && identifierOf(identifier);
  if (stated) innerOf(reference, 'identifier');
  return { ...referenceOf(party), ...(stated && { identifiers: [stated] as const }) };
}

/** The literal of a reference, or the identifier that it names its target by. */
export function referenceOf({ literal }: Party): Pick<Subject, 'reference' | 'identifiers'> {
  if (literal === undefined || !/^\S{1,2000}$/.test(literal)) return {};
  const identifier = tokenIn(literal);
  return identifier === undefined ? { reference: literal } : { identifiers: [identifier] };
}
