import type { Profiles } from '../profiles/compile.ts';
import { type CompileOptions, compileAll } from '../profiles/compile.ts';
import * as tables from '../tables/r5.ts';
import * as vitalSigns from '../tables/r5-vital-signs.ts';
import { terminology } from '../tables/terminology.ts';
import { runStages, type ValidateOptions, type Validation } from '../validate-bundle.ts';
import { createVersion } from '../walk/stages.ts';

export type { CompileOptions, Profiles } from '../profiles/compile.ts';
export { referenceSeverities, type SeverityRule } from '../severities.ts';
export type { Conformance, ValidateOptions, Validation } from '../validate-bundle.ts';
export type { Unchecked } from '../walk/scope.ts';

const version = createVersion('R5', { ...tables, terminology }, vitalSigns);

/** Whether a bundle, or a single resource, conforms to FHIR R5, and every issue found with it. */
export function validateBundle(bundle: unknown, options?: ValidateOptions): Validation {
  return runStages(bundle, version, options);
}

/**
 * Profiles of an adopter for FHIR R5, put together once for many calls of {@link validateBundle};
 * its `issues` tell what was given and cannot be used.
 */
export function compileProfiles(resources: readonly unknown[], options?: CompileOptions): Profiles {
  return compileAll(resources, version.plan.definitions, options);
}
