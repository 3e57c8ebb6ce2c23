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
  /** Where it was read, for whoever confirms. */
  readonly reasons?: ProposalReasons;
  /** Set by a person: who confirmed the statement as it now stands, and when. */
  readonly confirmed?: Confirmation;
  /** Set by a person in place of `confirmed`: who found that the sentence does not say it, and when. */
  readonly rejected?: Confirmation;
}

/** Where the parts of a proposal were read. Places are those of the text of the note. */
export interface ProposalReasons {
  /** The words that name the sign. */
  readonly words: TextPlace;
  /** The heading above the sentence. */
  readonly heading?: TextPlace;
  /** Where the region stands: in the sentence, in its heading, of the note, or the only one the sign can have. */
  readonly region?: 'sentence' | 'heading' | 'note' | 'sign';
  readonly side?: 'sentence' | 'heading' | 'note';
  /**
   * Why the sign alone was read: the text can be of another time, person or part of the body; the sentence
   * is too long to be read; or the line below it can deny it.
   */
  readonly unread?: 'elsewhere' | 'long' | 'goes-on';
}

/** A piece of a text: its first character, and the place behind its last. */
export interface TextPlace {
  readonly start: number;
  readonly end: number;
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
