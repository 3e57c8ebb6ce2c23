import type { BundleType, ExportOptions } from '../../src/export/options.ts';
import type { FhirVersion } from '../../src/fhir/version.ts';
import { clinic } from '../clinic.ts';

export const versions: readonly FhirVersion[] = ['R4', 'R4B', 'R5'];

/** Every way in which a bundle can be written. */
export const types: readonly (Pick<ExportOptions, 'transaction'> & { bundleType: BundleType })[] = [
  { bundleType: 'collection' },
  { bundleType: 'document' },
  { bundleType: 'transaction' },
  { bundleType: 'transaction', transaction: 'conditional' },
];

export const everyExport: readonly ExportOptions[] = versions.flatMap((fhirVersion) =>
  types.map((type) => ({ ...clinic, fhirVersion, ...type })),
);
