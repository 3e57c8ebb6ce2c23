import type { Decimal, UnitCode } from '../../model/primitive.ts';
import type { Evidence } from '../../terminology/types.ts';
import { compare, type Exact, exact } from '../figures/decimal.ts';
import { baseValue } from '../figures/units.ts';

export type LimitOperator = 'at-least' | 'more-than' | 'at-most' | 'less-than';

/** A limit that a rule holds a figure to, with where it comes from. */
export interface Threshold {
  readonly title: string;
  readonly comparison: LimitOperator;
  readonly value: Decimal;
  readonly unit: UnitCode;
  readonly source: string;
  readonly evidence: Evidence;
}

const chu = 'Chu EA et al. 2011, Arch Facial Plast Surg 13:14-19 (difference seen by observers)';
const hohman = 'Hohman MH et al. 2014, Laryngoscope 124:860-865 (difference seen by observers)';
const lids = 'OPRS 2024, doi 10.1097/IOP.0000000000002650 (difference seen by lay observers)';
const jawSeries = 'Swiss Dental Journal, 500 patients with temporomandibular disorders';
const durante = 'Durante C et al. 2015, JAMA (ultrasound)';
const dermatology = 'dermatology pages, which disagree between 5 and 10 mm';

export type ThresholdId =
  | 'lid-sum'
  | 'lid-difference'
  | 'lid-difference-marked'
  | 'difference-pfh'
  | 'difference-brow-excursion'
  | 'difference-commissure-excursion'
  | 'difference-lagophthalmos'
  | 'difference-hertel'
  | 'difference-lat-exc'
  | 'eye-closure-asym'
  | 'static-lid-asym'
  | 'facial-cant'
  | 'pupil-difference-common'
  | 'pupil-difference'
  | 'skin-change'
  | 'thyroid-growth-percent'
  | 'thyroid-growth-size'
  | 'jaw-opening'
  | 'jaw-opening-trismus'
  | 'jaw-opening-impaired'
  | 'jaw-opening-assisted'
  | 'jaw-lateral'
  | 'jaw-lateral-impaired'
  | 'jaw-protrusion-impaired'
  | 'small-lesion'
  | 'large-lesion'
  | 'copied-notes';

/**
 * Limits that an adopter may change or switch off. Those of asymmetry come from studies of what
 * people notice and are not limits of disease. Limits that belong to a guideline stand in its rule.
 */
export const thresholds: Readonly<Record<ThresholdId, Threshold>> = {
  'lid-sum': limit(
    'Fissure against the two margin distances',
    'more-than',
    '1',
    'mm',
    'geometry; tolerance is common practice, no source',
    'common-practice',
  ),
  'lid-difference': limit('Upper lid, side difference', 'at-least', '1', 'mm', lids, 'read'),
  'lid-difference-marked': limit(
    'Upper lid, marked side difference',
    'at-least',
    '2',
    'mm',
    'common practice, no source',
    'common-practice',
  ),
  'difference-pfh': limit('Fissure height, side difference', 'at-least', '1', 'mm', lids, 'read'),
  'difference-brow-excursion': limit(
    'Brow excursion, side difference',
    'at-least',
    '3',
    'mm',
    chu,
    'read',
  ),
  'difference-commissure-excursion': limit(
    'Corner of the mouth, side difference',
    'at-least',
    '3',
    'mm',
    `${chu}; ${hohman}`,
    'read',
  ),
  'difference-lagophthalmos': limit(
    'Eye closure, side difference',
    'at-least',
    '2',
    'mm',
    hohman,
    'read',
  ),
  'difference-hertel': limit(
    'Position of the eye, side difference',
    'more-than',
    '2',
    'mm',
    'ophthalmology teaching page',
    'second-hand',
  ),
  'difference-lat-exc': limit(
    'Sideways jaw movement, side difference',
    'more-than',
    '2',
    'mm',
    'secondary page on jaw movement',
    'second-hand',
  ),
  'eye-closure-asym': limit('Eye closure asymmetry', 'at-least', '2', 'mm', hohman, 'read'),
  'static-lid-asym': limit('Lid height asymmetry at rest', 'at-least', '1', 'mm', lids, 'read'),
  'facial-cant': limit(
    'Facial asymmetry',
    'more-than',
    '4',
    'mm',
    'review PMC5556787 (more than 3 to 4 mm is noticed)',
    'read',
  ),
  'pupil-difference-common': limit(
    'Pupils, difference often found in healthy people',
    'at-least',
    '0.4',
    'mm',
    'Lam BL et al. 1987, PubMed 3605282 (about 19 % at one examination)',
    'read',
  ),
  'pupil-difference': limit(
    'Pupils, difference beyond the usual',
    'more-than',
    '1',
    'mm',
    'ophthalmology teaching pages (usually 1 mm at most)',
    'second-hand',
  ),
  'skin-change': limit(
    'Skin lesion, change within the resolution of a ruler',
    'less-than',
    '1',
    'mm',
    'resolution of a millimetre ruler; common practice, no source',
    'common-practice',
  ),
  'thyroid-growth-percent': limit(
    'Thyroid nodule, growth in each of two dimensions',
    'at-least',
    '20',
    '%',
    durante,
    'read',
  ),
  'thyroid-growth-size': limit(
    'Thyroid nodule, growth in each of two dimensions',
    'at-least',
    '2',
    'mm',
    durante,
    'read',
  ),
  'jaw-opening': limit(
    'Mouth opening below the usual',
    'less-than',
    '40',
    'mm',
    'dental pages (40 to 60 mm commonly quoted)',
    'second-hand',
  ),
  'jaw-opening-trismus': limit(
    'Mouth opening, cut-off for trismus in head and neck cancer',
    'at-most',
    '35',
    'mm',
    'Dijkstra PU 2006, Int J Oral Maxillofac Surg 35:337-342; van der Geer SJ 2019, Support Care Cancer 27:1129-1137',
    'read',
  ),
  'jaw-opening-impaired': limit(
    'Mouth opening, proposed impairment',
    'less-than',
    '30',
    'mm',
    jawSeries,
    'read',
  ),
  'jaw-opening-assisted': limit(
    'Assisted mouth opening with the overlap, limited',
    'less-than',
    '40',
    'mm',
    'DC/TMD 2014, from memory',
    'memory',
  ),
  'jaw-lateral': limit(
    'Sideways jaw movement reduced',
    'less-than',
    '7',
    'mm',
    'secondary page on jaw movement',
    'second-hand',
  ),
  'jaw-lateral-impaired': limit(
    'Sideways jaw movement, proposed impairment',
    'less-than',
    '5',
    'mm',
    jawSeries,
    'read',
  ),
  'jaw-protrusion-impaired': limit(
    'Forward jaw movement, proposed impairment',
    'less-than',
    '5',
    'mm',
    jawSeries,
    'read',
  ),
  'small-lesion': limit(
    'Largest size that the word papule, macule or vesicle allows',
    'more-than',
    '10',
    'mm',
    dermatology,
    'second-hand',
  ),
  'large-lesion': limit(
    'Smallest size that the word plaque, patch, bulla or nodule allows',
    'less-than',
    '5',
    'mm',
    dermatology,
    'second-hand',
  ),
  'copied-notes': limit(
    'Notes that repeat the prior exam word for word',
    'at-least',
    '3',
    '{#}',
    'PSNet 2023 and ECRI 2015 on copied notes; the number is common practice, no source',
    'common-practice',
  ),
};

/**
 * Another value for a limit, a decimal in the unit of the table, or `off` for no flag from it.
 * @pattern ^(off|-?(0|[1-9][0-9]{0,17})(\.[0-9]{1,17})?)$
 */
export type ThresholdSetting = string;

export type ThresholdSettings = { readonly [Id in ThresholdId]?: ThresholdSetting };

/** A limit as it applies in one run. */
export interface Limit extends Threshold {
  /** Whether a figure, in the base unit of its kind, is over the limit. */
  readonly meets: (figure: Exact) => boolean;
  /** "2 mm or more", for texts. */
  readonly text: string;
}

/**
 * The limit as set for this run; undefined when it is off, which a limit known only from memory is
 * unless the caller set its value or asked for such limits.
 */
export function resolveLimit(
  id: ThresholdId,
  settings: ThresholdSettings,
  memoryValues: boolean,
): Limit | undefined {
  const threshold: Threshold = thresholds[id];
  const set = Object.hasOwn(settings, id) ? settings[id] : undefined;
  if (set === 'off') return undefined;
  if (set === undefined && threshold.evidence === 'memory' && !memoryValues) return undefined;
  const value = set ?? threshold.value;
  const at = baseValue(value, threshold.unit)?.value;
  if (at === undefined) return undefined;
  return {
    ...threshold,
    value,
    meets: (figure) => meets(compare(figure, at), threshold.comparison),
    text: comparisonText(threshold.comparison, `${value} ${threshold.unit}`),
  };
}

/** Whether a value that an adopter set is a decimal. */
export function isSettable(value: string): boolean {
  return value === 'off' || exact(value) !== undefined;
}

function meets(order: number, comparison: LimitOperator): boolean {
  switch (comparison) {
    case 'at-least':
      return order >= 0;
    case 'more-than':
      return order > 0;
    case 'at-most':
      return order <= 0;
    case 'less-than':
      return order < 0;
  }
}

function comparisonText(comparison: LimitOperator, value: string): string {
  switch (comparison) {
    case 'at-least':
      return `${value} or more`;
    case 'more-than':
      return `more than ${value}`;
    case 'at-most':
      return `${value} or less`;
    case 'less-than':
      return `less than ${value}`;
  }
}

function limit(
  title: string,
  comparison: LimitOperator,
  value: Decimal,
  unit: UnitCode,
  source: string,
  evidence: Evidence,
): Threshold {
  return { title, comparison, value, unit, source, evidence };
}
