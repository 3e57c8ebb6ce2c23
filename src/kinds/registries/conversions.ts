import type { Builder, Unkeyed } from '../../convert/build/built.ts';
import { conditionTarget } from '../../convert/build/condition.ts';
import type { Target, TargetKind } from '../../convert/mapping/target.ts';
import type { Statement, StatementKind } from '../../model/statement.ts';
import type { StatementConversion, TargetConversion } from '../facets/conversion.ts';
import { attributeTarget, findingConversion, findingTarget } from '../finding/convert.ts';
import { functionTestConversion, functionTestTarget } from '../function-test/convert.ts';
import { imageConversion } from '../image/convert.ts';
import { measurementConversion, measurementTarget } from '../measurement/convert.ts';
import { movementConversion, movementTarget } from '../movement/convert.ts';
import { noteConversion, noteTarget } from '../note/convert.ts';
import { regionStateConversion, regionStateTarget } from '../region-state/convert.ts';
import { scaleScoreConversion, scaleScoreTarget } from '../scale-score/convert.ts';
import { sensationConversion, sensationTarget } from '../sensation/convert.ts';
import { comparisonConversion, comparisonTarget } from '../sensation-comparison/convert.ts';
import { symptomConversion, symptomTarget } from '../symptom/convert.ts';

const targets: { readonly [K in TargetKind]: TargetConversion<Extract<Target, { kind: K }>> } = {
  finding: findingTarget,
  attribute: attributeTarget,
  'region-state': regionStateTarget,
  sensation: sensationTarget,
  'sensation-comparison': comparisonTarget,
  movement: movementTarget,
  'function-test': functionTestTarget,
  measurement: measurementTarget,
  'scale-score': scaleScoreTarget,
  symptom: symptomTarget,
  note: noteTarget,
  condition: conditionTarget,
};

const statements: {
  readonly [K in StatementKind]: StatementConversion<Extract<Statement, { kind: K }>>;
} = {
  finding: findingConversion,
  'region-state': regionStateConversion,
  sensation: sensationConversion,
  'sensation-comparison': comparisonConversion,
  movement: movementConversion,
  'function-test': functionTestConversion,
  measurement: measurementConversion,
  'scale-score': scaleScoreConversion,
  symptom: symptomConversion,
  note: noteConversion,
  image: imageConversion,
};

/** Kinds that no item of a legacy export becomes, and why: a new kind has a target or a line here. */
export const withoutTarget: { readonly [K in Exclude<StatementKind, TargetKind>]: string } = {
  image: 'no format that is read refers to pictures',
};

/** How a target is checked and read. */
export function targetConversion({ kind }: Target): TargetConversion<Target> {
  // The record files each under the kind that it takes; its builder alone is typed by that kind.
  return targets[kind] as (typeof targets)[typeof kind] & { readonly build: Builder<Target> };
}

/** How a statement that was read becomes part of an exam. */
export function statementConversion({ kind }: Unkeyed): StatementConversion<Statement> {
  return statements[kind];
}
