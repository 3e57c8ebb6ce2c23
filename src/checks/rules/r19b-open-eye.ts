import { eyeStaysOpen } from '../facts/facial-pattern.ts';
import { oneSides } from '../places/sides.ts';
import { promptFinding } from '../prompts/prompt.ts';
import type { PromptRule } from '../rule.ts';

/** The eye does not close: it needs protection, whatever the cause. */
export const r19bOpenEye: PromptRule = {
  id: 'R19b',
  title: 'Eye that does not close',
  kind: 'prompt',
  ruleSet: 'facial-weakness-signs',
  version: '1',
  severity: 'prompt',
  source: 'GPnotebook and University of Aberdeen teaching pages on facial nerve palsy',
  evidence: 'second-hand',
  run: (context) =>
    oneSides.map((side) =>
      promptFinding(context, eyeStaysOpen(context, side), {
        on: side,
        side,
        urgency: 'same-day',
        says: 'open-eye',
      }),
    ),
};
