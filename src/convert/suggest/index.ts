export type { Mapping } from '../mapping/mapping.ts';
export { prepareMapping } from '../prepare/prepare-mapping.ts';
export { parseMappingText, readMapping } from '../prepare/read-mapping.ts';
export { type Suggestion, type SuggestOptions, suggestMapping } from './suggest-mapping.ts';
export { suggestionText } from './suggestion-text.ts';
