import type { Consent, ExamCondition, Indication } from '../../model/exam.ts';
import { lateralitySides } from '../../terminology/sides.ts';
import { maybe, type Sampling, sampleText } from './sampling.ts';

export function sampleIndication(sampling: Sampling): Indication {
  const { random } = sampling;
  return {
    text: sampling.size === 'edge' ? sampleText(sampling) : 'Yearly health check at work',
    ...(maybe(sampling, 0.6) && {
      visit: random.pick(['first', 'follow-up', 'surveillance', 'screening'] as const),
    }),
    ...(maybe(sampling, 0.4) && {
      urgency: random.pick(['routine', 'urgent', 'emergency'] as const),
    }),
    ...(maybe(sampling, 0.2) && { question: sampleText(sampling) }),
    ...(maybe(sampling, 0.3) && { background: sampleText(sampling) }),
  };
}

export function sampleConsents(sampling: Sampling): Consent[] {
  const { random, clock } = sampling;
  const purposes = random.some(
    ['examine', 'touch', 'photograph', 'share'] as const,
    random.int(1, 4),
  );
  return purposes.map((to) => ({
    to,
    answer: random.pick(['given', 'given', 'given', 'refused', 'withdrawn', 'not-asked'] as const),
    ...(maybe(sampling, 0.5) && { by: random.pick(['patient', 'guardian', 'other'] as const) }),
    ...(maybe(sampling, 0.2) && { at: random.pick([clock.start, clock.during(random)]) }),
    ...(maybe(sampling, 0.1) && { purpose: sampleText(sampling) }),
    ...(maybe(sampling, 0.1) && { note: sampleText(sampling) }),
  }));
}

export function sampleConditions(sampling: Sampling): ExamCondition[] {
  const { random, catalogue, size } = sampling;
  const regions = [...catalogue.regions.values()].filter(({ group }) => group !== true);
  const rows = random.some(
    [...catalogue.conditions.values()],
    random.int(1, size === 'small' ? 3 : 10),
  );
  return rows.map((row) => {
    const touched = maybe(sampling, 0.1) ? random.some(regions, random.int(1, 3)) : [];
    const sides = lateralitySides.whole.sides.filter((side) =>
      touched.every(({ laterality }) => lateralitySides[laterality].sides.includes(side)),
    );
    return {
      condition: row.code,
      ...(row.values !== undefined &&
        random.chance(0.9) && { value: random.pick(row.values).code }),
      ...(touched.length > 0 && { regions: touched.map(({ code }) => code) }),
      ...(sides.length > 0 && maybe(sampling, 0.1) && { side: random.pick(sides) }),
      ...(maybe(sampling, 0.1) && { note: sampleText(sampling) }),
    };
  });
}
