import type { Exam } from '../../model/exam.ts';
import type { Instant } from '../../model/primitive.ts';
import type { ShownPrompt } from '../../model/prompts.ts';
import type { Prompt } from './shown-prompts.ts';

/**
 * Adds to an exam the prompts of a check that its record does not hold yet in the same words, at
 * the moment when they are shown. What is done with them then is their `answer`.
 *
 * @param exam The exam that was checked.
 * @param prompts From the result of `checkExam`.
 * @param shown When they were shown, to the second and with the offset from UTC.
 * @returns A copy of the exam with the prompts.
 * @example
 * const { prompts } = checkExam(exam, { ruleSets: ['horner-signs'] });
 * const withPrompts = recordPrompts(exam, prompts, '2025-05-06T08:30:00Z');
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
