import type { FhirVersion } from '../fhir/version.ts';
import { bundleStage } from './bundle-rules.ts';
import { dataTypeStage } from './data-types.ts';
import { createDefinitions, type Tables } from './definitions.ts';
import { extensionStage } from './extensions.ts';
import { createPlan, type Plan } from './plan.ts';
import { referenceStage } from './references.ts';
import { terminologyStage } from './terminology.ts';

/**
 * What one walk over a resource does at each type, by stage. The stages of elements and invariants
 * look at every type and are part of the walk itself; the schema comes before it.
 */
const stages = [
  extensionStage,
  dataTypeStage,
  referenceStage,
  bundleStage,
  terminologyStage,
] as const;

export function planOf(fhirVersion: FhirVersion, tables: Tables): Plan {
  return createPlan(createDefinitions(fhirVersion, tables), stages);
}
