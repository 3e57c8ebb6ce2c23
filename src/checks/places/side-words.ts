/** English side words, and the two common marks; ambiguous ones (LE, RT) are left alone. */
const sideWord = /\b(?:right|left)\b|\((?:R|L)\)/gi;
/** Uses of the two words that name no side: "all right", "right away", "was left open". */
const noSide =
  /\ball right\b|\bright (?:away|now|angles?|through|after)\b|\bright-angled?\b|\b(?:is|was|were|be|been|has|have|had|he|she|they|patient) left\b|\bleft (?:out|over|alone|open|as|for|untreated|undisturbed|in place)\b/gi;

/** The side that the words name; undefined where they name none. */
export function sideNamed(words: string): 'right' | 'left' | 'both' | undefined {
  let right = false;
  let left = false;
  for (const [word] of words.replace(noSide, ' ').matchAll(sideWord)) {
    if (/^\(?r/i.test(word)) right = true;
    else left = true;
    if (right && left) return 'both';
  }
  if (!right && !left) return undefined;
  return right ? 'right' : 'left';
}
