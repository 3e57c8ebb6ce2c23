import type { FhirVersion } from '../../fhir/version.ts';
import { bundleStage } from '../bundles/bundle-rules.ts';
import { referenceStage } from '../bundles/references.ts';
import { dataTypeStage } from '../data-types/data-types.ts';
import { createDefinitions, type Tables } from '../elements/definitions.ts';
import { extensionStage } from '../elements/extensions.ts';
import { structureValidator } from '../elements/structure.ts';
import { coreProfiles, type VitalSigns } from '../profiles/core.ts';
import { terminologyStage } from '../terminology/terminology.ts';
import type { ValidatedVersion } from '../versions/version.ts';
import { createPlan } from './plan.ts';
import type { Stage } from './stage.ts';

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

/**
 * What validates one FHIR version, from its tables.
 * @param more stages that only an entry for all types has
 */
export function createVersion(
  fhirVersion: FhirVersion,
  tables: Tables & { readonly resourceTypes: readonly string[] },
  vitalSigns: VitalSigns,
  more: readonly Stage[] = [],
): ValidatedVersion {
  const { resourceTypes } = tables;
  const valueSets = { ...vitalSigns.valueSets, ...tables.valueSets };
  const definitions = createDefinitions(fhirVersion, { ...tables, valueSets });
  return {
    fhirVersion,
    resourceValidator: structureValidator(definitions, resourceTypes),
    resourceTypes,
    knownTypes: new Set(resourceTypes),
    plan: createPlan(definitions, [...stages, ...more]),
    core: coreProfiles(vitalSigns, definitions),
  };
}
