import type { Exam } from '../../model/exam.ts';
import { judgements } from '../../model/judgements.ts';
import type { JudgementMade, ShownPrompt } from '../../model/prompts.ts';
import type { Statement } from '../../model/statement.ts';
import { type Sampling, sampleText } from './sampling.ts';

/** Prompts that were shown and what was done with them, and what was judged. Drawn last. */
export function sampleWarnings(
  sampling: Sampling,
  statements: readonly Statement[],
): Pick<Exam, 'prompts' | 'judgements'> {
  const { random } = sampling;
  if (statements.length === 0 || random.chance(0.6)) return {};
  const prompts = Array.from({ length: random.int(0, 3) }, (_, at) =>
    prompt(sampling, statements, at),
  );
  const judged = random.some(statements, random.int(0, 2)).map((one) => judgement(sampling, one));
  return {
    ...(prompts.length > 0 && { prompts }),
    ...(judged.length > 0 && { judgements: judged }),
  };
}

function prompt(sampling: Sampling, statements: readonly Statement[], at: number): ShownPrompt {
  const { random, clock, examiners } = sampling;
  const about = random.some(statements, random.int(0, 2)).map(({ key }) => key);
  const answered = random.chance(0.7);
  const dismissed = random.chance(0.5);
  return {
    prompt: `R${random.int(10, 60)}:sample-${at}`,
    version: String(random.int(1, 4)),
    ruleSet: 'sample-rules',
    urgency: random.pick(['urgent', 'prompt'] as const),
    text: sampleText(sampling),
    source: sampleText(sampling),
    shown: clock.later(0),
    ...(about.length > 0 && { about }),
    ...(answered && {
      answer: {
        answer: dismissed ? 'dismissed' : 'followed',
        by: random.pick(examiners).key,
        at: clock.later(0),
        ...((dismissed || random.chance(0.3)) && { reason: sampleText(sampling) }),
      },
    }),
  };
}

function judgement(sampling: Sampling, { key }: Statement): JudgementMade {
  const { random, clock, examiners } = sampling;
  return {
    statement: key,
    judgement: random.pick(judgements),
    by: random.pick(examiners).key,
    at: clock.later(0),
    ...(random.chance(0.5) && { reason: sampleText(sampling) }),
  };
}
