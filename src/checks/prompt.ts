import type { Side } from '../model/primitive.ts';
import { type Fact, inputsOf } from './facts/fact.ts';
import type { RuleFinding, RuleSeverity } from './rule.ts';
import { type RuleSet, type RuleSetId, ruleSet } from './rule-sets.ts';

/** Goes with every output that shows a prompt. */
export const cautions: readonly string[] = [
  "A prompt supports and never replaces the clinician's judgement and the local pathway.",
  'It rests only on what this record states; what is missing is listed and was not taken for normal.',
  'It names no disease as present and does not change any finding or the status of the record.',
  'Guidelines differ by country and change: check the edition in force where you practise.',
];

/**
 * Text of a prompt: what the guideline asks for in its own verb ("consider", "refer"), whose advice
 * it is, and that the clinician decides.
 */
export function promptText(advice: string, set: RuleSet): string {
  const place = set.jurisdiction === 'none' ? '' : `, ${set.jurisdiction}`;
  return `${advice} Per ${set.publisher}, ${set.title}, ${set.version}${place}. Supports, does not replace, the clinician's judgement and the local pathway.`;
}

/** `a`, `a and b`, `a, b and c`. */
export function listText(parts: readonly string[]): string {
  const last = parts.at(-1);
  if (last === undefined) return '';
  return parts.length === 1 ? last : `${parts.slice(0, -1).join(', ')} and ${last}`;
}

export interface PromptWords {
  /** What it is about: a side, a lesion, one of several criteria of the rule. */
  readonly on?: string;
  readonly side?: Side;
  /** What the guideline asks for, with its own verb, as one sentence. */
  readonly advice: string;
  /** What the criterion is, for the case that it does not hold or cannot be told. */
  readonly criterion: string;
  readonly severity?: RuleSeverity;
}

/** A finding of a prompt rule, worded in the one form that all prompts have. */
export function promptFinding(set: RuleSetId, fact: Fact, words: PromptWords): RuleFinding {
  const inputs = inputsOf(fact);
  const chosen = ruleSet(set);
  const fires = inputs.outcome === 'fires' && chosen !== undefined;
  return {
    ...inputs,
    ...(words.on !== undefined && { on: words.on }),
    ...(words.side !== undefined && { side: words.side }),
    ...(fires && words.severity !== undefined && { severity: words.severity }),
    text: fires
      ? promptText(words.advice, chosen)
      : `${words.criterion}: ${inputs.outcome === 'not-evaluable' ? 'cannot be told from this exam' : 'not met by what this exam states'}.`,
  };
}
