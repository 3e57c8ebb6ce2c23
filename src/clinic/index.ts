export type { Clinic } from './clinic.ts';
export type {
  ClinicChecks,
  ClinicCoding,
  ClinicExport,
  ClinicFile,
  ClinicFiling,
  ClinicWords,
  CodeMapRow,
  SnomedChoice,
} from './clinic-file.ts';
export { clinicCodeSystem } from './definitions/code-system.ts';
export { clinicDefinitions } from './definitions/definitions.ts';
export { firstClinicFile } from './first-file.ts';
export { parseClinic } from './parse-clinic.ts';
export { type UndecidedPart, undecidedIssue } from './undecided.ts';
