import { distanceWithin } from '../../../issues/nearest.ts';

/** Respells words by a vocabulary; a word that it has, or that two of its words are as near to, stays. */
export type Respell = (term: string) => string;

/** Shortest word that is corrected at all, and from which on two letters may differ. */
const SHORTEST = 5;
const TWO_LETTERS = 9;

/** Words that are looked at in one call: each costs a look at the whole vocabulary. */
const MOST = 400;

export function respeller(vocabulary: ReadonlySet<string>): Respell {
  const known = new Map<string, string>();
  return (term) => {
    if (term.length < SHORTEST || vocabulary.has(term) || /\d/.test(term)) return term;
    const before = known.get(term);
    if (before !== undefined) return before;
    if (known.size >= MOST) return term;
    const right = nearestOne(term, vocabulary) ?? term;
    known.set(term, right);
    return right;
  };
}

/** The one word that is nearest; undefined where several are, or none is near. */
function nearestOne(term: string, vocabulary: ReadonlySet<string>): string | undefined {
  let distance = term.length < TWO_LETTERS ? 1 : 2;
  let found: string[] = [];
  for (const word of vocabulary) {
    if (word.length < SHORTEST - 1 || Math.abs(word.length - term.length) > distance) continue;
    const steps = distanceWithin(term, word, distance);
    if (steps === undefined) continue;
    if (steps < distance) found = [];
    distance = steps;
    found.push(word);
  }
  return found.length === 1 ? found[0] : undefined;
}
