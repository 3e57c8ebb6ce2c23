import type { FhirRelease } from '../../corpus.ts';
import type { Json } from '../places.ts';

const base = 'http://vineyard.example/fhir';
const head = (resourceType: string, more: Json): Json => ({
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

/** Code systems, value sets and maps, sound and broken, by name. */
export function terminologyCases(version: FhirRelease): Record<string, Json> {
  const r5 = version === 'R5';
  const system = (more: Json = {}): Json =>
    head('CodeSystem', {
      content: 'complete',
      caseSensitive: true,
      concept: [
        { code: 'a', display: 'A', definition: 'A' },
        { code: 'b', display: 'B', definition: 'B' },
      ],
      ...more,
    });
  const set = (more: Json = {}): Json =>
    head('ValueSet', {
      compose: { include: [{ system: 'http://hl7.org/fhir/administrative-gender' }] },
      ...more,
    });
  const include = (...parts: Json[]): Json => set({ compose: { include: parts } });
  const gender = 'http://hl7.org/fhir/administrative-gender';
  const own = `${base}/CodeSystem/x2`;
  const map = (more: Json = {}): Json =>
    head('ConceptMap', {
      group: [{ source: gender, target: own, element: [{ code: 'male', target: [target('a')] }] }],
      ...more,
    });
  const target = (code: string | undefined, more: Json = {}): Json => ({
    ...(code === undefined ? {} : { code }),
    ...(r5 ? { relationship: 'equivalent' } : { equivalence: 'equivalent' }),
    ...more,
  });
  const group = (more: Json): Json =>
    map({
      group: [
        {
          source: gender,
          target: own,
          element: [{ code: 'male', target: [target('a')] }],
          ...more,
        },
      ],
    });
  const property = (more: Json = {}, value: Json = { code: 'age', valueInteger: 1 }): Json =>
    system({
      property: [{ code: 'age', type: 'integer', ...more }],
      concept: [{ code: 'a', property: [value] }],
    });
  return {
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
    'map-sound': map(),
    'map-without-group': map({ group: undefined }),
    'map-of-unknown-source-code': group({ element: [{ code: 'banana', target: [target('a')] }] }),
    'map-of-unknown-target-code': group({
      source: own,
      target: gender,
      element: [{ code: 'a', target: [target('banana')] }],
    }),
    'map-of-wrong-source-display': group({
      element: [{ code: 'male', display: 'Banana', target: [target('a')] }],
    }),
    'map-without-relation': group({ element: [{ code: 'male', target: [{ code: 'a' }] }] }),
    'map-of-unknown-relation': group({
      element: [
        {
          code: 'male',
          target: [{ code: 'a', ...(r5 ? { relationship: 'banana' } : { equivalence: 'banana' }) }],
        },
      ],
    }),
    'map-of-narrower-without-comment': group({
      element: [
        {
          code: 'male',
          target: [
            {
              code: 'a',
              ...(r5
                ? { relationship: 'source-is-broader-than-target' }
                : { equivalence: 'narrower' }),
            },
          ],
        },
      ],
    }),
    'map-of-no-map-and-target': group({
      element: [{ code: 'male', ...(r5 ? { noMap: true } : {}), target: [target('a')] }],
    }),
    'map-of-unmapped-fixed-without-code': group({ unmapped: { mode: 'fixed' } }),
    'map-of-unmapped-other-map': group({ unmapped: { mode: r5 ? 'other-map' : 'other-map' } }),
    'map-of-unmapped-code-and-other': group({
      unmapped: {
        mode: 'fixed',
        code: 'x',
        ...(r5 ? { otherMap: `${base}/ConceptMap/y` } : { url: `${base}/ConceptMap/y` }),
      },
    }),
    'map-of-one-target-twice': group({
      element: [{ code: 'male', target: [target('a'), target('a')] }],
    }),
    'map-of-element-without-code': group({ element: [{ target: [target('a')] }] }),
    'map-of-relative-system': group({ source: 'vines' }),
    'map-without-systems': group({ source: undefined, target: undefined }),
    'map-of-depends-without-value': group({
      element: [
        {
          code: 'male',
          target: [target('a', { dependsOn: [r5 ? { attribute: 'x' } : { property: 'x' }] })],
        },
      ],
    }),
    'naming-system-of-two-preferred': {
      resourceType: 'NamingSystem',
      id: 'n',
      name: 'Vines',
      status: 'active',
      kind: 'codesystem',
      date: '2026',
      uniqueId: [
        { type: 'uri', value: `${base}/a`, preferred: true },
        { type: 'uri', value: `${base}/b`, preferred: true },
      ],
    },
    'naming-system-root-with-replacement': {
      resourceType: 'NamingSystem',
      id: 'n',
      name: 'Vines',
      status: 'active',
      kind: 'root',
      date: '2026',
      uniqueId: [{ type: 'oid', value: 'banana' }],
    },
    'naming-system-sound': {
      resourceType: 'NamingSystem',
      id: 'n',
      name: 'Vines',
      status: 'active',
      kind: 'codesystem',
      date: '2026',
      uniqueId: [{ type: 'oid', value: '1.2.3' }],
    },
  };
}
