export type { ExamSignature, SignaturePurpose } from '../fhir/signature.ts';
export { contentToSign } from './signed-content.ts';
export { type HeldSignature, type Verifier, verifySignatures } from './verify.ts';
