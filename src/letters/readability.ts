/**
 * Measures how easily a text reads, usually as a figure from 0 (very hard) to 100 (very easy);
 * texts that are short and plain can exceed it. English is judged after Flesch R, 1948, J Appl
 * Psychol 32:221-233, and German after Amstad T, 1978. Syllables are counted by groups of vowels,
 * without a silent e at the end of an English word.
 *
 * @param text Whole sentences.
 * @param language Language of the text: `en` or `de`.
 * @returns The figure; 100 for a text without words.
 * @example
 * const plainEnough = readingEase('Your skin looks well.', 'en') >= 60;
 */
export function readingEase(text: string, language: 'en' | 'de'): number {
  const sentences = text.split(/[.!?:]+(?:\s|$)/).filter((one) => /\p{L}/u.test(one));
  const words = text.match(/\p{L}+/gu) ?? [];
  if (sentences.length === 0 || words.length === 0) return 100;
  const syllables = words.reduce((sum, word) => sum + syllablesOf(word, language), 0);
  const length = words.length / sentences.length;
  const weight = syllables / words.length;
  return language === 'de'
    ? 180 - length - 58.5 * weight
    : 206.835 - 1.015 * length - 84.6 * weight;
}

function syllablesOf(word: string, language: 'en' | 'de'): number {
  const plain = word.toLowerCase();
  const spoken =
    language === 'en' && plain.length > 3 ? plain.replace(/(?<![aeiouy])e$/, '') : plain;
  const groups = language === 'en' ? /[aeiouy]+/g : /ei|ie|au|eu|äu|[aeiouyäöü]/g;
  return Math.max(1, spoken.match(groups)?.length ?? 0);
}
