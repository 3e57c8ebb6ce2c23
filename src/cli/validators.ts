import type { FhirVersion } from '../fhir/version.ts';
import type { Profiles } from '../validate/profiles/compile.ts';
import type { EntryValidation, TextSource } from '../validate/text/validate-entries.ts';
import type { ExpressionEngine } from '../validate/thorough/engine.ts';
import type { ValidateOptions, Validation } from '../validate/validate-bundle.ts';
import { systemCode, UsageError } from './failure.ts';

export interface Validator {
  readonly validateBundle: (bundle: unknown, options?: ValidateOptions) => Validation;
  readonly validateText: (text: string, options?: ValidateOptions) => Validation;
  readonly validateEntries: (
    source: TextSource,
    options?: ValidateOptions,
  ) => AsyncIterable<EntryValidation>;
  readonly compileProfiles: (resources: readonly unknown[]) => Profiles;
}

const loaders: Readonly<Record<FhirVersion, () => Promise<Validator>>> = {
  R4: () => import('../validate/versions/all-r4.ts'),
  R4B: () => import('../validate/versions/all-r4b.ts'),
  R5: () => import('../validate/versions/all-r5.ts'),
};

/** The validator of one version, for resources of all types; the tables of the others are not loaded. */
export async function validatorOf(version: FhirVersion): Promise<Validator> {
  return loaders[version]();
}

/** The engine of the thorough level. Throws UsageError where the library that it needs is not there. */
export async function engineOf(version: FhirVersion): Promise<ExpressionEngine> {
  try {
    const { thoroughR4, thoroughR4b, thoroughR5 } = await import(
      '../validate/thorough/thorough.ts'
    );
    return { R4: thoroughR4, R4B: thoroughR4b, R5: thoroughR5 }[version];
  } catch (thrown) {
    if (systemCode(thrown) !== 'ERR_MODULE_NOT_FOUND') throw thrown;
    throw new UsageError('--level thorough needs the npm package fhirpath, which is not installed');
  }
}
