import type { Key } from '../../model/primitive.ts';
import { peek } from '../bundle/element.ts';
import type { Entry } from '../bundle/entries.ts';

const fhirId = /^[A-Za-z0-9\-.]{1,64}$/;

/** Key for a resource that has none of ours: its type and id, or its place in the bundle. */
export function keyOfResource({ type, resource, path }: Entry): Key {
  const id = peek(resource, 'id');
  if (typeof id === 'string' && fhirId.test(id)) return `${type}/${id}`;
  return `${type}/${path.join('.')}`;
}
