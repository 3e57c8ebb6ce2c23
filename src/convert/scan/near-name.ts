import { termsOf } from '../../find/fold.ts';
import { nearest } from '../../issues/nearest.ts';
import { nameParts, wordsOf } from '../suggest/names/name-parts.ts';
import { shortSides } from '../suggest/names/name-words.ts';
import { keyOf } from '../suggest/names/use-words.ts';

/**
 * The one name of a list that is the same in other letters, order or signs, or is spelt almost alike;
 * never one that differs in a side, a unit, a number or a denial.
 */
export function nearName(name: string, others: readonly string[]): string | undefined {
  const kept = keptOf(name);
  const possible = others.filter((other) => keptOf(other) === kept && !isOtherLetter(name, other));
  const key = wordKey(name);
  const same = possible.filter((other) => wordKey(other) === key);
  if (same.length > 0) return same.length === 1 ? same[0] : undefined;
  return nearest(name, possible);
}

/** What a name must keep to mean the same. */
function keptOf(name: string): string {
  const { side, twoSides, negation, unit } = nameParts(name, shortSides);
  const digits = name.match(/\d+|\b[IVX]+[AB]?\b/g) ?? [];
  return JSON.stringify([side?.side, twoSides, negation, unit?.code, digits]);
}

function wordKey(name: string): string {
  return keyOf(termsOf(wordsOf(name).join(' ')));
}

/** Names such as `ptosisr` and `ptosisl`, in which a letter that may be a side is all that differs. */
function isOtherLetter(one: string, other: string): boolean {
  const at = [...one].findIndex((letter, index) => letter !== other[index]);
  const letters = `${one[at] ?? ''}${other[at] ?? ''}`.toLowerCase();
  return /^(?:rl|lr|ds|sd)$/.test(letters) && one.slice(at + 1) === other.slice(at + 1);
}
