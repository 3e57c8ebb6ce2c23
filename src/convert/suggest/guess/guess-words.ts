import { targetConversion } from '../../../kinds/registries/conversions.ts';
import type { Catalogue } from '../../../terminology/catalogue.ts';
import type { WordTable } from '../../mapping/mapping.ts';
import type { Target } from '../../mapping/target.ts';

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
  ['o.b.', 'ohne Befund: without a finding, by an unknown method'],
  ['ob', 'ohne Befund: without a finding, by an unknown method'],
  ['1', 'present, or a grade or number'],
  ['x', 'found, or done'],
  ['k.a.', 'keine Angabe: not stated, or not asked'],
  ['n.b.', 'nicht beurteilbar or nicht bestimmt: not to be decided, or not done'],
  ['n.u.', 'nicht untersucht, or nicht unauffällig'],
]);

const presentDe: readonly string[] = ['vorhanden', 'positiv', 'pos.'];
const absentDe: readonly string[] = ['nicht vorhanden', 'negativ', 'neg.'];

/** Plain words of each kind (common practice, no source). */
const plainWords: ReadonlyMap<string, readonly string[]> = new Map([
  [
    'present',
    ['+', '+ve', 'pos', 'positive', 'present', 'yes', 'y', 'true', 'ja', 'j', ...presentDe],
  ],
  ['absent', ['-ve', 'neg', 'negative', 'absent', 'no', 'nil', 'false', 'nein', ...absentDe]],
  ['indeterminate', ['?', 'unsure', 'equivocal', 'unsicher', 'fraglich']],
  ['normal', ['normal', 'unauffällig']],
  ['abnormal', ['abnormal', 'abn', 'auffällig']],
  ['yes', ['yes', 'y', '+', 'true', 'ja', 'j']],
  ['no', ['no', 'false', 'nein']],
  ['unsure', ['?', 'unsure', 'unsicher']],
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
