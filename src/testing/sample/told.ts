import type { Statement, Symptom } from '../../model/statement.ts';
import { lateralitySides } from '../../terminology/sides.ts';
import type { Lean, Region, SymptomConcept } from '../../terminology/types.ts';
import type { Stated } from './regions.ts';
import { maybe, type Sampling, sampleDecimal, sampleDetails, sampleText } from './sampling.ts';

export function symptomStatement(sampling: Sampling, row: Lean<SymptomConcept>): Stated {
  const { random } = sampling;
  const answer = random.pick([
    'no',
    'no',
    'no',
    'yes',
    'yes',
    'unsure',
    'declined',
    'not-asked',
  ] as const);
  return {
    kind: 'symptom',
    symptom: row.code,
    answer,
    ...(maybe(sampling, 0.2) && {
      toldBy: random.pick(['patient', 'relative', 'carer', 'interpreter', 'other'] as const),
    }),
    ...(answer === 'yes' && complaint(sampling)),
    ...sampleDetails(sampling),
  };
}

function complaint(sampling: Sampling): Partial<Omit<Symptom, 'kind'>> {
  const { random, catalogue, clock } = sampling;
  const region = maybe(sampling, 0.3) ? random.pick([...catalogue.regions.values()]) : undefined;
  const sides = lateralitySides[region?.laterality ?? 'whole'].sides;
  return {
    ...(region !== undefined && { region: region.code }),
    ...(maybe(sampling, 0.2) && { side: random.pick(sides) }),
    ...(maybe(sampling, 0.4) && { onset: clock.before(random) }),
    ...(maybe(sampling, 0.2) && { durationText: sampleText(sampling) }),
    ...(maybe(sampling, 0.2) && {
      duration: {
        value: sampleDecimal(random, 1, 30, random.int(0, 1)),
        unit: random.pick(['d', 'wk', 'mo']),
        ...(random.chance(0.2) && { comparator: '>' as const }),
      },
    }),
    ...(maybe(sampling, 0.3) && {
      course: random.pick(['better', 'same', 'worse', 'comes-and-goes'] as const),
    }),
    ...(maybe(sampling, 0.3) && { severity: random.int(0, 10) }),
    ...(maybe(sampling, 0.2) && { trigger: sampleText(sampling) }),
  };
}

/** A note on a region, or on the whole exam where none is given. */
export function noteStatement(sampling: Sampling, region?: Lean<Region>): Stated {
  const { random } = sampling;
  const sides = lateralitySides[region?.laterality ?? 'whole'].sides;
  return {
    kind: 'note',
    text: sampleText(sampling),
    ...(region !== undefined && { region: region.code }),
    ...(random.chance(0.5) && { side: random.pick(sides) }),
    ...sampleDetails(sampling),
  };
}

export function imageStatement(
  sampling: Sampling,
  region: Lean<Region>,
  shown: readonly Statement[],
): Stated {
  const { random } = sampling;
  const about = random.some(shown, random.int(0, 3)).map(({ key }) => key);
  return {
    kind: 'image',
    region: region.code,
    ...(random.chance(0.6) && { side: random.pick(lateralitySides[region.laterality].sides) }),
    title: sampleText(sampling),
    contentType: random.pick(['image/jpeg', 'image/png', 'image/svg+xml']),
    url: `https://clinic.example/pictures/${random.int(1, 99999)}?size=full&v=1`,
    consent: random.pick(['given', 'given', 'refused', 'not-asked'] as const),
    ...(maybe(sampling, 0.5) && { scaleBar: random.chance(0.7) }),
    ...(maybe(sampling, 0.3) && { purpose: sampleText(sampling) }),
    ...(about.length > 0 && { about }),
    ...sampleDetails(sampling),
  };
}
