/** Code systems with rules of their own here, by the URIs that FHIR fixes for them. */
export const standardSystems = {
  snomed: 'http://snomed.info/sct',
  loinc: 'http://loinc.org',
} as const;

export type StandardSystem = keyof typeof standardSystems;

/** Between the host of a URI and what follows: a root dot, a port, then a path, query or fragment. */
const after = '\\.?(?::\\d+)?(?:[/?#|]|$)';
const site = '^[a-z]+:/*(?:[^/@]*@)?(?:[a-z0-9-]+\\.)*';

/**
 * Names under which the two systems travel, right or wrong: any URI on their sites, the URIs that the
 * U.S. National Library of Medicine and BioPortal publish SNOMED CT under, their object identifiers,
 * and their bare names. What is named so is that system, and its licence applies.
 * @see https://hl7.org/fhir/R4/terminologies-systems.html
 * @see https://terminology.hl7.org/NamingSystem-v3-snomed-CT.html for the object identifier
 * @see https://www.nlm.nih.gov/research/umls/sourcereleasedocs/current/SNOMEDCT_US for SNOMEDCT_US
 */
const names: readonly (readonly [StandardSystem, RegExp])[] = [
  ['snomed', new RegExp(`${site}(?:snomed\\.(?:info|org)|ihtsdo(?:tools)?\\.org)${after}`)],
  ['snomed', /^[a-z]+:\/*(?:www\.)?nlm\.nih\.gov\/research\/umls\/snomed/],
  ['snomed', /^[a-z]+:\/*(?:[a-z0-9-]+\.)*bioontology\.org\/ontolog(?:y|ies)\/snomed/],
  ['snomed', /^(?:urn:oid:|oid:)?2\.16\.840\.1\.113883\.6\.96(?:\.\d+)*\.?$/],
  ['snomed', /^(?:urn:)?(?:sct2?|snomed(?:[ _-]?ct(?:[ _-]us)?)?)(?::|$)/],
  ['loinc', new RegExp(`${site}loinc\\.org${after}`)],
  ['loinc', /^(?:urn:oid:|oid:)?2\.16\.840\.1\.113883\.6\.1\.?$/],
  ['loinc', /^(?:urn:)?(?:loinc|ln)$/],
];

/** Which of the two a system is meant to be, however it is written; undefined for every other. */
export function standardSystem(system: string): StandardSystem | undefined {
  if (system === standardSystems.snomed) return 'snomed';
  if (system === standardSystems.loinc) return 'loinc';
  const written = plainUri(system).trim();
  return names.find(([, pattern]) => pattern.test(written))?.[0];
}

/** Printable ASCII as a URI escapes it, and as the ids of converted exams do. */
const escaped = /%([2-7][0-9a-f])|~([2-7][0-9a-f])~/gi;

/**
 * A text as its reader takes it: compatibility forms, escapes of ASCII (twice over), backslashes and
 * marks without width undone, in lower case. For comparing only.
 */
export function plainUri(text: string): string {
  // Nearly every URI is of plain characters, of which nothing is to be undone.
  if (/^[!-$&-[\]-}]*$/.test(text)) return text.toLowerCase();
  let plain = text.normalize('NFKC').replace(/[\u00AD\u200B-\u200F\u2060\uFEFF]/g, '');
  for (let times = 0; times < 2; times++) {
    plain = plain.replace(escaped, (_, uri?: string, id?: string) =>
      String.fromCharCode(Number.parseInt(uri ?? id ?? '', 16)),
    );
  }
  return plain.toLowerCase().replaceAll('\\', '/').replaceAll('\u3002', '.');
}
