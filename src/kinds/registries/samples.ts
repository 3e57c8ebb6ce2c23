import type { Statement, StatementKind } from '../../model/statement.ts';
import type { Item } from '../../testing/formats/item.ts';
import type { Sampling, Stated } from '../../testing/sample/sampling.ts';
import type { Arrives, KindSample } from '../facets/sample.ts';
import { findingSample } from '../finding/sample.ts';
import { functionTestSample } from '../function-test/sample.ts';
import { imageSample } from '../image/sample.ts';
import { measurementSample } from '../measurement/sample.ts';
import { movementSample } from '../movement/sample.ts';
import { noteSample } from '../note/sample.ts';
import { regionStateSample } from '../region-state/sample.ts';
import { scaleScoreSample } from '../scale-score/sample.ts';
import { sensationSample } from '../sensation/sample.ts';
import { comparisonSample } from '../sensation-comparison/sample.ts';
import { symptomSample } from '../symptom/sample.ts';

/** In the order in which they are drawn: the same seed gives the same exam, so add at the end. */
const samples: { readonly [K in StatementKind]: KindSample<Extract<Statement, { kind: K }>> } = {
  finding: findingSample,
  'region-state': regionStateSample,
  sensation: sensationSample,
  'sensation-comparison': comparisonSample,
  movement: movementSample,
  'function-test': functionTestSample,
  'scale-score': scaleScoreSample,
  note: noteSample,
  image: imageSample,
  measurement: measurementSample,
  symptom: symptomSample,
};

/** The record files each sample under the kind it takes, which lets it stand for that of any kind. */
function sampleOf({ kind }: Statement): KindSample<Statement> {
  return samples[kind];
}

/** Statements drawn from the tables alone. */
export function drawExamined(sampling: Sampling): Stated[] {
  const chosen = Object.values(samples).flatMap(({ drawn }) =>
    'drawnWith' in drawn ? [] : (drawn.examined?.(sampling) ?? []),
  );
  return chosen.flatMap((state) => state());
}

/** Statements that can be about others: scores, notes, pictures, and the measures of a lesion. */
export function drawReferring(sampling: Sampling, statements: readonly Statement[]): Stated[] {
  return Object.values(samples).flatMap(({ drawn }) =>
    'drawnWith' in drawn ? [] : (drawn.referring?.(sampling, statements) ?? []),
  );
}

/** Lines of a statement in a legacy export. */
export function itemsOf(statement: Statement, groups: ReadonlyMap<string, string>): Item[] {
  return sampleOf(statement).items(statement, groups);
}

/** What is left of a statement when its lines are read again, or the loss by which nothing is. */
export function arrivalOf(statement: Statement): Arrives<Statement> {
  return sampleOf(statement).arrives;
}
