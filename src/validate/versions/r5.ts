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

/**
 * Validates a bundle or a single resource against FHIR R5: structure, data types, invariants,
 * codes, references and identity, for the resource types that this library writes. `all-r5` takes
 * every type.
 *
 * @param bundle The resource as plain data. With `fromJson` decimals are judged as they were
 *   written.
 * @param options Level, profiles and severities; see {@link ValidateOptions}.
 * @returns Whether it conforms, every issue, and every rule that was not looked at.
 * @throws {TypeError} For an unknown level, and for an engine or profiles of another FHIR version.
 * @example
 * const { conformance, issues: found } = validateBundle(bundle);
 * @see https://hl7.org/fhir/R5/validation.html
 */
export function validateBundle(bundle: unknown, options?: ValidateOptions): Validation {
  return runStages(bundle, version, options);
}

/**
 * Puts your own profiles for FHIR R5 together once, for many calls of {@link validateBundle}.
 *
 * @param resources StructureDefinitions with or without snapshot, and the value sets, code systems
 *   and extensions that they use.
 * @param options The budget of the call; see {@link CompileOptions}.
 * @returns The profiles; `issues` lists what was given and cannot be used.
 * @example
 * const profiles = compileProfiles([resource]);
 * const { valid } = validateBundle(bundle, { profiles });
 * @see https://hl7.org/fhir/R5/profiling.html
 */
export function compileProfiles(resources: readonly unknown[], options?: CompileOptions): Profiles {
  return compileAll(resources, version.plan.definitions, options);
}
