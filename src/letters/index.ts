export type {
  Letter,
  LetterOptions,
  LetterReader,
  LetterSection,
  LetterSentence,
  SentenceSource,
} from './letter.ts';
export type { LetterWords } from './letter-words.ts';
export { readingEase } from './readability.ts';
export { toLetter } from './to-letter.ts';
export { englishLetterWords } from './words/english.ts';
export { germanLetterWords } from './words/german.ts';
export { letterHtml, letterText } from './write-letter.ts';
