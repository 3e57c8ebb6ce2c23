export type { Mapping } from '../mapping/mapping.ts';
export type { ExpectedPart, MappingTest, TestExpectation } from '../mapping/test.ts';
export {
  type MappingTestOptions,
  type MappingTestResult,
  type MappingTestRun,
  type TestFailure,
  testMapping,
} from '../mapping-tests/test-mapping.ts';
export { mappingTestText } from '../mapping-tests/test-text.ts';
export { type MappingOptions, prepareMapping } from '../prepare/prepare-mapping.ts';
export { parseMappingText, readMapping } from '../prepare/read-mapping.ts';
export type { LanguageCount } from '../scan/languages.ts';
export {
  type MappingPart,
  type MisfitOptions,
  type Misfits,
  type MissingName,
  misfits,
  type UnlistedItem,
  type UnnamedField,
} from '../scan/misfits.ts';
export { misfitsText } from '../scan/misfits-text.ts';
export { type Scan, type ScanOptions, scanExport } from '../scan/scan.ts';
export type { Counted, ScannedField } from '../scan/scan-field.ts';
export { scanText } from '../scan/scan-text.ts';
export type { Proposal, ProposalQuestion, ProposalReason } from './proposal.ts';
export { meaningText, questionText, reasonText } from './proposal-text.ts';
export { type Suggestion, type SuggestOptions, suggestMapping } from './suggest-mapping.ts';
export { suggestionText } from './suggestion-text.ts';
