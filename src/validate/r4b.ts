import { resourceTypes, resourceValidator } from './compiled/r4b.js';
import { compileAll, type Profiles } from './profiles/compile.ts';
import { planOf } from './stages.ts';
import { codeSystems, extensions, types, valueSets } from './tables/r4b.ts';
import { terminology } from './tables/terminology.ts';
import { runStages, type ValidateOptions, type Validation } from './validate-bundle.ts';
import type { ValidatedVersion } from './version.ts';

export type { Profiles } from './profiles/compile.ts';
export type { Unchecked } from './scope.ts';
export type { ValidateOptions, Validation } from './validate-bundle.ts';

const version: ValidatedVersion = {
  fhirVersion: 'R4B',
  resourceValidator,
  resourceTypes,
  knownTypes: new Set(resourceTypes),
  plan: planOf('R4B', { types, extensions, codeSystems, terminology, valueSets }),
};

/** Whether a bundle, or a single resource, conforms to FHIR R4B, and every issue found with it. */
export function validateBundle(bundle: unknown, options?: ValidateOptions): Validation {
  return runStages(bundle, version, options);
}

/**
 * Profiles of an adopter for FHIR R4B, put together once for many calls of {@link validateBundle};
 * its `issues` tell what was given and can not be used.
 */
export function compileProfiles(resources: readonly unknown[]): Profiles {
  return compileAll(resources, version.plan.definitions);
}
