import type { Coding, Reference, Signature } from 'fhir/r4.js';
import { hl7Display } from '../terminology/published/hl7.ts';

/** Codes of what a signature is for. */
export const SIGNATURE_TYPE = 'urn:iso-astm:E1762-95:2013';

/** Says in which form the signed resources are read: FHIR's own, without narrative and meta. */
export const SIGNED_FORM =
  'application/fhir+json;canonicalization=http://hl7.org/fhir/canonicalization/json#static';

/** What a signature is for, as the last number of its code in ASTM E1762. */
const purposes = {
  author: '1.2.840.10065.1.12.1.1',
  coauthor: '1.2.840.10065.1.12.1.2',
  verification: '1.2.840.10065.1.12.1.5',
  validation: '1.2.840.10065.1.12.1.6',
  review: '1.2.840.10065.1.12.1.13',
  source: '1.2.840.10065.1.12.1.14',
} as const;

export type SignaturePurpose = keyof typeof purposes;

export const signaturePurposes = Object.keys(purposes) as SignaturePurpose[]; // its own keys

/** A signature that somebody made of an exported record; this library makes none. */
export interface ExamSignature {
  /** Version of the exam: the step of its history that was signed. */
  readonly version: number;
  readonly purpose: SignaturePurpose;
  /** When it was made: date and time with seconds and zone. */
  readonly when: string;
  /** Its form: `application/jose` for a JSON Web Signature. */
  readonly format: string;
  /** Its bytes, as base64. */
  readonly data: string;
}

/** @see https://hl7.org/fhir/R4/datatypes.html#signature */
export function signatureElement(
  { purpose, when, format, data }: Omit<ExamSignature, 'version'>,
  who: Reference,
): Signature {
  const code = purposes[purpose];
  const type: Coding = { system: SIGNATURE_TYPE, code, display: hl7Display(SIGNATURE_TYPE, code) };
  return { type: [type], when, who, targetFormat: SIGNED_FORM, sigFormat: format, data };
}

export function purposeOf(code: unknown): SignaturePurpose | undefined {
  return signaturePurposes.find((purpose) => purposes[purpose] === code);
}
