import type { Plan, PlannedTarget } from '../plan.ts';
import type { Target, TargetKind } from '../target.ts';
import type { Builder, Built, Reading } from './built.ts';
import { buildAttribute, buildMeasurement, buildScale, buildSymptom } from './measured.ts';
import { buildCondition, buildFinding, buildNote, buildRegionState } from './places.ts';
import { buildComparison, buildFunctionTest, buildMovement, buildSensation } from './tests.ts';

const builders: { readonly [Kind in TargetKind]: Builder<Extract<Target, { kind: Kind }>> } = {
  finding: buildFinding,
  attribute: buildAttribute,
  'region-state': buildRegionState,
  sensation: buildSensation,
  'sensation-comparison': buildComparison,
  movement: buildMovement,
  'function-test': buildFunctionTest,
  measurement: buildMeasurement,
  'scale-score': buildScale,
  symptom: buildSymptom,
  note: buildNote,
  condition: buildCondition,
};

/** What the target makes of a reading. */
export function build(planned: PlannedTarget, reading: Reading, plan: Plan): Built {
  // The table holds for each kind the builder of that kind; TypeScript can not follow the pairing.
  const builder = builders[planned.target.kind] as Builder<Target>;
  return builder(planned, reading, plan);
}
