import type { Relation } from '../../terminology/types.ts';

/** How R5 calls each relation of a mapping. @see https://hl7.org/fhir/R5/valueset-concept-map-relationship.html */
export const relationships = {
  equivalent: 'equivalent',
  wider: 'source-is-narrower-than-target',
  narrower: 'source-is-broader-than-target',
  relatedto: 'related-to',
} as const satisfies Readonly<Record<Relation, string>>;

/** The id of a definition as a part of its name, in which FHIR has no hyphens: `test-points` is `TestPoints`. */
export function pascal(id: string): string {
  return id
    .split(/[^A-Za-z0-9]+/)
    .map((word) => word.slice(0, 1).toUpperCase() + word.slice(1))
    .join('');
}
