import { fhirVersionNumber } from '../../fhir/version.ts';
import { type Definition, type PackageOrder, PUBLISHER, RELEASED } from './head.ts';

/** Other packages that a package builds on, in the edition of its FHIR version. */
export const dependencies = {
  R4: {
    'hl7.fhir.r4.core': '4.0.1',
    'hl7.terminology.r4': '7.0.1',
    'hl7.fhir.uv.extensions.r4': '5.3.0-ballot-tc1',
  },
  R5: {
    'hl7.fhir.r5.core': '5.0.0',
    'hl7.terminology.r5': '7.0.1',
    'hl7.fhir.uv.extensions.r5': '5.3.0-ballot-tc1',
  },
} as const;

/** @see https://confluence.hl7.org/display/FHIR/NPM+Package+Specification */
export function manifest({ version, base, packageVersion }: PackageOrder): object {
  return {
    name: `face-neck-fhir.${version.toLowerCase()}`,
    version: packageVersion,
    'tools-version': 3,
    type: 'fhir.ig',
    date: RELEASED.replaceAll('-', ''),
    license: 'Apache-2.0',
    canonical: base,
    url: base,
    title: `Face and neck examinations, FHIR ${version}`,
    description:
      'Code systems, value sets, concept maps, profiles and searches of face and neck examinations',
    fhirVersions: [fhirVersionNumber[version]],
    dependencies: dependencies[version],
    author: PUBLISHER,
    directories: { lib: 'package', example: 'example' },
  };
}

/** The list of definitions that tools read instead of opening each file. */
export function index(
  definitions: readonly Definition[],
  fileName: (one: Definition) => string,
): object {
  const properties = ['url', 'version', 'kind', 'type', 'supplements', 'content'];
  return {
    'index-version': 2,
    files: definitions.map((one) => ({
      filename: fileName(one),
      resourceType: one.resourceType,
      id: one.id,
      ...Object.fromEntries(
        properties.filter((name) => one[name] !== undefined).map((name) => [name, one[name]]),
      ),
    })),
  };
}
