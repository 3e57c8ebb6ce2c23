import type { ServiceCode } from '../../terminology/tables/code-types.ts';
import type { Evidence } from '../../terminology/types.ts';
import type { RuleSetId } from '../rule-sets.ts';
import type { Urgency } from '../prompts/urgency.ts';
import type { Remark } from '../words/english.ts';
import type { Condition } from './condition.ts';

/**
 * A picture of danger, as data: a prompt fires when `anchor` and `with` hold. Where the anchor holds
 * and the rest is not known, the prompt cannot be told and names what is missing; where the exam
 * states no anchor, the picture is no matter of this exam.
 */
export interface Picture {
  readonly ruleSet: RuleSetId;
  /** What is seen or told, in our own words, as the beginning of a sentence. */
  readonly title: string;
  readonly urgency: Urgency;
  /** More urgent where this is known to hold. */
  readonly raised?: { readonly by: Condition; readonly to: Urgency };
  readonly service: ServiceCode;
  /** Verb of the advice; `consider` where our own words stand for several sources. */
  readonly verb?: 'refer';
  /** Asked of each side by itself. */
  readonly eachSide?: true;
  readonly anchor: Condition;
  readonly with?: Condition;
  readonly remarks?: readonly Remark[];
  /** Publication that the picture rests on, as read. */
  readonly source: string;
  readonly evidence: Evidence;
}
