import type { Instant, Key, Text } from './primitive.ts';

/** Where the record stands in its life. `draft` is not exported unless asked for. */
export type RecordStatus =
  | 'draft'
  | 'preliminary'
  | 'final'
  | 'amended'
  | 'corrected'
  | 'appended'
  | 'cancelled'
  | 'entered-in-error';

/** One step in the life of the record. Each step makes a version, so the version names the step. */
export interface RecordEvent {
  readonly action:
    | 'create'
    | 'release'
    | 'sign'
    | 'amend'
    | 'correct'
    | 'append'
    | 'cancel'
    | 'retract';
  /** Key of an examiner of the exam. */
  readonly by: Key;
  readonly at: Instant;
  /** Needed for amend, correct, cancel and retract. */
  readonly reason?: Text;
  /**
   * Version of the record after this step: 1 for the first, then one more each time.
   * @asType integer
   * @minimum 1
   * @maximum 100000
   */
  readonly version: number;
  /**
   * What changed: keys of statements.
   * @minItems 1
   */
  readonly changed?: readonly Key[];
  /**
   * Keys of statements that the step took out: they should not have been made, and nothing stands in
   * their place.
   * @minItems 1
   */
  readonly withdrawn?: readonly Key[];
}
