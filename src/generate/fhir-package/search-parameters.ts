import { LATERALITY_EXTENSION } from '../../fhir/names/systems.ts';
import { type Definition, head, type PackageOrder } from './head.ts';

/** How an Observation of an exam is found: by place, side, and sign at a place. */
const searches = [
  {
    code: 'body-site',
    title: 'Where it was observed',
    description:
      'The site of an observation. With the modifier below, the site and all that is part of it: body-site:below=eyes finds what was said of the eyelids.',
    type: 'token',
    expression: 'Observation.bodySite',
    modifier: ['below', 'above', 'in', 'not-in', 'not', 'text', 'missing'],
  },
  {
    code: 'side',
    title: "The patient's own side",
    description:
      'The side of the site, as a code of SNOMED CT. The code of the site holds the side too: body-site=eyes.left.',
    type: 'token',
    expression: `Observation.bodySite.extension('${LATERALITY_EXTENSION}').value`,
    modifier: ['not', 'missing'],
  },
  {
    code: 'sign-site',
    title: 'A sign at a site',
    description:
      'The sign, symptom, test or measure, and where. Whether a sign is there is the value: code-value-concept of FHIR finds that.',
    type: 'composite',
    expression: 'Observation',
    component: [
      { of: 'http://hl7.org/fhir/SearchParameter/clinical-code', expression: 'code' },
      { of: 'body-site', expression: 'bodySite' },
    ],
  },
] as const;

/** Searches for Observations that FHIR does not define. */
export function searchParameters(order: PackageOrder): Definition[] {
  return searches.map((search) => {
    const { code, title, description, type, expression } = search;
    const { title: named, ...rest } = head(order, 'SearchParameter', `observation-${code}`, {
      title,
      version: order.packageVersion,
      description,
    });
    return {
      ...rest,
      // R4 has no title of it.
      ...(order.version === 'R5' && { title: named }),
      code,
      base: ['Observation'],
      type,
      expression,
      ...(order.version === 'R5' ? { processingMode: 'normal' } : { xpathUsage: 'normal' }),
      multipleOr: true,
      multipleAnd: true,
      ...('modifier' in search && { modifier: search.modifier }),
      ...('component' in search && {
        component: search.component.map(({ of, expression: part }) => ({
          definition: of.startsWith('http') ? of : searchUrl(order, of),
          expression: part,
        })),
      }),
    };
  });
}

/** Our searches by name, with type and URL, as a CapabilityStatement lists them. */
export function ownSearches(
  order: PackageOrder,
): { name: string; definition: string; type: string }[] {
  return searches.map(({ code, type }) => ({
    name: code,
    definition: searchUrl(order, code),
    type,
  }));
}

function searchUrl({ base }: PackageOrder, code: string): string {
  return `${base}/SearchParameter/observation-${code}`;
}
