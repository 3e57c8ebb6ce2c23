import type { FhirVersion } from '../fhir/version.ts';

/** The stages name pages of R4; what is told names those of the version that is validated. */
const firstPages = 'https://hl7.org/fhir/R4/';

/** Pages whose content stands elsewhere in R5; from memory. */
const movedInR5: ReadonlyMap<string, string> = new Map([['element.html#id', 'types.html#Element']]);

/** The same rule with the page of the version. */
export function linkIn(rule: string, version: FhirVersion): string {
  if (version === 'R4' || !rule.startsWith(firstPages)) return rule;
  const page = rule.slice(firstPages.length);
  const there = version === 'R5' ? (movedInR5.get(page) ?? page) : page;
  return `https://hl7.org/fhir/${version}/${there}`;
}

/** Whatever the version of its page, a rule is the same. */
export function withoutVersion(rule: string): string {
  return rule.replace(/^https:\/\/hl7\.org\/fhir\/R(?:4B|5)\//, firstPages);
}
