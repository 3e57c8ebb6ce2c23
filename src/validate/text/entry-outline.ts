import { isObject, type JsonObject } from '../walk/json.ts';

/**
 * What others can ask of an entry without its content: names, type and id, version, and whether it has
 * a request, a response or a search. Compositions and message headers are held whole, since the
 * rules of documents and messages follow what they name. An entry that is no JSON has nothing of these, and is told of when it is looked at.
 */
export function outlineOf(text: string): unknown {
  let entry: unknown;
  try {
    entry = JSON.parse(text);
  } catch {
    return {};
  }
  if (!isObject(entry)) return entry;
  const { fullUrl, resource, request, response, search } = entry;
  return {
    ...(typeof fullUrl === 'string' && { fullUrl }),
    ...(resource !== undefined && {
      resource: isObject(resource) ? resourceOutline(resource) : {},
    }),
    ...(request !== undefined && { request }),
    ...(response !== undefined && { response: {} }),
    ...(search !== undefined && { search }),
  };
}

function resourceOutline(resource: JsonObject): JsonObject {
  const { resourceType, id, meta } = resource;
  if (resourceType === 'Composition' || resourceType === 'MessageHeader') return resource;
  const versionId = isObject(meta) ? meta['versionId'] : undefined;
  return {
    ...(resourceType !== undefined && { resourceType }),
    ...(id !== undefined && { id }),
    ...(versionId !== undefined && { meta: { versionId } }),
  };
}

/** The bundle with outlines in place of its entries. */
export function bundleOf(head: JsonObject, outlines: readonly unknown[]): JsonObject {
  return outlines.length === 0 ? head : { ...head, entry: outlines };
}
