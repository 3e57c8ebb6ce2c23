import type { Profiles } from '../profiles/compile.ts';
import { type CompileOptions, compileAll } from '../profiles/compile.ts';
import { resourceStage } from '../resources/stage.ts';
import * as tables from '../tables/r5.ts';
import * as rest from '../tables/r5-rest.ts';
import * as vitalSigns from '../tables/r5-vital-signs.ts';
import { type EntryValidation, runOnEntries, type TextSource } from '../text/validate-entries.ts';
import { type LineValidation, runOnLines } from '../text/validate-lines.ts';
import { runOnText } from '../text/validate-text.ts';
import { runStages, type ValidateOptions, type Validation } from '../validate-bundle.ts';
import { createVersion } from '../walk/stages.ts';
import { wholeTables } from './whole-tables.ts';

export type { CompileOptions, Profiles } from '../profiles/compile.ts';
export { referenceSeverities, type SeverityRule } from '../severities.ts';
export type { EntryValidation, TextSource } from '../text/validate-entries.ts';
export type { LineValidation } from '../text/validate-lines.ts';
export type { Conformance, ValidateOptions, Validation } from '../validate-bundle.ts';
export type { Unchecked } from '../walk/scope.ts';

const version = createVersion('R5', wholeTables(tables, rest), vitalSigns, [resourceStage]);

/**
 * Validates a bundle or a single resource of any type against FHIR R5.
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
 * Validates a resource of FHIR R5 given as text: FHIR XML where its first character is `<`, JSON
 * otherwise.
 *
 * @param text The resource.
 * @param options As for {@link validateBundle}.
 * @returns As of `validateBundle`; each issue has the line and column of the element that it is
 *   about. Text that cannot be read has issues and does not conform.
 * @throws {TypeError} For an unknown level, and for an engine or profiles of another FHIR version.
 * @example
 * for (const { message, source } of validateText(text).issues) console.log(message, source);
 */
export function validateText(text: string, options?: ValidateOptions): Validation {
  return runOnText(text, version, options);
}

/**
 * Validates NDJSON of FHIR R5, one resource a line, as it comes. One line is held in memory at a
 * time.
 *
 * @param chunks Pieces of the text, cut anywhere.
 * @param options As for {@link validateText}.
 * @returns The verdict on each line that is not blank, in order, with its number from 1.
 * @throws {TypeError} At the first line, for an unknown level, and for an engine or profiles of
 *   another FHIR version.
 * @example
 * for await (const { line, valid } of validateLines([text])) if (!valid) console.log(line);
 * @see https://hl7.org/fhir/R4/nd-json.html
 */
export function validateLines(
  chunks: Iterable<string> | AsyncIterable<string>,
  options?: ValidateOptions,
): AsyncGenerator<LineValidation, void, undefined> {
  return runOnLines(chunks, version, options);
}

/**
 * Validates a bundle of FHIR R5 in JSON that may be larger than the memory, entry by entry. The text
 * is gone through twice: for what entries can be named by, of which some hundred bytes each are
 * kept, and then entry by entry. What would take two entries at once, or a profile of the bundle, is
 * told as unchecked.
 *
 * @param source Gives the text from its beginning, in pieces cut anywhere; called twice.
 * @param options As for {@link validateText}; `budget.characters` is the length of one entry.
 * @returns The verdict on each entry in order, with its number from 0, and at last that on the bundle
 *   around them, whose `whole` is the verdict on all of it.
 * @throws {TypeError} At the first entry, for an unknown level, and for an engine or profiles of
 *   another FHIR version.
 * @example
 * for await (const { entry, issues: found } of validateEntries(() => [text])) console.log(entry, found);
 */
export function validateEntries(
  source: TextSource,
  options?: ValidateOptions,
): AsyncGenerator<EntryValidation, void, undefined> {
  return runOnEntries(source, version, options);
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
 * const { valid } = validateText(text, { profiles });
 * @see https://hl7.org/fhir/R5/profiling.html
 */
export function compileProfiles(resources: readonly unknown[], options?: CompileOptions): Profiles {
  return compileAll(resources, version.plan.definitions, options);
}
