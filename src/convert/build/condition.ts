import type { TargetConversion } from '../../kinds/facets/conversion.ts';
import type { ConditionTarget } from '../mapping/target.ts';
import { unknownWord } from './built.ts';

/** A condition of the exam, which is not a statement. */
export const conditionTarget: TargetConversion<ConditionTarget> = {
  codes: ({ condition }) => [['conditions', condition, 'condition']],
  sideOpen: true,
  meanings: ({ condition }, catalogue) => {
    const values = catalogue.conditions.get(condition)?.values ?? [];
    return values.length === 0 ? ['yes'] : values.map(({ code }) => code);
  },
  states: [],
  build: ({ target }, reading, plan) => {
    const { region = target.region, side, meaning } = reading;
    const values = plan.catalogue.conditions.get(target.condition)?.values ?? [];
    const known = values.some(({ code }) => code === meaning);
    // A condition without a list of values is stated by the word `yes` alone.
    const bare = values.length === 0 && meaning === 'yes';
    if (typeof meaning !== 'string' || !(known || bare)) {
      return unknownWord({ reason: 'condition', code: target.condition });
    }
    return {
      condition: {
        condition: target.condition,
        ...(known && { value: meaning }),
        ...(region !== undefined && { regions: [region] }),
        ...(side !== undefined && { side }),
      },
    };
  },
};
