import type { Json } from '../places.ts';
import { base, canonical, gender } from './canonical.ts';

const own = `${base}/CodeSystem/x2`;
const set = (more: Json = {}): Json =>
  canonical('ValueSet', {
    compose: { include: [{ system: 'http://hl7.org/fhir/administrative-gender' }] },
    ...more,
  });
const include = (...parts: Json[]): Json => set({ compose: { include: parts } });

/** Value sets, sound and broken, by name. */
export const valueSetCases: Record<string, Json> = {
  'set-sound': set(),
  'set-without-content': set({ compose: undefined }),
  'set-of-nothing-included': set({ compose: { include: [] } }),
  'set-of-empty-include': include({}),
  'set-of-codes': include({ system: gender, concept: [{ code: 'male' }] }),
  'set-of-unknown-code': include({ system: gender, concept: [{ code: 'banana' }] }),
  'set-of-code-twice': include({ system: gender, concept: [{ code: 'male' }, { code: 'male' }] }),
  'set-of-wrong-display': include({
    system: gender,
    concept: [{ code: 'male', display: 'Banana' }],
  }),
  'set-of-codes-without-system': include({ concept: [{ code: 'male' }] }),
  'set-of-filter-without-system': include({ filter: [{ property: 'p', op: '=', value: 'x' }] }),
  'set-of-codes-and-filter': include({
    system: gender,
    concept: [{ code: 'male' }],
    filter: [{ property: 'p', op: '=', value: 'x' }],
  }),
  'set-of-filter-without-value': include({
    system: gender,
    filter: [{ property: 'concept', op: 'is-a' }],
  }),
  'set-of-filter-of-unknown-operator': include({
    system: gender,
    filter: [{ property: 'concept', op: 'banana', value: 'male' }],
  }),
  'set-of-filter-by-unknown-code': include({
    system: gender,
    filter: [{ property: 'concept', op: 'is-a', value: 'banana' }],
  }),
  'set-of-filter-by-unknown-property': include({
    system: gender,
    filter: [{ property: 'banana', op: '=', value: 'x' }],
  }),
  'set-of-filter-in-regular-expression': include({
    system: gender,
    filter: [{ property: 'code', op: 'regex', value: '(' }],
  }),
  'set-of-loinc-filter': include({
    system: 'http://loinc.org',
    filter: [{ property: 'BANANA', op: '=', value: 'x' }],
  }),
  'set-of-snomed-filter': include({
    system: 'http://snomed.info/sct',
    filter: [{ property: 'concept', op: 'is-a', value: '64572001' }],
  }),
  'set-of-snomed-filter-by-check-digit': include({
    system: 'http://snomed.info/sct',
    filter: [{ property: 'concept', op: 'is-a', value: '64572002' }],
  }),
  'set-of-snomed-filter-by-other-property': include({
    system: 'http://snomed.info/sct',
    filter: [{ property: 'banana', op: 'is-a', value: '64572001' }],
  }),
  'set-of-relative-system': include({ system: 'vines' }),
  'set-of-fragment-system': include({ system: '#vines' }),
  'set-of-value-set-as-system': include({
    system: 'http://hl7.org/fhir/ValueSet/administrative-gender',
  }),
  'set-of-unknown-system': include({ system: own }),
  'set-of-unknown-set': include({ valueSet: [`${base}/ValueSet/none`] }),
  'set-of-known-set': include({
    valueSet: ['http://hl7.org/fhir/ValueSet/administrative-gender'],
  }),
  'set-of-system-as-set': include({ valueSet: [gender] }),
  'set-of-one-include-twice': include({ system: gender }, { system: gender }),
  'set-of-excluded-unknown-code': set({
    compose: {
      include: [{ system: gender }],
      exclude: [{ system: gender, concept: [{ code: 'banana' }] }],
    },
  }),
  'set-of-expansion': set({
    expansion: {
      timestamp: '2026-03-04T10:00:00Z',
      contains: [{ system: gender, code: 'male' }],
    },
  }),
  'set-of-expansion-without-time': set({
    expansion: { contains: [{ system: gender, code: 'male' }] },
  }),
  'set-of-expansion-of-nothing': set({
    expansion: { timestamp: '2026-03-04T10:00:00Z', contains: [{ system: gender }] },
  }),
  'set-of-expansion-without-system': set({
    expansion: { timestamp: '2026-03-04T10:00:00Z', contains: [{ code: 'male' }] },
  }),
  'set-of-abstract-without-code': set({
    expansion: {
      timestamp: '2026-03-04T10:00:00Z',
      contains: [{ display: 'x', abstract: true }],
    },
  }),
  'set-of-parameter-without-name': set({
    expansion: { timestamp: '2026-03-04T10:00:00Z', parameter: [{ valueString: 'x' }] },
  }),
  'set-of-expansion-of-unknown-code': set({
    expansion: {
      timestamp: '2026-03-04T10:00:00Z',
      contains: [{ system: gender, code: 'banana' }],
    },
  }),
};
