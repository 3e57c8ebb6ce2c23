export type { CheckResult } from './checks/check-exam.ts';
export { checkExam } from './checks/check-exam.ts';
export type { Change, Comparison } from './checks/compare/comparison.ts';
export {
  type Coverage,
  type CoverageCount,
  type CoverageItem,
  coverageGaps,
  coverExam,
} from './checks/coverage/coverage.ts';
export { outstanding } from './checks/coverage/outstanding.ts';
export { recordPrompts } from './checks/prompts/record-prompts.ts';
export type { Prompt } from './checks/prompts/shown-prompts.ts';
export type { Urgency } from './checks/prompts/urgency.ts';
export type { RuleResult } from './checks/rule.ts';
export { type RuleSet, type RuleSetId, ruleSets } from './checks/rule-sets.ts';
export type {
  CheckOptions,
  CheckSettings,
  Dismissal,
  Judgement,
} from './checks/settings/check-settings.ts';
export { parseCheckSettings } from './checks/settings/parse-settings.ts';
export {
  type ThresholdId,
  type ThresholdSettings,
  thresholds,
} from './checks/settings/thresholds.ts';
export type { CheckWords } from './checks/words/check-words.ts';
export { type MapPolicy, withheldCodes } from './export/coding/code-map-policy.ts';
export type { Detail } from './export/detail.ts';
export {
  type ImportManifest,
  type ImportManifestOptions,
  importManifest,
} from './export/import-manifest.ts';
export type { BundleType, ExportOptions } from './export/options.ts';
export type { MasterData, MasterDataMode } from './export/resources/master-data.ts';
export type { FormMaker, PresentedForm } from './export/resources/presented-form.ts';
export type { Target } from './export/target/guides.ts';
export {
  type AnyBundle,
  type Exporter,
  prepareExport,
  toBundle,
  toBundleOrThrow,
} from './export/to-bundle.ts';
export {
  type NdjsonOptions,
  type NdjsonPart,
  ndjsonParts,
  toNdjson,
} from './export/to-ndjson.ts';
export type { Filing } from './fhir/filing.ts';
export { DECIMAL_TEXT, decimalText } from './fhir/json/decimal.ts';
export { type FromJsonOptions, fromJson } from './fhir/json/from-json.ts';
export { toJson } from './fhir/json/to-json.ts';
export { type LicenceOptions, licenceIssues } from './fhir/licence/licence-gate.ts';
export type { SnomedLicence, SnomedPolicy } from './fhir/licence/snomed-policy.ts';
export type { ClinicIdentity, IdentitySystems } from './fhir/names/part-names.ts';
export { CANONICAL_BASE } from './fhir/names/systems.ts';
export { type FhirVersion, fhirVersionNumber } from './fhir/version.ts';
export { type Budget, type BudgetName, type BudgetOption, budgets } from './issues/budget.ts';
export { issueCodes, issueTypes } from './issues/codes.ts';
export type { Form, FormWord, JsonKind } from './issues/forms.ts';
export {
  type FactTypes,
  type Failure,
  hasErrors,
  type Issue,
  type IssueCode,
  IssueError,
  type IssueFacts,
  type IssueLanguage,
  issueMessage,
  issueText,
  issueTextIn,
  type Outcome,
  orThrow,
  type Severity,
  type SourcePosition,
  type Success,
} from './issues/issue.ts';
export { type Path, pathPointer, pathText } from './issues/path.ts';
export {
  abnormal,
  absent,
  comparedSides,
  indeterminate,
  measured,
  moved,
  normal,
  notApplicable,
  notExamined,
  noted,
  partlyExamined,
  pictured,
  present,
  type ReasonGiven,
  scored,
  sensation,
  symptom,
  tested,
  unusable,
} from './kinds/registries/builders.ts';
export { type ExamDraft, type ExamStart, startExam, state } from './model/builder/draft.ts';
export { entered } from './model/builder/entered.ts';
export type { EnteredStatement } from './model/builder/entered-statement.ts';
export { conclude, finishExam, finishExamOrThrow } from './model/builder/finish-exam.ts';
export {
  type AddedCode,
  added,
  type ExaminedAt,
  type ExaminedPlace,
  type GivenRegion,
  type Place,
  type PlaceAt,
} from './model/builder/place.ts';
export type * from './model/conclusion.ts';
export type * from './model/exam.ts';
export { examSchema, type StandardSchema } from './model/exam-schema.ts';
export {
  amendExam,
  appendExam,
  type Changes,
  type ChangingStep,
  cancelExam,
  correctExam,
  type ReasonedStep,
  type ReleaseStep,
  releaseExam,
  retractExam,
  type Step,
  type StepAction,
  signExam,
  stepsFrom,
} from './model/life/steps.ts';
export { type ParseOptions, parseExam, parseExamOrThrow } from './model/parse-exam.ts';
export type * from './model/people.ts';
export type * from './model/primitive.ts';
export type * from './model/prompts.ts';
export type * from './model/record-event.ts';
export type * from './model/statement.ts';
export {
  fromBundle,
  fromBundleOrThrow,
  type ReadOptions,
  type ReadOutcome,
  type Remainder,
  type Supplied,
} from './read/from-bundle.ts';
export {
  builtInCatalogue,
  type Catalogue,
  type CatalogueAdditions,
  createCatalogue,
} from './terminology/catalogue.ts';
export { adopterCodes } from './terminology/code-map/adopter-codes.ts';
export type { AdopterCodes, CodeMapEntry } from './terminology/code-map/entry.ts';
export {
  type ConceptMapOptions,
  codesFromConceptMap,
} from './terminology/code-map/from-concept-map.ts';
export { english, inLanguage, type Language } from './terminology/languages/language.ts';
export type { FreeSet } from './terminology/published/snomed.ts';
export type {
  AttributeCode,
  AttributeTypes,
  ConditionCode,
  FindingCode,
  FindingTypes,
  InstrumentCode,
  MeasureCode,
  MeasureConditionCode,
  MethodCode,
  ModalityCode,
  ProtocolCode,
  ReasonCode,
  RegionCode,
  RegionsWithin,
  ScaleCode,
  SectionCode,
  SensationResultCode,
  ServiceCode,
  SymptomCode,
  TestPointCode,
  TestResultCode,
} from './terminology/tables/code-types.ts';
export { toOperationOutcome } from './validate/to-operation-outcome.ts';
