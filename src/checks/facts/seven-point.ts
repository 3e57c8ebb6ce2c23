import type { CheckContext } from '../context.ts';
import { whole } from '../figures/decimal.ts';
import type { Fact } from './fact.ts';
import { attributeSays, exceeds, firstKnown, itemAnswer, type Lesion } from './lesions.ts';

/** Diameter from which the checklist counts a point. */
const DIAMETER = whole(7);
/** Total from which the checklist asks for referral. */
export const SEVEN_POINT_LIMIT = 3;

export interface SevenPoint {
  /** Points of the items that are answered yes. */
  readonly least: number;
  /** The same with every open item counted as yes. */
  readonly most: number;
  readonly used: readonly string[];
  readonly missing: readonly string[];
}

/** The weighted 7-point checklist of a lesion, with its bounds where items are open. */
export function sevenPoint(context: CheckContext, lesion: Lesion): SevenPoint {
  const weights = context.catalogue.scales.get('7pcl')?.items ?? [];
  const facts = weights.map((row) => ({
    row,
    fact: itemFact(context, lesion, row.code, row.display),
  }));
  const points = (wanted: (fact: Fact) => boolean): number =>
    facts.reduce((sum, { row, fact }) => sum + (wanted(fact) ? row.weight : 0), 0);
  return {
    least: points((fact) => fact.holds === true),
    most: points((fact) => fact.holds !== false),
    used: [...new Set([lesion.key, ...facts.flatMap(({ fact }) => fact.used)])],
    missing: facts.flatMap(({ row, fact }) => (fact.holds === undefined ? [row.display] : [])),
  };
}

/** The measured diameter decides its item; other items are the examiner's, or plain in an attribute. */
function itemFact(context: CheckContext, lesion: Lesion, item: string, display: string): Fact {
  const stated = itemAnswer(lesion, '7pcl', item, display);
  switch (item) {
    case '7pcl-diameter':
      return firstKnown(exceeds(context, lesion.diameter, DIAMETER, true), stated);
    case '7pcl-irregular-shape':
      return firstKnown(stated, attributeSays(lesion, 'lesion-border', ['irregular']));
    case '7pcl-irregular-colour':
      return firstKnown(stated, attributeSays(lesion, 'lesion-colour', ['variegated']));
    case '7pcl-oozing-crusting':
      return firstKnown(stated, attributeSays(lesion, 'lesion-secondary', ['crust']));
    default:
      return stated;
  }
}
