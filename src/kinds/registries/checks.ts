import type { Marker } from '../../checks/coverage/marks.ts';
import type { Statement, StatementKind } from '../../model/statement.ts';
import type { KindCheck, KindComparison } from '../facets/check.ts';
import { findingCheck } from '../finding/check.ts';
import { functionTestCheck } from '../function-test/check.ts';
import { imageCheck } from '../image/check.ts';
import { measurementCheck } from '../measurement/check.ts';
import { movementCheck } from '../movement/check.ts';
import { noteCheck } from '../note/check.ts';
import { regionStateCheck } from '../region-state/check.ts';
import { scaleScoreCheck } from '../scale-score/check.ts';
import { sensationCheck } from '../sensation/check.ts';
import { comparisonCheck } from '../sensation-comparison/check.ts';
import { symptomCheck } from '../symptom/check.ts';

const checks: { readonly [K in StatementKind]: KindCheck<Extract<Statement, { kind: K }>> } = {
  finding: findingCheck,
  'region-state': regionStateCheck,
  sensation: sensationCheck,
  'sensation-comparison': comparisonCheck,
  movement: movementCheck,
  'function-test': functionTestCheck,
  measurement: measurementCheck,
  'scale-score': scaleScoreCheck,
  symptom: symptomCheck,
  note: noteCheck,
  image: imageCheck,
};

/** The record files each check under the kind it takes, which lets it stand for that of any kind. */
function checkOf({ kind }: Statement): KindCheck<Statement> {
  return checks[kind];
}

/** Marks what a statement covers of a protocol, or documents as not done. */
export function coverBy(statement: Statement, marker: Marker): void {
  checkOf(statement).cover?.(statement, marker);
}

/** How a statement is compared with another of its kind; undefined where its kind is not compared. */
export function comparisonOf(statement: Statement): KindComparison<Statement> | undefined {
  return checkOf(statement).comparison;
}

/** All the free words of a statement but the reasons: its note, its place, and those of its kind. */
export function wordsIn(statement: Statement): readonly string[] {
  const place = 'place' in statement ? statement.place : undefined;
  const own = checkOf(statement).words?.(statement) ?? [];
  return [statement.note, place, ...own].filter((text) => text !== undefined);
}
