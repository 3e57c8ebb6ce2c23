import type { Code } from '../../model/primitive.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { Reason, StatementBase } from '../base.ts';
import { atTestPoint, type Meaning, resultPolarity, type Said } from '../meaning.ts';

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
