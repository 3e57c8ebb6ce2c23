import { units } from './tables/units.ts';
import type { Evidence } from './types.ts';

/** A span in the canonical unit of the measure, both ends in it. */
export interface Span {
  readonly low: number;
  readonly high: number;
  /** Publication, or what the figure is taken from. */
  readonly source: string;
  readonly evidence: Evidence;
}

/** What a figure of a measure can be at all, and what it is as a rule. No range of health. */
export interface Limits {
  /** Outside of it no human face or neck can give the figure. */
  readonly possible: Span;
  /** Outside of it a figure is looked at a second time: it can be true, and is more often a slip. */
  readonly usual: Span;
}

const anatomy =
  'size of the part in adults with room for the largest deformity, from memory; common practice, no source';

const body = (low: number, high: number): Span => ({
  low,
  high,
  source: anatomy,
  evidence: 'common-practice',
});
/** A span around published figures, widened on purpose: it warns of slips and not of disease. */
const near = (low: number, high: number, source: string, evidence: Evidence = 'read'): Span => ({
  low,
  high,
  source,
  evidence,
});
const trade = (low: number, high: number): Span =>
  near(
    low,
    high,
    'common practice, no source; set so that real findings seldom warn',
    'common-practice',
  );

const korean =
  'Korean study of margin reflex distances, 380 patients: MRD1 3.23, SD 0.92; MRD2 5.66, SD 0.58';
const fissure = 'Dutton JJ, chapter abstract: fissure of 8 to 10 mm; other pages 7 to 12 mm';
const dodgson = 'Dodgson NA 2004, Proc SPIE 5291:36-46: nearly all adults 45 to 80 mm';
const canthi = 'review of 67 studies, PMC9029890: pooled means 31.2 to 38.5 mm, SD up to 3.2';
const crease = 'Cartwright MJ et al. 1994, Am J Ophthalmol 117:231-4: mean 6.4 mm, SD 1.2';
const levator = 'ophthalmology teaching pages: 12 to 15 mm or more is normal, 4 mm or less poor';
const exophthalmometry =
  'iovs 2412741: upper normal about 21 mm (white), 19.4 mm (Asian, mean 14.4, SD 2.5)';
const medscape = 'Medscape 1281565: laxity of the canthi graded up to above 6 mm';
const jaw = 'Zawawi KH 2003, J Can Dent Assoc 69:737-41: mean opening 48.8 mm';
const jawSeries =
  'Swiss Dental Journal, 500 patients: excursion 9.4 and 11.8 mm, protrusion 8.8 mm';
const whisper = 'WHO hearing screening, annex 3: six items a side';

/** By code of measures.json. Every measure that is stated as a quantity or a count has its row. */
export const limits: Readonly<Record<string, Limits>> = {
  mrd1: { possible: body(-12, 15), usual: near(-3, 7, korean) },
  mrd2: { possible: body(-5, 20), usual: near(2, 10, korean) },
  pfh: { possible: body(0, 25), usual: near(2, 16, fissure) },
  pfw: {
    possible: body(5, 60),
    usual: near(18, 40, 'eyelid page: fissure of 10 by 30 mm', 'second-hand'),
  },
  levator: { possible: body(0, 30), usual: near(0, 20, levator, 'second-hand') },
  'lid-crease': { possible: body(0, 30), usual: near(1, 14, crease) },
  lagophthalmos: { possible: body(0, 25), usual: trade(0, 12) },
  'lid-distraction': {
    possible: body(0, 40),
    usual: near(0, 20, 'lower lid lax above 6 or 8 mm', 'second-hand'),
  },
  'mct-laxity': { possible: body(0, 30), usual: near(0, 10, medscape) },
  'lct-laxity': { possible: body(0, 30), usual: near(0, 12, medscape) },
  icd: { possible: body(5, 90), usual: near(20, 52, canthi) },
  ipd: { possible: body(20, 110), usual: near(40, 80, dodgson) },
  hertel: { possible: body(0, 45), usual: near(7, 32, exophthalmometry) },
  'pupil-diam': {
    possible: near(
      0,
      13,
      'no pupil is wider than the cornea, of 11 to 12 mm, from memory',
      'memory',
    ),
    usual: trade(1, 9.5),
  },
  'brow-excursion': { possible: body(0, 45), usual: trade(0, 22) },
  'commissure-excursion': { possible: body(0, 60), usual: trade(0, 28) },
  'eye-closure-asym': { possible: body(0, 25), usual: trade(0, 12) },
  'static-lid-asym': { possible: body(0, 25), usual: trade(0, 9) },
  'facial-cant': { possible: body(0, 80), usual: trade(0, 20) },
  mio: { possible: body(0, 110), usual: near(8, 72, jaw) },
  'mio-assist': { possible: body(0, 120), usual: near(8, 76, jaw) },
  'lat-exc': { possible: body(0, 35), usual: near(0, 18, jawSeries) },
  protrusion: { possible: body(0, 35), usual: near(0, 17, jawSeries) },
  overbite: { possible: body(-25, 30), usual: trade(-8, 12) },
  'jaw-deviation': { possible: body(0, 40), usual: trade(0, 16) },
  pnif: {
    possible: body(0, 700),
    usual: near(20, 380, 'Ottaviano G et al. 2006, Rhinology: depends on sex, age and height'),
  },
  whisper: { possible: near(0, 6, whisper), usual: near(0, 6, whisper) },
  'neck-flex': { possible: body(0, 180), usual: trade(0, 100) },
  'node-size': { possible: body(0, 300), usual: trade(2, 80) },
  'node-ls-ratio': {
    possible: near(1, 60, 'the longer axis over the shorter one is 1 or more', 'common-practice'),
    usual: trade(1, 6),
  },
  'neck-mass': { possible: body(0, 400), usual: trade(3, 150) },
  'thyroid-nodule': { possible: body(0, 200), usual: trade(2, 90) },
  'lesion-max': { possible: body(0, 450), usual: trade(0.5, 100) },
  'lesion-perp': { possible: body(0, 450), usual: trade(0.5, 100) },
  'lesion-elev': { possible: body(0, 200), usual: trade(0, 35) },
  'lesion-count': { possible: body(0, 10_000), usual: trade(0, 200) },
  mag: {
    possible: near(1, 1000, 'a magnification makes nothing smaller', 'common-practice'),
    usual: trade(1, 70),
  },
};

/** Limits of a measure that an adopter added are not known. */
export function limitsOf(measure: string): Limits | undefined {
  return Object.hasOwn(limits, measure) ? limits[measure] : undefined;
}

export function isWithinSpan(value: number, { low, high }: Span): boolean {
  // Lengths are computed from decimals: a rounding error of the last digit is not a breach.
  return value >= low - 1e-9 && value <= high + 1e-9;
}

const factors: ReadonlyMap<string, number> = /*@__PURE__*/ new Map(
  units.map(({ code, factor }) => [code, Number(factor)]),
);

/** A decimal in the canonical unit of its measure. A number will do: limits need no exact decimals. */
export function canonicalFigure(value: string, unit: string): number | undefined {
  const factor = factors.get(unit);
  return factor === undefined ? undefined : Number(value) * factor;
}

/** Whether a figure, or every figure that a bound leaves, lies outside of a span. */
export function liesOutside(
  figure: number,
  span: Span,
  bound: '<' | '<=' | '>=' | '>' | undefined,
): boolean {
  if (bound === undefined) return !isWithinSpan(figure, span);
  return bound.startsWith('<') ? figure < span.low : figure > span.high;
}
