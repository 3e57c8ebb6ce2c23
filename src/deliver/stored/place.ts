/** Where a server keeps a resource. */
export interface Place {
  readonly type: string;
  readonly id: string;
  /** Unknown where the server keeps or tells none. */
  readonly version: string | undefined;
}

/** The place that a location names, absolute or relative: `Observation/1/_history/2`. */
export function placeFrom(location: string): Place | undefined {
  const found =
    /(?:^|\/)([A-Z][A-Za-z]+)\/([A-Za-z0-9\-.]{1,64})(?:\/_history\/([A-Za-z0-9\-.]{1,64}))?$/.exec(
      location,
    );
  const [, type, id, version] = found ?? [];
  return type === undefined || id === undefined ? undefined : { type, id, version };
}

export function placeName({ type, id }: Pick<Place, 'type' | 'id'>): string {
  return `${type}/${id}`;
}
