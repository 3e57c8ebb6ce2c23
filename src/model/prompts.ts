import type { judgements } from './judgements.ts';
import type { Instant, Key, Text } from './primitive.ts';

/**
 * A prompt that was shown to an examiner, and what became of it. The record keeps it with its words,
 * so that what was known when a decision was made can still be seen when rules have changed.
 */
export interface ShownPrompt {
  /** Name of the prompt, as the checks give it: `R18:left`. */
  readonly prompt: Text;
  /** Version of its rule. */
  readonly version: Text;
  /** Set of rules that it came from. */
  readonly ruleSet: Text;
  readonly urgency: 'urgent' | 'prompt';
  /** The words that were shown. */
  readonly text: Text;
  /** Publication that it rests on. */
  readonly source: Text;
  readonly shown: Instant;
  /**
   * Keys of the statements that it rests on.
   * @minItems 1
   */
  readonly about?: readonly Key[];
  /** What the examiner did with it; left out where nothing was done yet. */
  readonly answer?: PromptAnswer;
}

export interface PromptAnswer {
  readonly answer: 'followed' | 'dismissed';
  /** Key of an examiner of the exam. */
  readonly by: Key;
  readonly at: Instant;
  /** Needed where it was dismissed. */
  readonly reason?: Text;
}

/** What only a clinician can judge of a complaint or finding, and prompts depend on. */
export interface JudgementMade {
  /** Key of the symptom or finding. */
  readonly statement: Key;
  readonly judgement: (typeof judgements)[number];
  /** Key of an examiner of the exam. */
  readonly by: Key;
  readonly at: Instant;
  readonly reason?: Text;
}
