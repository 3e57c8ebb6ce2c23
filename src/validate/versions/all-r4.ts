import type { Profiles } from '../profiles/compile.ts';
import { type CompileOptions, compileAll } from '../profiles/compile.ts';
import * as tables from '../tables/r4.ts';
import * as rest from '../tables/r4-rest.ts';
import * as vitalSigns from '../tables/r4-vital-signs.ts';
import { terminology } from '../tables/terminology.ts';
import { terminology as terminologyRest } from '../tables/terminology-rest.ts';
import { type LineValidation, runOnLines } from '../text/validate-lines.ts';
import { runOnText } from '../text/validate-text.ts';
import { runStages, type ValidateOptions, type Validation } from '../validate-bundle.ts';
import { createVersion } from '../walk/stages.ts';

export type { CompileOptions, Profiles } from '../profiles/compile.ts';
export { referenceSeverities, type SeverityRule } from '../severities.ts';
export type { LineValidation } from '../text/validate-lines.ts';
export type { Conformance, ValidateOptions, Validation } from '../validate-bundle.ts';
export type { Unchecked } from '../walk/scope.ts';

const version = createVersion(
  'R4',
  {
    resourceTypes: tables.resourceTypes,
    primitives: tables.primitives,
    types: { ...tables.types, ...rest.types },
    extensions: { ...tables.extensions, ...rest.extensions },
    codeSystems: { ...tables.codeSystems, ...rest.codeSystems },
    terminology: { ...terminology, ...terminologyRest },
    valueSets: { ...tables.valueSets, ...rest.valueSets },
    published: rest.published,
  },
  vitalSigns,
);

/** As `validateBundle` of the small entry, for resources of every type of FHIR R4, and every issue found with it. */
export function validateBundle(bundle: unknown, options?: ValidateOptions): Validation {
  return runStages(bundle, version, options);
}

/**
 * The same of a text in JSON or XML of FHIR R4, told apart by the first character. Each issue has the
 * line and column of the element that it is about; what cannot be read has issues and does not conform.
 */
export function validateText(text: string, options?: ValidateOptions): Validation {
  return runOnText(text, version, options);
}

/**
 * The same of NDJSON, one resource a line, as it comes: of any number of lines one is held at a time.
 * @param chunks pieces of text, cut anywhere
 */
export function validateLines(
  chunks: Iterable<string> | AsyncIterable<string>,
  options?: ValidateOptions,
): AsyncGenerator<LineValidation, void, undefined> {
  return runOnLines(chunks, version, options);
}

/**
 * Profiles of an adopter for FHIR R4, put together once for many calls of {@link validateBundle};
 * its `issues` tell what was given and cannot be used.
 */
export function compileProfiles(resources: readonly unknown[], options?: CompileOptions): Profiles {
  return compileAll(resources, version.plan.definitions, options);
}
