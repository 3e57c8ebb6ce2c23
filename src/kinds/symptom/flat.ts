import type { FlatState } from '../../flat/flat-row.ts';
import type { Flat } from '../facets/flat.ts';
import type { Symptom } from './statement.ts';

const states: Readonly<Record<Symptom['answer'], FlatState>> = {
  yes: 'present',
  no: 'absent',
  unsure: 'undecided',
  declined: 'unknown',
  'not-asked': 'not-asked',
};

export const symptomFlat: Flat<Symptom> = {
  answers: ({ answer }) => [{ state: states[answer], answer }],
};
