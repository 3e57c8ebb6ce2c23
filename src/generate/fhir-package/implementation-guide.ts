import { fhirVersionNumber } from '../../fhir/version.ts';
import { type Definition, head, ownCopyright, type PackageOrder } from './head.ts';
import { dependencies } from './manifest.ts';

/** How the definitions are told apart on a page that lists them, in this order. */
const groupings = [
  ['StructureDefinition', 'profiles', 'Profiles'],
  ['CodeSystem', 'code-systems', 'Code systems'],
  ['ValueSet', 'value-sets', 'Value sets'],
  ['ConceptMap', 'concept-maps', 'Maps to SNOMED CT and LOINC'],
  ['NamingSystem', 'naming-systems', 'Identifier systems'],
  ['SearchParameter', 'search-parameters', 'Searches'],
  ['CapabilityStatement', 'capability-statements', 'What servers and clients do'],
  ['Bundle', 'examples', 'Examples'],
] as const;

/** Guides of the packages that ours builds on, by the first part of their name. */
const guides = [
  ['hl7.terminology.', 'http://terminology.hl7.org/ImplementationGuide/hl7.terminology'],
  [
    'hl7.fhir.uv.extensions.',
    'http://hl7.org/fhir/extensions/ImplementationGuide/hl7.fhir.uv.extensions',
  ],
] as const;

/** An example of the package, as the guide lists it. */
export interface Example {
  readonly resourceType: string;
  readonly id: string;
  readonly name: string;
}

/** The guide that names every definition and example of the package. */
export function implementationGuide(
  order: PackageOrder,
  definitions: readonly Definition[],
  examples: readonly Example[],
): Definition {
  const listed = [
    ...definitions.map((one) => ({
      ...listedAs(one, String(one['title'] ?? one['name'])),
      ...flag(order, false),
    })),
    ...examples.map((one) => ({ ...listedAs(one, one.name), ...flag(order, true) })),
  ];
  const used = new Set(listed.map(({ groupingId }) => groupingId));
  const page = { title: 'Examinations of face and neck', generation: 'html' };
  return {
    ...head(order, 'ImplementationGuide', 'guide', {
      title: 'Examinations of face and neck',
      version: order.packageVersion,
      description:
        'Code systems, value sets, maps, profiles and searches for examinations of face and neck, with examples.',
    }),
    copyright: ownCopyright,
    packageId: `face-neck-fhir.${order.version.toLowerCase()}`,
    license: 'Apache-2.0',
    fhirVersion: [fhirVersionNumber[order.version]],
    dependsOn: Object.entries(dependencies[order.version]).flatMap(([packageId, version]) => {
      const uri = guides.find(([name]) => packageId.startsWith(name))?.[1];
      return uri === undefined ? [] : [{ uri, packageId, version }];
    }),
    definition: {
      grouping: groupings.filter(([, id]) => used.has(id)).map(([, id, name]) => ({ id, name })),
      resource: listed,
      page:
        order.version === 'R4'
          ? { nameUrl: 'index.html', ...page }
          : { sourceUrl: 'index.html', name: 'index.html', ...page },
    },
  };
}

function listedAs({ resourceType, id }: { resourceType: string; id: string }, name: string) {
  const groupingId = groupings.find(([type]) => type === resourceType)?.[1];
  return { reference: { reference: `${resourceType}/${id}` }, name, groupingId };
}

function flag({ version }: PackageOrder, isExample: boolean): object {
  return version === 'R4' ? { exampleBoolean: isExample } : { isExample };
}
