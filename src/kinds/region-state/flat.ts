import { reasonColumns } from '../../flat/answer.ts';
import type { FlatState } from '../../flat/flat-row.ts';
import type { Reason } from '../facets/base.ts';
import type { Flat } from '../facets/flat.ts';
import type { RegionState } from './statement.ts';

const states: Readonly<Record<RegionState['state'], FlatState>> = {
  normal: 'normal',
  abnormal: 'abnormal',
  partial: 'partly-examined',
  'not-examined': 'not-examined',
  'not-applicable': 'not-applicable',
};

export const regionStateFlat: Flat<RegionState> = {
  answers: (stated) => [
    {
      state: states[stated.state],
      answer: stated.state,
      ...reasonColumns(reasonOf(stated)),
    },
  ],
};

function reasonOf(stated: RegionState): Reason | undefined {
  if (stated.state === 'partial') return stated.limit;
  return 'reason' in stated ? stated.reason : undefined;
}
