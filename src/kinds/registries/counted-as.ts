import type { Statement, StatementKind } from '../../model/statement.ts';

const names: { readonly [K in StatementKind]: (one: Extract<Statement, { kind: K }>) => string } = {
  finding: ({ presence }) => `finding ${presence}`,
  'region-state': ({ state }) => `region ${state}`,
  sensation: ({ kind }) => kind,
  'sensation-comparison': ({ kind }) => kind,
  movement: ({ kind }) => kind,
  'function-test': ({ kind }) => kind,
  measurement: ({ kind }) => kind,
  'scale-score': ({ kind }) => kind,
  symptom: ({ answer }) => `symptom ${answer}`,
  note: ({ kind }) => kind,
  image: ({ kind }) => kind,
};

/** Name under which a statement is counted in a summary. */
export function countedAs(statement: Statement): string {
  // The record files each name under the kind that it takes.
  return (names[statement.kind] as (one: Statement) => string)(statement);
}
