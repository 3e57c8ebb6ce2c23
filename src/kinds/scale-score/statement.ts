import type { Path } from '../../issues/path.ts';
import type { Code, Key, Side, Text } from '../../model/primitive.ts';
import type { RuleContext } from '../../model/rules/rule.ts';
import type { Lean, Scale } from '../../terminology/types.ts';
import type { Count, StatementBase } from '../facets/base.ts';
import type { Form } from '../facets/form.ts';
import { atRegion, type Meaning } from '../facets/meaning.ts';

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

export const scaleScoreForm: Form<ScaleScore> = {
  codes: ({ scale }) => [{ table: 'scales', code: scale, path: ['scale'] }],
  answers: checkScore,
  about: ({ about }) => (about === undefined ? [] : [{ key: about, path: ['about'] }]),
};

function checkScore(score: ScaleScore, path: Path, { catalogue, report }: RuleContext): void {
  const scale = catalogue.scales.get(score.scale);
  if (scale === undefined) return;
  if (!scale.versions.includes(score.version)) {
    report(
      'unknown-code',
      [...path, 'version'],
      { reason: 'scale-version', codes: scale.versions },
      { value: score.version },
    );
  }
  if (!scoreFits(scale, score.score)) {
    report(
      'invalid-value',
      [...path, 'score'],
      { reason: 'score', ...scoreForm(scale) },
      { value: score.score },
    );
  }
  score.items?.forEach(({ item }, i) => {
    if (scale.items?.some(({ code }) => code === item)) return;
    report(
      'unknown-code',
      [...path, 'items', i, 'item'],
      { reason: 'scale-item', codes: scale.items?.map(({ code }) => code) },
      { value: item },
    );
  });
}

function scoreForm(scale: Lean<Scale>): {
  readonly codes?: readonly string[];
  readonly minimum?: number;
  readonly maximum?: number | undefined;
} {
  return scale.type === 'ordinal'
    ? { codes: (scale.grades ?? []).map(({ code }) => code) }
    : { minimum: 0, maximum: scale.max };
}

function scoreFits(scale: Lean<Scale>, score: string | number): boolean {
  if (scale.type === 'ordinal') return (scale.grades ?? []).some(({ code }) => code === score);
  return typeof score === 'number' && (scale.max === undefined || score <= scale.max);
}
