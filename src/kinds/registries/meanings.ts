import type { Statement, StatementKind } from '../../model/statement.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import { isUnconfirmed, seenAt } from '../facets/base.ts';
import type { Coded, Meaning, Saying, Standing } from '../facets/meaning.ts';
import { findingMeaning } from '../finding/statement.ts';
import { functionTestMeaning } from '../function-test/statement.ts';
import { imageMeaning } from '../image/statement.ts';
import { measurementMeaning } from '../measurement/statement.ts';
import { movementMeaning } from '../movement/statement.ts';
import { noteMeaning } from '../note/statement.ts';
import { regionStateMeaning } from '../region-state/statement.ts';
import { scaleScoreMeaning } from '../scale-score/statement.ts';
import { sensationMeaning } from '../sensation/statement.ts';
import { comparisonMeaning } from '../sensation-comparison/statement.ts';
import { symptomMeaning } from '../symptom/statement.ts';

const meanings: { readonly [K in StatementKind]: Meaning<Extract<Statement, { kind: K }>> } = {
  finding: findingMeaning,
  'region-state': regionStateMeaning,
  sensation: sensationMeaning,
  'sensation-comparison': comparisonMeaning,
  movement: movementMeaning,
  'function-test': functionTestMeaning,
  measurement: measurementMeaning,
  'scale-score': scaleScoreMeaning,
  symptom: symptomMeaning,
  note: noteMeaning,
  image: imageMeaning,
};

/** The record files each meaning under the kind it takes, which lets it stand for that of any kind. */
function meaningOf({ kind }: Statement): Meaning<Statement> {
  return meanings[kind];
}

/** What a statement is about, without its answer: a sign, a region, a point, a test, a measure ... */
export function subjectOf(statement: Statement): Coded {
  return meaningOf(statement).subject(statement);
}

/** Where a statement stands: region, side, part of the body. The only place that decides it. */
export function standingOf(statement: Statement, catalogue: Catalogue): Standing {
  return meaningOf(statement).standing(statement, catalogue);
}

/** Part of the body under which a statement is told. */
export function sectionOf(statement: Statement, catalogue: Catalogue): string {
  return standingOf(statement, catalogue).section ?? 'general';
}

/** What a statement states or denies, where and when. The only place that decides it. */
export function sayingsOf(statement: Statement, catalogue: Catalogue): readonly Saying[] {
  const { region, side } = standingOf(statement, catalogue);
  const at = region === undefined ? [] : [{ region, side }];
  const carried = statement.carried !== undefined;
  const unconfirmed = isUnconfirmed(statement);
  const seen = seenAt(statement);
  return meaningOf(statement)
    .said(statement, catalogue)
    .map(({ polarity, of, aspect, usual, methods = [], except = [], completeness }) => ({
      polarity,
      of,
      aspect,
      usual,
      at,
      methods,
      except,
      completeness: completeness ?? (polarity === 'none' ? 'none' : 'whole'),
      seen,
      carried,
      unconfirmed,
    }));
}

/**
 * Whether a statement says that something is there, and leaves none of it open. Of what is not there,
 * not known or not examined, a code wider than the thing itself would say more than the examiner did.
 */
export function statesSomething(statement: Statement, catalogue: Catalogue): boolean {
  return areStated(meaningOf(statement).said(statement, catalogue));
}

/** The same of what a statement is known to say. */
export function areStated(said: readonly Pick<Saying, 'polarity'>[]): boolean {
  return (
    said.some(({ polarity }) => polarity === 'states') &&
    !said.some(({ polarity }) => polarity === 'open')
  );
}
