import type { Bundle, FhirResource } from 'fhir/r4.js';

/** The least that a record of each type needs to be valid; the id is set by `recordsReferredTo`. */
const least: ReadonlyMap<string, FhirResource> = new Map<string, FhirResource>([
  ['Patient', { resourceType: 'Patient' }],
  ['Practitioner', { resourceType: 'Practitioner' }],
  ['Organization', { resourceType: 'Organization', name: 'Site of the clinic' }],
  [
    'Encounter',
    {
      resourceType: 'Encounter',
      status: 'unknown',
      class: { system: 'http://terminology.hl7.org/CodeSystem/v3-ActCode', code: 'AMB' },
    },
  ],
  ['Device', { resourceType: 'Device' }],
]);

/** A record for every reference that leads out of the bundles, each once. */
export function recordsReferredTo(bundles: readonly Bundle[]): FhirResource[] {
  const names = new Set<string>();
  const held = new Set(
    bundles.flatMap(({ entry = [] }) =>
      entry.map(({ resource }) => `${resource?.resourceType}/${resource?.id}`),
    ),
  );
  JSON.stringify(bundles, (property, value) => {
    if (property === 'reference' && typeof value === 'string' && /^[A-Z]\w+\/[^/]+$/.test(value)) {
      if (!held.has(value)) names.add(value);
    }
    return value;
  });
  return [...names].map((name) => {
    const [type = '', id = ''] = name.split('/');
    const record = least.get(type);
    if (record === undefined) throw new TypeError(`no record for a reference to ${type}`);
    return { ...record, id };
  });
}
