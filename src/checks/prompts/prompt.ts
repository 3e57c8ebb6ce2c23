import type { Side } from '../../model/primitive.ts';
import type { CheckContext } from '../context.ts';
import { type Fact, inputsOf } from '../facts/fact.ts';
import type { RuleFinding, RuleSeverity } from '../rule.ts';
import { fill } from '../words/check-words.ts';
import { englishChecks, type PromptId } from '../words/english.ts';
import type { Urgency } from './urgency.ts';

/** Goes with every output that shows a prompt. */
export const cautions: readonly string[] = englishChecks.cautions;

const severities: { readonly [U in Urgency]: RuleSeverity } = {
  now: 'urgent',
  'same-day': 'urgent',
  days: 'prompt',
  weeks: 'prompt',
  routine: 'prompt',
};

interface About {
  /** What it is about: a side, a lesion, one of several criteria of the rule. */
  readonly on?: string;
  readonly side?: Side;
  readonly urgency: Urgency;
}

/** A prompt of a rule by hand: its sentences stand in the words of the language. */
export function promptFinding(
  context: CheckContext,
  fact: Fact,
  about: About & {
    readonly says: PromptId;
    readonly values?: Readonly<Record<string, string | number>>;
  },
): RuleFinding {
  const { prompts, sides } = context.words;
  const { advice, criterion } = prompts[about.says];
  const values = { side: about.side === undefined ? '' : sides[about.side], ...about.values };
  return wordedFinding(context, fact, about, fill(advice, values), fill(criterion, values));
}

/** A finding in the one form that all prompts have: a line of text, without its source and cautions. */
export function wordedFinding(
  { words }: CheckContext,
  fact: Fact,
  { on, side, urgency }: About,
  advice: string,
  criterion: string,
): RuleFinding {
  const inputs = inputsOf(fact);
  const fires = inputs.outcome === 'fires';
  const open = inputs.outcome === 'not-evaluable' ? words.untold : words.unmet;
  return {
    ...inputs,
    ...(on !== undefined && { on }),
    ...(side !== undefined && { side }),
    ...(fires && { severity: severities[urgency] }),
    urgency,
    text: fires ? advice : fill(open, { criterion }),
  };
}
