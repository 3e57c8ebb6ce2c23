import type { Code } from '../../model/primitive.ts';
import type { Examined, Reason, WithExceptions } from '../facets/base.ts';
import type { Form } from '../facets/form.ts';
import { atRegion, type Meaning, type Said } from '../facets/meaning.ts';

/** What became of a region as a whole. */
export type RegionState = Normal | Abnormal | Partial | NotExamined | NotApplicable;

interface RegionStateBase extends Examined {
  readonly kind: 'region-state';
}

/** Examined with these methods, and no abnormality found. */
export interface Normal extends RegionStateBase, WithExceptions {
  readonly state: 'normal';
  /** @minItems 1 */
  readonly methods: readonly Code[];
}

/** Examined with these methods; what was found stands in findings of its own. */
export interface Abnormal extends RegionStateBase {
  readonly state: 'abnormal';
  /** @minItems 1 */
  readonly methods: readonly Code[];
}

/** Examined in part; `limit` says what was in the way. */
export interface Partial extends RegionStateBase {
  readonly state: 'partial';
  /** @minItems 1 */
  readonly methods: readonly Code[];
  readonly limit: Reason;
}

export interface NotExamined extends RegionStateBase {
  readonly state: 'not-examined';
  readonly reason: Reason;
}

/** The structure is not there: an eye or a larynx removed. */
export interface NotApplicable extends RegionStateBase {
  readonly state: 'not-applicable';
  readonly reason: Reason;
}

const states: Readonly<Record<RegionState['state'], Pick<Said, 'polarity' | 'completeness'>>> = {
  normal: { polarity: 'denies' },
  abnormal: { polarity: 'states' },
  partial: { polarity: 'open', completeness: 'part' },
  'not-examined': { polarity: 'none' },
  'not-applicable': { polarity: 'none' },
};

export const regionStateMeaning: Meaning<RegionState> = {
  subject: ({ region }) => ({ table: 'regions', code: region }),
  standing: atRegion,
  said: (stated) => [
    {
      ...states[stated.state],
      of: { table: 'regions', code: stated.region },
      methods: stated.methods,
      except: stated.state === 'normal' ? stated.except : undefined,
    },
  ],
};

export const regionStateForm: Form<RegionState> = {
  codes: (state) =>
    state.state === 'partial'
      ? [{ table: 'reasons', code: state.limit.code, path: ['limit', 'code'] }]
      : [],
};
