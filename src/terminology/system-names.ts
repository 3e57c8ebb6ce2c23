/** Code systems with rules of their own here, by the URIs that FHIR fixes for them. */
export const standardSystems = {
  snomed: 'http://snomed.info/sct',
  loinc: 'http://loinc.org',
} as const;

export type StandardSystem = keyof typeof standardSystems;

/**
 * Names under which the two systems travel, right or wrong: any URI on their sites, their object
 * identifiers, and their bare names. What is named so is that system, and its licence applies.
 * @see https://hl7.org/fhir/R4/terminologies-systems.html
 */
const names: readonly (readonly [StandardSystem, RegExp])[] = [
  [
    'snomed',
    /^[a-z]+:\/\/([^/@]*@)?([a-z0-9-]+\.)*(snomed\.(info|org)|ihtsdo\.org)\.?(:\d+)?(\/|$)/,
  ],
  ['snomed', /^(urn:oid:)?2\.16\.840\.1\.113883\.6\.96$/],
  ['snomed', /^(urn:)?(sct|snomed[ -]?ct)$/],
  ['loinc', /^[a-z]+:\/\/([^/@]*@)?([a-z0-9-]+\.)*loinc\.org\.?(:\d+)?(\/|$)/],
  ['loinc', /^(urn:oid:)?2\.16\.840\.1\.113883\.6\.1$/],
  ['loinc', /^(urn:)?(loinc|ln)$/],
];

/** Which of the two a system is meant to be, however it is written; undefined for every other. */
export function standardSystem(system: string): StandardSystem | undefined {
  const written = system.trim().toLowerCase();
  return names.find(([, pattern]) => pattern.test(written))?.[0];
}
