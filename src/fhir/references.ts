/**
 * A copy in which each literal reference is what `placeOf` makes of it, or stays where that knows
 * none; the text of decimals is kept.
 */
export function withReferences<T>(value: T, placeOf: (reference: string) => string | undefined): T {
  const changed = (inner: unknown): unknown => {
    if (Array.isArray(inner)) return inner.map(changed);
    if (typeof inner !== 'object' || inner === null) return inner;
    // Spread keeps the symbol under which decimals carry their text.
    const copy: Record<string, unknown> = { ...inner };
    for (const [name, member] of Object.entries(copy)) {
      const target =
        name === 'reference' && typeof member === 'string' ? placeOf(member) : undefined;
      copy[name] = target ?? changed(member);
    }
    return copy;
  };
  return changed(value) as T; // the same structure with other texts
}

interface Identified {
  readonly resourceType: string;
  readonly id?: string | undefined;
}

/**
 * The resources of a bundle apart from it: references to one of them name its type and id, since its
 * `fullUrl` stays behind.
 */
export function resourcesApart(
  entries: readonly {
    readonly fullUrl?: string | undefined;
    readonly resource?: Identified | undefined;
  }[],
): readonly Identified[] {
  const places = new Map<string, string>();
  for (const { fullUrl, resource } of entries) {
    if (fullUrl === undefined || resource?.id === undefined) continue;
    places.set(fullUrl, `${resource.resourceType}/${resource.id}`);
  }
  return entries.flatMap(({ resource }) =>
    resource === undefined ? [] : [withReferences(resource, (urn) => places.get(urn))],
  );
}

/** Every literal reference in a resource. */
export function referencesIn(value: unknown): Set<string> {
  const found = new Set<string>();
  const look = (inner: unknown): void => {
    if (typeof inner !== 'object' || inner === null) return;
    for (const [name, member] of Object.entries(inner)) {
      if (name === 'reference' && typeof member === 'string') found.add(member);
      else look(member);
    }
  };
  look(value);
  return found;
}
