import type { Code, Instant, Key, Side, Text } from '../../model/primitive.ts';

/**
 * What a sentence of a note could say, for a person to confirm. It is no statement: an exam holds none of
 * it until someone has confirmed it by name.
 */
export interface Proposal {
  /** Id of the exam, and key of the note in it. */
  readonly exam: Key;
  readonly note: Key;
  /** Where in the text of the note the sentence stands: its first character, and the place behind its last. */
  readonly start: number;
  readonly end: number;
  /** The sentence, verbatim. */
  readonly text: Text;
  /** What is proposed; what stands in `open` is left out. */
  readonly statement: ProposedFinding;
  /** What the sentence does not say for certain: to be decided by whoever confirms. */
  readonly open: readonly ProposalPart[];
  /** Where the words can mean several signs, their codes. */
  readonly candidates?: readonly Code[];
  /** 1: all was said in the sentence. It only orders proposals. */
  readonly score: number;
  /** Set by a person: who confirmed the statement as it now stands, and when. */
  readonly confirmed?: Confirmation;
}

export type ProposalPart = 'finding' | 'region' | 'side' | 'presence';

/** A finding as far as a sentence says it. */
export interface ProposedFinding {
  readonly kind: 'finding';
  readonly finding?: Code;
  readonly region?: Code;
  readonly side?: Side;
  readonly presence?: 'present' | 'absent' | 'indeterminate';
}

export interface Confirmation {
  /** Name of the person. */
  readonly by: Text;
  /** Moment, with its offset. */
  readonly at: Instant;
}
