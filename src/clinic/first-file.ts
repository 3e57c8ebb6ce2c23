import type { ClinicFile } from './clinic-file.ts';

/**
 * A file to begin with: nothing is decided in it, and all that somebody has to decide stands in it as
 * `undecided`.
 *
 * @returns The file as plain data, which `parseClinic` accepts.
 * @example
 * const text = toJson(firstClinicFile(), { pretty: true });
 */
export function firstClinicFile(): ClinicFile {
  return {
    format: 'face-neck-clinic/1',
    language: 'undecided',
    identity: 'undecided',
    snomed: 'undecided',
    catalogue: { system: 'undecided', regions: [], findings: [], protocols: [] },
    words: {},
    codeMap: [],
    export: { fhirVersion: 'R4', bundleType: 'undecided', masterData: 'match' },
    checks: { ruleSets: 'undecided' },
  };
}
