import { lateralitySides } from '../../terminology/sides.ts';
import type { Lean, SymptomConcept } from '../../terminology/types.ts';
import { itemCodes } from '../../testing/formats/item.ts';
import {
  amounts,
  maybe,
  type Sampling,
  type Stated,
  sampleDecimal,
  sampleDetails,
  sampleText,
} from '../../testing/sample/sampling.ts';
import type { KindSample } from '../facets/sample.ts';
import type { Symptom } from './statement.ts';

export const symptomSample: KindSample<Symptom> = {
  drawn: {
    examined: (sampling) => () =>
      sampling.random
        .some([...sampling.catalogue.symptoms.values()], amounts[sampling.size].symptoms)
        .map((row) => symptomStatement(sampling, row)),
  },
  items: ({ symptom, toldBy, region, side, answer, at, note }) => [
    { at, note, code: itemCodes.symptom(symptom, toldBy), region, side, value: { word: answer } },
  ],
  arrives: (symptom) => symptom,
};

function symptomStatement(sampling: Sampling, row: Lean<SymptomConcept>): Stated {
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
