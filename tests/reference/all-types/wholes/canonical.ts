import type { Json } from '../places.ts';

export const base = 'http://vineyard.example/fhir';
export const gender = 'http://hl7.org/fhir/administrative-gender';

/** A sound resource that is named by its URL, but for what its type asks for. */
export const canonical = (resourceType: string, more: Json): Json => ({
  resourceType,
  id: 'x1',
  url: `${base}/${resourceType}/x1`,
  version: '1',
  name: 'Vines',
  title: 'Vines',
  status: 'active',
  experimental: false,
  description: 'Vines',
  ...more,
});
