import { listed } from '../../flat/answer.ts';
import type { Flat } from '../facets/flat.ts';
import type { Attribute, Finding } from './statement.ts';

export const findingFlat: Flat<Finding> = {
  answers: ({ presence, certainty, attributes = [], tracking }) => {
    const suspected = presence === 'present' && certainty === 'suspected';
    const state = presence === 'indeterminate' ? 'undecided' : presence;
    return [
      {
        state: suspected ? 'suspected' : state,
        answer: presence,
        attributes: listed(attributes.map(attributeText)),
        tracking: tracking ?? '',
      },
    ];
  },
};

function attributeText({ attribute, value }: Attribute): string {
  if (typeof value !== 'object') return `${attribute}=${value}`;
  return `${attribute}=${value.comparator ?? ''}${value.value} ${value.unit}`;
}
