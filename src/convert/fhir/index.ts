export type { ConvertedExam, ConvertResult } from '../exams/convert-text.ts';
export type { QuarantineEntry } from '../exams/quarantine.ts';
export type { FhirMapping } from '../mapping/fhir-mapping.ts';
export { fromFhirBundles } from './from-fhir-bundles.ts';
