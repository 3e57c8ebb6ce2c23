import type { Path } from '../../issues/path.ts';
import type { Code } from '../../model/primitive.ts';
import type { RuleContext } from '../../model/rules/rule.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { Reason, StatementBase } from '../facets/base.ts';
import type { Form } from '../facets/form.ts';
import { atTestPoint, type Meaning, resultPolarity, type Said } from '../facets/meaning.ts';

/** Skin sensation at one point and side, one result for each modality tried. */
export interface Sensation extends StatementBase {
  readonly kind: 'sensation';
  /** Code of terminology/test-points.json, group `sensation`. */
  readonly point: Code;
  readonly side: 'right' | 'left' | 'midline';
  /** @minItems 1 */
  readonly results: readonly ModalityResult[];
  readonly eyesClosed?: boolean;
}

export interface ModalityResult {
  /** Code of terminology/modalities.json, for example `light-touch` or `pinprick`. */
  readonly modality: Code;
  /** Code of terminology/sensation-results.json. */
  readonly result: Code;
  /** Needed with the results `not-tested` and `unable`. */
  readonly reason?: Reason;
}

export const sensationMeaning: Meaning<Sensation> = {
  subject: ({ point }) => ({ table: 'testPoints', code: point }),
  standing: ({ point, side }, catalogue) => atTestPoint(point, side, catalogue),
  said: ({ point, results }, catalogue) =>
    results.map((result) => modalitySaid(point, result, catalogue)),
};

/** What one result says of a point. */
export function modalitySaid(
  point: string,
  { modality, result }: ModalityResult,
  catalogue: Catalogue,
): Said {
  const method = catalogue.modalities.get(modality)?.method;
  return {
    polarity: resultPolarity(catalogue.sensationResults.get(result)),
    of: { table: 'testPoints', code: point },
    aspect: { table: 'modalities', code: modality },
    ...(method !== undefined && { methods: [method] }),
  };
}

export const sensationForm: Form<Sensation> = {
  codes: ({ point, results }) => [
    { table: 'testPoints', code: point, path: ['point'] },
    ...results.flatMap(
      ({ modality, result, reason }, i) =>
        [
          { table: 'modalities', code: modality, path: ['results', i, 'modality'] },
          { table: 'sensationResults', code: result, path: ['results', i, 'result'] },
          { table: 'reasons', code: reason?.code, path: ['results', i, 'reason', 'code'] },
        ] as const,
    ),
  ],
  answers: checkSensation,
  reasons: ({ results }) => results.map(({ reason }, i) => ({ reason, path: ['results', i] })),
};

function checkSensation(
  sensation: Sensation,
  path: Path,
  { catalogue, report }: RuleContext,
): void {
  const point = catalogue.testPoints.get(sensation.point);
  if (point !== undefined && point.group !== 'sensation') {
    report(
      'unknown-code',
      [...path, 'point'],
      { reason: 'sensation-point' },
      { value: sensation.point },
    );
    return;
  }
  const seen = new Set<string>();
  sensation.results.forEach(({ modality }, i) => {
    const at = [...path, 'results', i, 'modality'];
    if (seen.has(modality))
      report('duplicate-key', at, { reason: 'modality' }, { value: modality });
    seen.add(modality);
    if (point?.modalities?.includes(modality) === false && catalogue.modalities.has(modality)) {
      report(
        'impossible-method',
        at,
        { reason: 'point', codes: point.modalities },
        { value: modality },
      );
    }
  });
}
