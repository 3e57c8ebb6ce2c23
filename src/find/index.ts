export { type FindOptions, type Found, find } from './find.ts';
export type { FindKind, FindLanguage, PhraseUse } from './phrases.ts';
