import type { Exam } from '../model/exam.ts';
import type { Instant } from '../model/primitive.ts';
import type { ShownPrompt } from '../model/prompts.ts';
import type { Prompt } from './check-exam.ts';

/**
 * The exam with the prompts of a check that its record does not hold yet in the same words: for the
 * moment at which they are shown. What is done with them then is their `answer`.
 */
export function recordPrompts(exam: Exam, prompts: readonly Prompt[], shown: Instant): Exam {
  const held = new Set((exam.prompts ?? []).map(identity));
  const keys = new Set(exam.statements.map(({ key }) => key));
  const added = prompts
    .map((prompt): ShownPrompt => {
      const about = prompt.inputsUsed.filter((key) => keys.has(key));
      return {
        prompt: prompt.id,
        version: prompt.version,
        ruleSet: prompt.ruleSet.id,
        urgency: prompt.severity === 'urgent' ? 'urgent' : 'prompt',
        text: prompt.text,
        source: prompt.source,
        shown,
        ...(about.length > 0 && { about }),
        ...(prompt.dismissed && { answer: { answer: 'dismissed', ...prompt.dismissed } }),
      };
    })
    .filter((prompt) => !held.has(identity(prompt)));
  return added.length === 0 ? exam : { ...exam, prompts: [...(exam.prompts ?? []), ...added] };
}

function identity({ prompt, version, text }: ShownPrompt): string {
  return JSON.stringify([prompt, version, text]);
}
