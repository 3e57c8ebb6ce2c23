import { unknownWord } from '../../convert/build/built.ts';
import type { SymptomTarget } from '../../convert/mapping/target.ts';
import type { StatementConversion, TargetConversion } from '../facets/conversion.ts';
import type { Symptom } from './statement.ts';

const answers = ['yes', 'no', 'unsure', 'declined', 'not-asked'] as const;

export const symptomConversion: StatementConversion<Symptom> = {
  about: ({ symptom, region }) => [symptom, ...(region ? [region] : [])],
};

export const symptomTarget: TargetConversion<SymptomTarget> = {
  codes: ({ symptom }) => [['symptoms', symptom, 'symptom']],
  sideOpen: true,
  meanings: () => answers,
  states: [],
  build: ({ target }, reading) => {
    const { region = target.region, side, at, meaning } = reading;
    const answer = answers.find((known) => known === meaning);
    if (answer === undefined) return unknownWord({ reason: 'one-of', codes: answers });
    return {
      statements: [
        {
          kind: 'symptom',
          symptom: target.symptom,
          answer,
          ...(target.toldBy !== undefined && { toldBy: target.toldBy }),
          ...(region !== undefined && { region }),
          ...(side !== undefined && { side }),
          ...(at !== undefined && { at }),
        },
      ],
    };
  },
};
