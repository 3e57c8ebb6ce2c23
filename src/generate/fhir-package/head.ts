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

/** Asked for by the licence under which the ids and names are published; see NOTICE. */
export const snomedCopyright =
  'Includes SNOMED CT® ids and names of the SNOMED International Global Patient Set 2020-09, ' +
  '© SNOMED International, under the Creative Commons Attribution 4.0 International licence, as ' +
  'published in HL7 Terminology (ValueSet snomed-intl-gps, version 20200930). Displays are the ' +
  'published names without their semantic tag, which is a change to them. SNOMED CT® was originally ' +
  'created by the College of American Pathologists. No endorsement by SNOMED International or its ' +
  'Members is implied. No relationships, hierarchy or definitions are included.';

/** @see http://loinc.org/license */
export const loincCopyright =
  'This material contains content from LOINC (http://loinc.org). LOINC is copyright © Regenstrief ' +
  'Institute, Inc. and the Logical Observation Identifiers Names and Codes (LOINC) Committee and is ' +
  'available at no cost under the license at http://loinc.org/license. LOINC® is a registered United ' +
  'States trademark of Regenstrief Institute, Inc.';

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

function pascal(id: string): string {
  return id
    .split(/[^A-Za-z0-9]+/)
    .map((word) => word.slice(0, 1).toUpperCase() + word.slice(1))
    .join('');
}
