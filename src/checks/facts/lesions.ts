import type { Key } from '../../model/primitive.ts';
import type { Finding, ScaleScore } from '../../model/statement.ts';
import type { CheckContext } from '../context.ts';
import { compare, type Exact } from '../figures/decimal.ts';
import { type Fact, known, some, unknown } from './fact.ts';
import { figureOf, isMeasured, type Measured, type Unmeasured } from './measured.ts';
import { codedAttribute } from './signs.ts';

/** A skin lesion that a checklist was begun for, or that is pigmented and was measured or looks or is told to be odd. */
export interface Lesion {
  /** Key of the finding, or of the score where no finding was named. */
  readonly key: Key;
  readonly finding: Finding | undefined;
  readonly scores: readonly ScaleScore[];
  readonly diameter: Measured | Unmeasured;
}

const pigmented: ReadonlySet<string> = new Set([
  'pigmented-lesion',
  'suspicious-pigmented-lesion',
  'naevus',
  'solar-lentigo',
  'melanoma',
]);

const suspicious: ReadonlySet<string> = new Set(['suspicious-pigmented-lesion']);

/** Attributes that count in a checklist. */
const oddAttributes = [
  ['lesion-border', 'irregular'],
  ['lesion-colour', 'variegated'],
  ['lesion-secondary', 'crust'],
  ['lesion-symptom', 'bleeding'],
] as const;

/** Lesions for the 7-point checklist and ABCDE, in the order of the exam. */
export function lesionsOf(context: CheckContext): readonly Lesion[] {
  const { index } = context;
  const scores = [...index.about('scale-score', '7pcl'), ...index.about('scale-score', 'abcde')];
  const measured = new Set(index.about('measurement', 'lesion-max').map((one) => one.about));
  const scored = new Set(scores.map((one) => one.about));
  const changing = index
    .about('symptom', 'sym-skin.changing-lesion')
    .some((one) => one.answer === 'yes');
  const odd = (one: Finding): boolean =>
    measured.has(one.key) ||
    changing ||
    suspicious.has(one.finding) ||
    oddAttributes.some(([attribute, value]) => codedAttribute(one, attribute) === value);
  const found = index
    .all('finding')
    .filter((one) => one.presence === 'present')
    .filter((one) => scored.has(one.key) || (pigmented.has(one.finding) && odd(one)));
  const keys = new Set(found.map((one) => one.key));
  const loose = scores.filter((one) => one.about === undefined || !keys.has(one.about));
  return [
    ...found.map((finding) => ({
      key: finding.key,
      finding,
      scores: scores.filter((one) => one.about === finding.key),
      diameter: diameterOf(context, finding.key),
    })),
    ...loose.map((score) => ({
      key: score.key,
      finding: undefined,
      scores: [score],
      diameter: { missing: context.words.phrases.diameter },
    })),
  ];
}

/** Greatest diameter measured of a finding. Several that differ give no figure. */
export function diameterOf(context: CheckContext, finding: Key): Measured | Unmeasured {
  const figures = context.index
    .about('measurement', 'lesion-max')
    .filter((one) => one.about === finding)
    .map((one) => figureOf(context, one));
  const first = figures[0];
  const { phrases } = context.words;
  if (first === undefined) return { missing: phrases.diameter };
  if (!isMeasured(first)) return first;
  const differing = figures.some(
    (one) => !isMeasured(one) || compare(one.value, first.value) !== 0,
  );
  return differing ? { missing: phrases['several-diameters'] } : first;
}

/** Whether a figure lies over a limit, also where only a bound is known and settles it. */
export function exceeds(
  { words }: CheckContext,
  figure: Measured | Unmeasured,
  limit: Exact,
  orEqual: boolean,
): Fact {
  if (!isMeasured(figure)) return unknown(figure.missing);
  const order = compare(figure.value, limit);
  const over = orEqual ? order >= 0 : order > 0;
  const { key } = figure.statement;
  const { bound } = figure;
  if (bound === undefined) return known(over, key);
  const upward = bound === '>' || bound === '>=';
  const settled = upward
    ? over || (bound === '>' && order === 0)
    : !over || (bound === '<' && order === 0);
  return settled ? known(upward, key) : unknown(words.phrases['inexact-figure']);
}

/** What the examiner answered to an item of a checklist for the lesion. */
export function itemAnswer(lesion: Lesion, scale: string, item: string, inWords: string): Fact {
  for (const score of lesion.scores) {
    if (score.scale !== scale) continue;
    const answer = score.items?.find((one) => one.item === item)?.value;
    if (answer !== undefined)
      return known(answer === true || (answer !== false && answer > 0), score.key);
  }
  return unknown(inWords);
}

/** An attribute of the lesion that says yes; another value of it says nothing either way. */
export function attributeSays(lesion: Lesion, attribute: string, values: readonly string[]): Fact {
  const { finding } = lesion;
  const value = finding && codedAttribute(finding, attribute);
  if (finding === undefined || value === undefined || !values.includes(value)) {
    return { holds: undefined, used: [], missing: [] };
  }
  return known(true, finding.key);
}

/** The first clear answer among several ways to know one thing. */
export function firstKnown(...facts: readonly Fact[]): Fact {
  return facts.find((fact) => fact.holds !== undefined) ?? some(facts);
}
