import type { FhirVersion } from '../fhir/version.ts';
import type { ValidateOptions, Validation } from '../validate/validate-bundle.ts';

type Validate = (bundle: unknown, options?: ValidateOptions) => Validation;

const loaders: Readonly<Record<FhirVersion, () => Promise<{ readonly validateBundle: Validate }>>> =
  {
    R4: () => import('../validate/r4.ts'),
    R4B: () => import('../validate/r4b.ts'),
    R5: () => import('../validate/r5.ts'),
  };

/** The validator of one version; the schemas of the others are not loaded. */
export async function validatorOf(version: FhirVersion): Promise<Validate> {
  return (await loaders[version]()).validateBundle;
}
