import { type Conclusion, concerns, type PlanItem } from '../../model/conclusion.ts';
import type { Statement } from '../../model/statement.ts';
import { maybe, type Sampling, sampleCodings, sampleText } from './sampling.ts';

const kinds = [
  'review',
  'referral',
  'investigation',
  'treatment',
  'advice',
  'nothing-further',
] as const;

export function sampleConclusion(sampling: Sampling, statements: readonly Statement[]): Conclusion {
  const { random, clock } = sampling;
  const basedOn = keysOf(sampling, statements, 4);
  const plan = random
    .some(kinds, random.int(0, kinds.length))
    .map((kind, at) => planItem(sampling, statements, kind, at));
  return {
    text: sampleText(sampling),
    concern: random.pick(concerns),
    ...(maybe(sampling, 0.3) && { worries: [sampleText(sampling), sampleText(sampling)] as const }),
    ...(maybe(sampling, 0.2) && { codings: sampleCodings(sampling) }),
    ...(basedOn.length > 0 && { basedOn }),
    ...(plan.length > 0 && { plan }),
    ...(maybe(sampling, 0.3) && {
      safetyNet: {
        text: sampleText(sampling),
        ...(maybe(sampling, 0.5) && { returnIf: [sampleText(sampling)] as const }),
        ...(maybe(sampling, 0.5) && { reviewBy: clock.after(random) }),
        ...(maybe(sampling, 0.5) && { owner: sampleText(sampling) }),
      },
    }),
    ...(maybe(sampling, 0.3) && {
      told: ['Patient', 'Foreman of the cellar'].slice(random.int(0, 1)).map((who) => ({
        who,
        what: sampleText(sampling),
        ...(maybe(sampling, 0.3) && { at: random.pick([clock.start, clock.during(random)]) }),
      })),
    }),
  };
}

function planItem(
  sampling: Sampling,
  statements: readonly Statement[],
  kind: PlanItem['kind'],
  at: number,
): PlanItem {
  const { random, catalogue, clock } = sampling;
  const reasons = keysOf(sampling, statements, 2);
  return {
    key: `plan-${at + 1}`,
    kind,
    text: sampleText(sampling),
    ...(maybe(sampling, 0.4) && {
      urgency: random.pick(['routine', 'urgent', 'asap', 'stat'] as const),
    }),
    ...(maybe(sampling, 0.4) && { due: clock.after(random) }),
    ...(maybe(sampling, 0.3) && { to: sampleText(sampling) }),
    ...(reasons.length > 0 && { reasons }),
    ...(maybe(sampling, 0.2) && { guideline: sampleText(sampling) }),
    ...(maybe(sampling, 0.3) && { service: random.pick([...catalogue.services.keys()]) }),
  };
}

function keysOf({ random }: Sampling, statements: readonly Statement[], count: number): string[] {
  return random
    .shuffled(statements)
    .slice(0, random.int(0, count))
    .map(({ key }) => key);
}
