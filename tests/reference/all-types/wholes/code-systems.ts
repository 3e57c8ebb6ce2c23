import type { Json } from '../places.ts';
import { base, canonical, gender } from './canonical.ts';

const system = (more: Json = {}): Json =>
  canonical('CodeSystem', {
    content: 'complete',
    caseSensitive: true,
    concept: [
      { code: 'a', display: 'A', definition: 'A' },
      { code: 'b', display: 'B', definition: 'B' },
    ],
    ...more,
  });
const property = (more: Json = {}, value: Json = { code: 'age', valueInteger: 1 }): Json =>
  system({
    property: [{ code: 'age', type: 'integer', ...more }],
    concept: [{ code: 'a', property: [value] }],
  });

/** Code systems, sound and broken, by name. */
export const codeSystemCases: Record<string, Json> = {
  'system-sound': system(),
  'system-of-code-twice': system({ concept: [{ code: 'a' }, { code: 'a' }] }),
  'system-of-code-twice-below': system({
    concept: [{ code: 'a', concept: [{ code: 'b' }] }, { code: 'b' }],
  }),
  'system-of-wrong-count': system({ count: 5 }),
  'system-of-right-count': system({ count: 2 }),
  'system-of-no-concepts': system({ concept: undefined }),
  'system-not-present-with-concepts': system({ content: 'not-present' }),
  'system-fragment-of-count': system({ content: 'fragment', count: 2 }),
  'system-fragment-of-larger-count': system({ content: 'fragment', count: 9 }),
  'system-supplement-without-base': system({ content: 'supplement' }),
  'system-supplements-and-complete': system({ supplements: gender }),
  'system-supplement-sound': system({
    content: 'supplement',
    supplements: gender,
    concept: [{ code: 'male', designation: [{ language: 'de', value: 'm' }] }],
  }),
  'system-supplement-of-unknown-code': system({
    content: 'supplement',
    supplements: gender,
    concept: [{ code: 'banana', designation: [{ language: 'de', value: 'm' }] }],
  }),
  'system-without-content': system({ content: undefined }),
  'system-without-status': system({ status: undefined }),
  'system-of-name-in-words': system({ name: 'my vines' }),
  'system-of-small-name': system({ name: 'vines' }),
  'system-without-url': system({ url: undefined }),
  'system-of-relative-url': system({ url: 'vines' }),
  'system-of-url-with-bar': system({ url: `${base}/x|1` }),
  'system-of-url-with-fragment': system({ url: `${base}/x#1` }),
  'system-of-concept-without-code': system({ concept: [{ display: 'A' }] }),
  'system-of-code-with-spaces': system({ concept: [{ code: ' a ' }] }),
  'system-property-sound': property(),
  'system-property-of-other-value': property({}, { code: 'age', valueString: 'x' }),
  'system-property-undefined': property({}, { code: 'size', valueInteger: 1 }),
  'system-property-without-value': property({}, { code: 'age' }),
  'system-property-without-type': property({ type: undefined }),
  'system-property-of-unknown-type': property({ type: 'banana' }),
  'system-property-of-relative-uri': property({ uri: 'age' }),
  'system-property-of-unknown-hl7-uri': property({
    uri: 'http://hl7.org/fhir/concept-properties#banana',
  }),
  'system-property-twice': system({
    property: [
      { code: 'age', type: 'integer' },
      { code: 'age', type: 'integer' },
    ],
  }),
  'system-property-parent-of-nothing': system({
    property: [
      { code: 'parent', uri: 'http://hl7.org/fhir/concept-properties#parent', type: 'code' },
    ],
    concept: [{ code: 'a', property: [{ code: 'parent', valueCode: 'banana' }] }],
  }),
  'system-property-parent-sound': system({
    property: [
      { code: 'parent', uri: 'http://hl7.org/fhir/concept-properties#parent', type: 'code' },
    ],
    concept: [{ code: 'a' }, { code: 'b', property: [{ code: 'parent', valueCode: 'a' }] }],
  }),
  'system-property-parent-of-string': system({
    property: [
      { code: 'parent', uri: 'http://hl7.org/fhir/concept-properties#parent', type: 'string' },
    ],
    concept: [{ code: 'a' }],
  }),
  'system-property-status-of-boolean': system({
    property: [
      { code: 'status', uri: 'http://hl7.org/fhir/concept-properties#status', type: 'boolean' },
    ],
    concept: [{ code: 'a' }],
  }),
  'system-property-status-undefined': system({
    concept: [{ code: 'a', property: [{ code: 'status', valueCode: 'retired' }] }],
  }),
  'system-filter-without-operator': system({ filter: [{ code: 'f', value: 'x' }] }),
  'system-filter-sound': system({ filter: [{ code: 'f', operator: ['='], value: 'x' }] }),
  'system-of-designation-twice': system({
    concept: [{ code: 'a', display: 'A', designation: [{ value: 'A2' }] }],
  }),
  'system-of-designation-without-value': system({
    concept: [{ code: 'a', designation: [{ language: 'de' }] }],
  }),
  'system-of-hierarchy-unknown': system({ hierarchyMeaning: 'banana' }),
  'system-of-value-set': system({ valueSet: `${base}/ValueSet/x` }),
  'system-of-jurisdiction-unknown': system({
    jurisdiction: [{ coding: [{ system: 'urn:iso:std:iso:3166', code: 'BANANA' }] }],
  }),
  'system-of-date-in-words': system({ date: 'today' }),
  'system-of-hl7': system({ url: 'http://hl7.org/fhir/vines' }),
};
