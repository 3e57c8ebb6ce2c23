import type { AnyResource } from '../context.ts';

/** Types of resources that say something of the patient and have a status to take it back by. */
const retractable: ReadonlySet<string> = new Set([
  'Observation',
  'ServiceRequest',
  'Media',
  'DocumentReference',
  'DetectedIssue',
]);

/**
 * What was sent before and `current` no longer holds, as entered in error, with the resources that it
 * refers to and `current` has not. A transaction only writes; without these a server would go on
 * showing them.
 * @see https://hl7.org/fhir/R4/lifecycle.html
 */
export function withdrawnResources(
  current: readonly AnyResource[],
  sent: readonly AnyResource[],
): AnyResource[] {
  const earlier = new Map(sent.map((resource) => [resource.id, resource]));
  const held = new Set(current.map(({ id }) => id));
  const taken = new Set<AnyResource>();
  const take = (resource: AnyResource): void => {
    if (taken.has(resource) || held.has(resource.id)) return;
    taken.add(resource);
    for (const id of referredTo(resource)) {
      const target = earlier.get(id);
      if (target !== undefined) take(target);
    }
  };
  for (const resource of earlier.values()) {
    if (retractable.has(resource.resourceType)) take(resource);
  }
  return [...taken].map(asError);
}

function asError(resource: AnyResource): AnyResource {
  if (!retractable.has(resource.resourceType)) return resource;
  // Each of these types has this status in all versions.
  return { ...resource, status: 'entered-in-error' } as AnyResource;
}

/** Ids of resources of the same bundle. */
function referredTo(resource: AnyResource): string[] {
  const text = JSON.stringify(resource);
  return [...text.matchAll(/"reference":"urn:uuid:([^"]+)"/g)].map(([, id = '']) => id);
}
