/** Canonical base of our own profiles and code systems; a reserved name, so that it never resolves by accident. */
export const CANONICAL_BASE = 'https://face-neck-fhir.example/fhir';
