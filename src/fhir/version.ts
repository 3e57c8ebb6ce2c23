export type FhirVersion = 'R4' | 'R4B' | 'R5';

export const fhirVersions: readonly FhirVersion[] = ['R4', 'R4B', 'R5'];

/** Version numbers as they stand in `meta`, packages and CapabilityStatements. */
export const fhirVersionNumber: Readonly<Record<FhirVersion, string>> = {
  R4: '4.0.1',
  R4B: '4.3.0',
  R5: '5.0.0',
};
