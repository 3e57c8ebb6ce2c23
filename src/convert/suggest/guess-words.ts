import { targetConversion } from '../../kinds/registries/conversions.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { WordTable } from '../mapping/mapping.ts';
import type { Target } from '../mapping/target.ts';

/** Words whose meaning a person has to say, with the readings they can have (common practice, no source). */
export const ambiguousWords: ReadonlyMap<string, string> = new Map([
  ['nad', 'no abnormality detected, or no acute distress'],
  ['n/e', 'not examined, or no evidence, or normal examination'],
  ['ne', 'not examined, or no evidence, or normal examination'],
  ['n/a', 'not applicable, or not available'],
  ['na', 'not applicable, or not available'],
  ['o', 'nothing found, or not examined'],
  ['0', 'nothing found, or not examined'],
  ['-', 'absent, or no statement'],
  ['n', 'no, or normal'],
  ['wnl', 'within normal limits, by an unknown method'],
]);

/** Plain words of each kind (common practice, no source). */
const plainWords: ReadonlyMap<string, readonly string[]> = new Map([
  ['present', ['+', '+ve', 'pos', 'positive', 'present', 'yes', 'y', 'true']],
  ['absent', ['-ve', 'neg', 'negative', 'absent', 'no', 'nil', 'false']],
  ['indeterminate', ['?', 'unsure', 'equivocal']],
  ['normal', ['normal']],
  ['abnormal', ['abnormal', 'abn']],
  ['yes', ['yes', 'y', '+', 'true']],
  ['no', ['no', 'false']],
  ['unsure', ['?', 'unsure']],
]);

/**
 * A word table for the words of a sample. A word that is not plain means `text` for now: it is kept
 * as text until a person says what it means.
 */
export function guessWords(
  words: readonly string[],
  target: Target,
  catalogue: Catalogue,
): WordTable {
  const allowed = targetConversion(target).meanings(target, catalogue);
  return Object.fromEntries(
    words.map((word): [string, string] => {
      const folded = word.toLowerCase();
      if (ambiguousWords.has(folded)) return [word, 'text'];
      const code = allowed.find(
        (meaning) => meaning === folded || plainWords.get(meaning)?.includes(folded) === true,
      );
      return [word, code ?? 'text'];
    }),
  );
}
