import { published } from '../../src/generate/published.ts';
import type { FhirRelease } from './corpus.ts';

export const releases: readonly FhirRelease[] = ['R4', 'R4B', 'R5'];

const examples = {
  R4: ['hl7.fhir.r4.examples', '4.0.1'],
  R4B: ['hl7.fhir.r4b.examples', '4.3.0'],
  R5: ['hl7.fhir.r5.examples', '5.0.0'],
} as const;

/** Folder with the published examples of a version. */
export function publishedExamples(version: FhirRelease): Promise<string> {
  const [name, edition] = examples[version];
  return published(name, edition);
}

/** HL7's extensions pack, to load for every version: the R4 edition reads as well in R4B. */
export async function extensionsPack(): Promise<{ version: FhirRelease; folder: string }[]> {
  const [r4, r5] = await Promise.all([
    published('hl7.fhir.uv.extensions.r4', '5.3.0-ballot-tc1'),
    published('hl7.fhir.uv.extensions.r5', '5.3.0-ballot-tc1'),
  ]);
  return releases.map((version) => ({ version, folder: version === 'R5' ? r5 : r4 }));
}
