import type { CheckContext } from '../context.ts';
import { type Fact, known, unknown } from '../facts/fact.ts';
import {
  attributeSays,
  exceeds,
  firstKnown,
  itemAnswer,
  type Lesion,
  lesionsOf,
} from '../facts/lesions.ts';
import { symptom } from '../facts/stated.ts';
import { whole } from '../figures/decimal.ts';
import type { ComputationRule, RuleFinding } from '../rule.ts';

/** Diameter that a lesion must exceed. */
const DIAMETER = whole(6);

/** Positive letters of ABCDE; fires when there is one. */
export const r13Abcde: ComputationRule = {
  id: 'R13',
  title: 'ABCDE features',
  kind: 'computation',
  version: '1',
  severity: 'information',
  source: 'Abbasi NR et al. 2004, JAMA 292:2771-2776 (D more than 6 mm, E evolving)',
  evidence: 'read',
  run: (context) => lesionsOf(context).map((lesion) => letters(context, lesion)),
};

function letters(context: CheckContext, lesion: Lesion): RuleFinding {
  const answer = (letter: string, words: string): Fact =>
    itemAnswer(lesion, 'abcde', `abcde-${letter}`, words);
  const facts: readonly (readonly [string, Fact])[] = [
    ['A', answer('a', 'asymmetry')],
    ['B', firstKnown(answer('b', 'border'), attributeSays(lesion, 'lesion-border', ['irregular']))],
    [
      'C',
      firstKnown(
        answer('c', 'colour'),
        itemAnswer(lesion, '7pcl', '7pcl-irregular-colour', 'colour'),
        attributeSays(lesion, 'lesion-colour', ['variegated']),
      ),
    ],
    ['D', firstKnown(exceeds(context, lesion.diameter, DIAMETER, false), answer('d', 'diameter'))],
    ['E', evolving(context, lesion, answer('e', 'evolving'))],
  ];
  const positive = facts.filter(([, fact]) => fact.holds === true).map(([letter]) => letter);
  const open = facts.filter(([, fact]) => fact.holds === undefined).map(([letter]) => letter);
  const missing = facts.flatMap(([letter, fact]) => (fact.holds === undefined ? [letter] : []));
  const none = open.length > 0 ? 'not-evaluable' : 'does-not-fire';
  return {
    outcome: positive.length > 0 ? 'fires' : none,
    on: lesion.key,
    inputsUsed: [...new Set([lesion.key, ...facts.flatMap(([, fact]) => fact.used)])],
    inputsMissing: missing,
    text: `ABCDE: ${positive.join(', ') || 'no letter'}${open.length > 0 ? `; not known: ${open.join(', ')}` : ''}.`,
    values: [{ name: 'letters', value: positive.join('') }],
  };
}

/** Evolving is known from the examiner, from the prior exam, or from what the patient tells. */
function evolving(context: CheckContext, lesion: Lesion, stated: Fact): Fact {
  const tracking = lesion.finding?.tracking;
  const changed = context.comparisons.find(
    (one) => one.tracking !== undefined && one.tracking === tracking && one.change === 'changed',
  );
  const seen = changed?.now === undefined ? unknown('a prior exam') : known(true, changed.now);
  const told = symptom(context, 'sym-skin.changing-lesion');
  const sized = itemAnswer(lesion, '7pcl', '7pcl-change-in-size', 'change in size');
  return firstKnown(stated, seen, sized.holds === true ? sized : unknown('change'), told);
}
