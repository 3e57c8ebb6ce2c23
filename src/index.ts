export { toBundle, toBundleOrThrow, type AnyBundle } from './export/to-bundle.ts';
export type { BundleType, ExportOptions, IdentitySystems } from './export/options.ts';
export { toJson } from './fhir/to-json.ts';
export { DECIMAL_TEXT, decimalText } from './fhir/decimal.ts';
export type { SnomedLicence, SnomedPolicy } from './fhir/snomed-policy.ts';
export { CANONICAL_BASE } from './fhir/systems.ts';
export { type FhirVersion, fhirVersionNumber } from './fhir/version.ts';
export {
  hasErrors,
  IssueError,
  type Issue,
  type IssueCode,
  issueText,
  type Outcome,
  type Severity,
  type SourcePosition,
} from './issue.ts';
export { issueCodes } from './issue-codes.ts';
export { type ExamDraft, type ExamStart, startExam, state } from './model/builder/draft.ts';
export { conclude, finishExam } from './model/builder/finish-exam.ts';
export { added, type AddedCode, type ExaminedPlace, type Place } from './model/builder/place.ts';
export {
  abnormal,
  absent,
  comparedSides,
  indeterminate,
  measured,
  moved,
  normal,
  notApplicable,
  noted,
  notExamined,
  partlyExamined,
  pictured,
  present,
  type ReasonGiven,
  scored,
  sensation,
  symptom,
  tested,
  unusable,
} from './model/builder/statements.ts';
export type * from './model/conclusion.ts';
export type * from './model/exam.ts';
export { type ParseOptions, parseExam, parseExamOrThrow } from './model/parse-exam.ts';
export type * from './model/people.ts';
export type * from './model/primitive.ts';
export type * from './model/record-event.ts';
export type * from './model/statement.ts';
export { type Path, pathPointer, pathText } from './path.ts';
export {
  builtInCatalogue,
  type Catalogue,
  type CatalogueAdditions,
  createCatalogue,
} from './terminology/catalogue.ts';
