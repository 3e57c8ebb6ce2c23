import type { Code, Key, Side, Text } from '../../model/primitive.ts';
import type { Count, StatementBase } from '../base.ts';
import { atRegion, type Meaning } from '../meaning.ts';

/** A score on a named, versioned scale, as the examiner gave it; never computed from other statements. */
export interface ScaleScore extends StatementBase {
  readonly kind: 'scale-score';
  /** Code of terminology/scales.json. */
  readonly scale: Code;
  readonly version: Text;
  readonly region?: Code;
  readonly side?: Side;
  /** A grade code of an ordinal scale, or the total of a summed one. */
  readonly score: Code | Count;
  /** @minItems 1 */
  readonly items?: readonly ScaleItem[];
  /** Key of the finding that was scored. */
  readonly about?: Key;
}

export interface ScaleItem {
  readonly item: Code;
  readonly value: boolean | Count;
}

export const scaleScoreMeaning: Meaning<ScaleScore> = {
  subject: ({ scale }) => ({ table: 'scales', code: scale }),
  standing: (score, catalogue) => {
    const standing = atRegion(score, catalogue);
    if (score.region !== undefined) return standing;
    // Without a region named, the scale knows to which part of the body it belongs.
    const row = catalogue.scales.get(score.scale);
    const usual = row?.region === undefined ? undefined : catalogue.regions.get(row.region);
    return { ...standing, section: usual?.section, laterality: row?.laterality };
  },
  said: ({ scale }) => [{ polarity: 'states', of: { table: 'scales', code: scale } }],
};
