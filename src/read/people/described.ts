import type { Examiner, HumanName } from '../../model/people.ts';
import { type Element, innersOf, peek, textOf } from '../bundle/element.ts';
import { filled, identifiersOf } from '../observation/values.ts';

/** Identifiers and name of a person whose resource is in the bundle. */
export function described(
  resource: Element,
  identifierElements: readonly Element[],
): Pick<Examiner, 'identifiers' | 'name'> {
  const identifiers = filled(identifiersOf(identifierElements));
  const [first] = innersOf(resource, 'name');
  const name = first && humanName(first);
  return { ...(identifiers && { identifiers }), ...(name && { name }) };
}

function humanName(stated: Element): HumanName | undefined {
  const text = textOf(stated, 'text');
  const family = textOf(stated, 'family');
  const given = filled(textsOf(stated, 'given'));
  const [prefix] = textsOf(stated, 'prefix', 1);
  const name = {
    ...(family !== undefined && { family }),
    ...(given && { given }),
    ...(prefix !== undefined && { prefix }),
    ...(text !== undefined && { text }),
  };
  return Object.keys(name).length === 0 ? undefined : name;
}

/** The texts of a list, at most `most` of them. */
function textsOf(element: Element, name: string, most = Number.MAX_SAFE_INTEGER): string[] {
  const list = peek(element, name);
  if (!Array.isArray(list)) return [];
  element.claims.claim(element.json, name);
  return list.slice(0, most).flatMap((text: unknown, at) => {
    if (typeof text !== 'string' || !/\S/.test(text)) return [];
    element.claims.claim(list, at);
    return [text];
  });
}
