import type { Code } from '../../model/primitive.ts';
import type { Reason, StatementBase } from '../facets/base.ts';
import type { Form } from '../facets/form.ts';
import { atTestPoint, type Meaning } from '../facets/meaning.ts';

/** What the patient felt when both sides were touched alike. Not the sum of two results. */
export interface SensationComparison extends StatementBase {
  readonly kind: 'sensation-comparison';
  readonly point: Code;
  readonly modality: Code;
  readonly result: 'equal' | 'right-less' | 'left-less' | 'not-compared';
  readonly reason?: Reason;
}

export const comparisonMeaning: Meaning<SensationComparison> = {
  subject: ({ point }) => ({ table: 'testPoints', code: point }),
  standing: ({ point }, catalogue) => ({
    ...atTestPoint(point, 'both', catalogue),
    // Both sides are what it compares; it has no side of its own to be missing or wrong.
    laterality: undefined,
    needsSide: false,
  }),
  said: ({ point, modality, result }) => [
    {
      polarity: result === 'not-compared' ? 'none' : result === 'equal' ? 'denies' : 'states',
      of: { table: 'testPoints', code: point },
      aspect: { table: 'modalities', code: modality },
    },
  ],
};

export const comparisonForm: Form<SensationComparison> = {
  codes: ({ point, modality }) => [
    { table: 'testPoints', code: point, path: ['point'] },
    { table: 'modalities', code: modality, path: ['modality'] },
  ],
  reasons: ({ reason }) => [{ reason, path: [] }],
};
