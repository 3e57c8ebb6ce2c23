import type { Side } from '../model/primitive.ts';
import type { RuleFinding, RuleSeverity } from './rule.ts';
import { type RuleSetId, ruleSet } from './rule-sets.ts';
import { type Fact, inputsOf } from './truth.ts';
import { promptText } from './wording.ts';

export interface PromptWords {
  /** What it is about: a side, a lesion, one of several criteria of the rule. */
  readonly on?: string;
  readonly side?: Side;
  /** What the guideline asks for, with its own verb, as one sentence. */
  readonly advice: string;
  /** What the criterion is, for the case that it does not hold or can not be told. */
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
      : `${words.criterion}: ${inputs.outcome === 'not-evaluable' ? 'can not be told from this exam' : 'not met by what this exam states'}.`,
  };
}
