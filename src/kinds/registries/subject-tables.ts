import type { StatementKind } from '../../model/statement.ts';
import type { TableName } from '../../terminology/built-in.ts';

/** Table in which the subject of a kind stands, for where a kind and a code are all there is: a comparison. */
export const subjectTables: { readonly [K in StatementKind]: TableName } = {
  finding: 'findings',
  'region-state': 'regions',
  sensation: 'testPoints',
  'sensation-comparison': 'testPoints',
  movement: 'testPoints',
  'function-test': 'testPoints',
  measurement: 'measures',
  'scale-score': 'scales',
  symptom: 'symptoms',
  note: 'items',
  image: 'items',
};
