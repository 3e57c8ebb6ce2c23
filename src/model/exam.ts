import type { Conclusion } from './conclusion.ts';
import type { Encounter, Examiner, Instrument, Organization, Subject } from './people.ts';
import type { Code, DateTime, Instant, Key, Side, Text } from './primitive.ts';
import type { JudgementMade, ShownPrompt } from './prompts.ts';
import type { RecordEvent, RecordStatus } from './record-event.ts';
import type { Statement } from './statement.ts';

/** One examination of a face and neck, as plain data. Everything in it is stated; nothing is implied. */
export interface Exam {
  /** Version of this structure. */
  readonly format: 'face-neck-exam/1';
  /** Stable and unique for the clinic: all exported ids derive from it. */
  readonly id: Key;
  readonly status: RecordStatus;
  readonly subject: Subject;
  /** The first is the one who examined, unless a statement names another. */
  readonly examiners: readonly [Examiner, ...Examiner[]];
  readonly organization?: Organization;
  readonly encounter?: Encounter;
  readonly performed: ExamTime;
  /** When the record was written; exported as `issued`. */
  readonly recorded: Instant;
  readonly indication?: Indication;
  /** @minItems 1 */
  readonly consents?: readonly Consent[];
  /**
   * What could limit the exam or change its reading.
   * @minItems 1
   */
  readonly conditions?: readonly ExamCondition[];
  /** @minItems 1 */
  readonly instruments?: readonly Instrument[];
  readonly protocol: ProtocolUse;
  readonly statements: readonly Statement[];
  readonly conclusion?: Conclusion;
  /**
   * Prompts that were shown, in the order shown, with what was done.
   * @minItems 1
   */
  readonly prompts?: readonly ShownPrompt[];
  /**
   * What examiners judged of complaints and findings.
   * @minItems 1
   */
  readonly judgements?: readonly JudgementMade[];
  /**
   * Life of the record so far.
   * @minItems 1
   */
  readonly history?: readonly RecordEvent[];
}

export interface ExamTime {
  readonly start: DateTime;
  readonly end?: DateTime;
}

/** Why the exam was done. */
export interface Indication {
  readonly text: Text;
  readonly visit?: 'first' | 'follow-up' | 'surveillance' | 'screening';
  readonly urgency?: 'routine' | 'urgent' | 'emergency';
  /** What the referrer wants to know. */
  readonly question?: Text;
  /** History that changes the reading, in the words used. */
  readonly background?: Text;
}

export interface Consent {
  readonly to: 'examine' | 'touch' | 'photograph' | 'share';
  readonly answer: 'given' | 'refused' | 'withdrawn' | 'not-asked';
  readonly by?: 'patient' | 'guardian' | 'other';
  readonly at?: DateTime;
  readonly purpose?: Text;
  readonly note?: Text;
}

export interface ExamCondition {
  /** Code of terminology/conditions.json: light, position, make-up, beard, dressing, hearing aid ... */
  readonly condition: Code;
  /** Code of the condition's own list, where it has one: bright, seated ... */
  readonly value?: Code;
  /**
   * Regions that it touches; none named means the whole exam.
   * @minItems 1
   */
  readonly regions?: readonly Code[];
  readonly side?: Side;
  readonly note?: Text;
}

/** The protocol the exam was to cover. `id` is a code of terminology/protocols.json or an adopter's. */
export interface ProtocolUse {
  readonly id: Code;
  readonly version: Text;
}
