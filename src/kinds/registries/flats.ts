import type { Answer } from '../../flat/answer.ts';
import type { Statement, StatementKind } from '../../model/statement.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { Flat } from '../facets/flat.ts';
import type { Polarity } from '../facets/meaning.ts';
import { findingFlat } from '../finding/flat.ts';
import { functionTestFlat } from '../function-test/flat.ts';
import { imageFlat } from '../image/flat.ts';
import { measurementFlat } from '../measurement/flat.ts';
import { movementFlat } from '../movement/flat.ts';
import { noteFlat } from '../note/flat.ts';
import { regionStateFlat } from '../region-state/flat.ts';
import { scaleScoreFlat } from '../scale-score/flat.ts';
import { sensationFlat } from '../sensation/flat.ts';
import { comparisonFlat } from '../sensation-comparison/flat.ts';
import { symptomFlat } from '../symptom/flat.ts';

const flats: { readonly [K in StatementKind]: Flat<Extract<Statement, { kind: K }>> } = {
  finding: findingFlat,
  'region-state': regionStateFlat,
  sensation: sensationFlat,
  'sensation-comparison': comparisonFlat,
  movement: movementFlat,
  'function-test': functionTestFlat,
  measurement: measurementFlat,
  'scale-score': scaleScoreFlat,
  symptom: symptomFlat,
  note: noteFlat,
  image: imageFlat,
};

/** The record files each facet under the kind it takes, which lets it stand for that of any kind. */
function flatOf({ kind }: Statement): Flat<Statement> {
  return flats[kind];
}

/** What a statement says in its rows, in the order of its sayings. */
export function answersOf(
  statement: Statement,
  polarities: readonly Polarity[],
  catalogue: Catalogue,
): readonly Answer[] {
  return flatOf(statement).answers(statement, polarities, catalogue);
}
