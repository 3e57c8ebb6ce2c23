import { isSame } from '../../data/plain-data.ts';
import { identityIdentifier, recordIdentity } from '../../fhir/names/identity.ts';
import { type Identity, type SharedType, sharedId } from '../../fhir/names/ids.ts';
import { type Element, innerOf, innersOf, lookAt, peek, textOf } from '../bundle/element.ts';
import { claimId, type Entry } from '../bundle/entries.ts';
import type { Reading } from '../reading.ts';

/** Claims what an export gives a person, place or device by its identity: id, address, identifier. */
export function claimShared(entry: Entry, type: SharedType, identity: Identity | undefined): void {
  if (identity === undefined) return;
  const id = sharedId(type, identity);
  claimId(entry, id);
  claimIdentifier(entry.resource, id);
}

/** Claims the identifier that an export makes of an id, and returns the other ones. */
export function claimIdentifier(resource: Element, id: string): Element[] {
  const expected = identityIdentifier(id);
  const list = peek(resource, 'identifier');
  return innersOf(resource, 'identifier').filter(({ at, json }) => {
    if (!isSame(json, expected) || !Array.isArray(list)) return true;
    resource.claims.claimAll(list, at);
    return false;
  });
}

/**
 * The record of the receiver that a document describes: told in `meta.source`, which any server may
 * use for notes of its own, and therefore taken only where the id follows from it.
 */
export function describedRecord(
  { systems }: Pick<Reading, 'systems'>,
  entry: Entry,
  type: SharedType,
): { readonly reference?: string } {
  const meta = lookAt(entry.resource, 'meta');
  const source = meta && peek(meta, 'source');
  if (meta === undefined || typeof source !== 'string') return {};
  const id = sharedId(type, recordIdentity(source, systems.exam));
  if (peek(entry.resource, 'id') !== id) return {};
  innerOf(entry.resource, 'meta');
  textOf(meta, 'source');
  claimId(entry, id);
  return { reference: source };
}
