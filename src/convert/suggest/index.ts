export { type Suggestion, type SuggestOptions, suggestMapping } from './suggest-mapping.ts';
export { suggestionText } from './suggestion-text.ts';
