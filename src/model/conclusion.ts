import type { Code, Coding, DateTime, Key, PartialDate, Text } from './primitive.ts';

/** Levels of concern, from the least, in labels of this library. */
export const concerns = [
  'none',
  'low',
  'watch',
  'refer-routine',
  'refer-urgent',
  'emergency',
] as const;

/** What the examiner makes of the exam, and what happens next. */
export interface Conclusion {
  readonly text: Text;
  /** Level of concern, in labels of this library; the examiner's own judgement. */
  readonly concern: (typeof concerns)[number];
  /**
   * What worries, in the examiner's words.
   * @minItems 1
   */
  readonly worries?: readonly Text[];
  /**
   * Codes for the conclusion, as the caller gives them.
   * @minItems 1
   */
  readonly codings?: readonly Coding[];
  /**
   * Keys of the statements it rests on.
   * @minItems 1
   */
  readonly basedOn?: readonly Key[];
  /** @minItems 1 */
  readonly plan?: readonly PlanItem[];
  readonly safetyNet?: SafetyNet;
  /**
   * Who was told what.
   * @minItems 1
   */
  readonly told?: readonly Told[];
}

export interface PlanItem {
  readonly key: Key;
  readonly kind:
    | 'review'
    | 'referral'
    | 'investigation'
    | 'treatment'
    | 'advice'
    | 'nothing-further';
  readonly text: Text;
  readonly urgency?: 'routine' | 'urgent' | 'asap' | 'stat';
  readonly due?: PartialDate;
  /** To whom, for a referral or an investigation: a service, not a diagnosis. */
  readonly to?: Text;
  /**
   * Keys of the statements that are the reason.
   * @minItems 1
   */
  readonly reasons?: readonly Key[];
  readonly guideline?: Text;
  /** Code of terminology/services.json, where one fits. */
  readonly service?: Code;
}

/** What to look out for, and when and where to come back. */
export interface SafetyNet {
  readonly text: Text;
  /** @minItems 1 */
  readonly returnIf?: readonly Text[];
  readonly reviewBy?: PartialDate;
  /** Who owns the follow-up. */
  readonly owner?: Text;
}

export interface Told {
  readonly who: Text;
  readonly what: Text;
  readonly at?: DateTime;
}
