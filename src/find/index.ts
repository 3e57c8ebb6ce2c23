export { type FindOptions, type Found, find } from './find.ts';
export type { FindKind, FindLanguage, FurtherWords, PhraseUse } from './phrases.ts';
