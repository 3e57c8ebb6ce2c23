import { listed, reasonColumns } from '../../flat/answer.ts';
import type { Flat } from '../facets/flat.ts';
import type { Measurement } from './statement.ts';

export const measurementFlat: Flat<Measurement> = {
  answers: ({ value, unit, comparator, readings = [], unusable, ...measured }) => [
    {
      state: value === undefined ? 'no-value' : 'value',
      value: value ?? '',
      comparator: comparator ?? '',
      unit,
      readings: listed(readings),
      ...reasonColumns(unusable),
      attributes: listed([
        ...(measured.convention === undefined ? [] : [`convention=${measured.convention}`]),
        ...(measured.estimated === undefined ? [] : [`estimated=${measured.estimated}`]),
        ...(measured.conditions ?? []).map((condition) => `condition=${condition}`),
      ]),
    },
  ],
};
