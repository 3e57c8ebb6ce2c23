import { pascal } from '../../fhir/names/definition-names.ts';
import { escapeXhtml, narrativeDiv } from '../../fhir/xhtml.ts';

/** What a package is made for. */
export interface PackageOrder {
  readonly version: 'R4' | 'R5';
  /** Canonical base of our code systems and profiles. */
  readonly base: string;
  /** Version of the package itself. */
  readonly packageVersion: string;
}

/** Date of the last change to the content of the tables; a package made twice has the same bytes. */
export const RELEASED = '2026-11-25';

export const PUBLISHER = 'The face-neck-fhir authors';

export const ownCopyright = 'Copyright the face-neck-fhir authors. Licensed under Apache-2.0.';

export interface Definition {
  readonly resourceType: string;
  readonly id: string;
  readonly [element: string]: unknown;
}

/** What all our definitions begin with. `name` is the part behind FaceNeck. */
export function head(
  { base }: PackageOrder,
  resourceType: string,
  id: string,
  { title, version, description }: { title: string; version: string; description: string },
): Definition {
  const text = `<p><b>${escapeXhtml(title)}</b></p><p>${escapeXhtml(description)}</p>`;
  return {
    resourceType,
    id,
    text: { status: 'generated', div: narrativeDiv(text) },
    url: `${base}/${resourceType}/${id}`,
    version,
    name: `FaceNeck${pascal(id)}`,
    title,
    status: 'active',
    experimental: false,
    date: RELEASED,
    publisher: PUBLISHER,
    description,
  };
}
