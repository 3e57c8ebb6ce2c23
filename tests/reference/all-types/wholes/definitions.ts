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
  date: '2026-03-04',
  description: 'Vines',
  ...more,
});

/** Definitions of profiles, searches, operations and servers, and what rests on such, by name. */
export function definitionCases(version: FhirRelease): Record<string, Json> {
  const r5 = version === 'R5';
  const fhirVersion = { R4: '4.0.1', R4B: '4.3.0', R5: '5.0.0' }[version];
  const profile = (elements: readonly Json[], more: Json = {}): Json =>
    head('StructureDefinition', {
      fhirVersion,
      kind: 'resource',
      abstract: false,
      type: 'Patient',
      baseDefinition: 'http://hl7.org/fhir/StructureDefinition/Patient',
      derivation: 'constraint',
      differential: { element: [{ id: 'Patient', path: 'Patient' }, ...elements] },
      ...more,
    });
  const element = (more: Json): Json =>
    profile([{ id: 'Patient.name', path: 'Patient.name', ...more }]);
  const extension = (more: Json = {}): Json =>
    head('StructureDefinition', {
      fhirVersion,
      kind: 'complex-type',
      abstract: false,
      context: [{ type: 'element', expression: 'Patient' }],
      type: 'Extension',
      baseDefinition: 'http://hl7.org/fhir/StructureDefinition/Extension',
      derivation: 'constraint',
      differential: {
        element: [
          { id: 'Extension', path: 'Extension' },
          {
            id: 'Extension.url',
            path: 'Extension.url',
            fixedUri: `${base}/StructureDefinition/x1`,
          },
          { id: 'Extension.value[x]', path: 'Extension.value[x]', type: [{ code: 'string' }] },
        ],
      },
      ...more,
    });
  const search = (more: Json = {}): Json =>
    head('SearchParameter', {
      code: 'vine',
      base: ['Patient'],
      type: 'string',
      expression: 'Patient.name.family',
      ...(r5 ? { processingMode: 'normal' } : { xpathUsage: 'normal' }),
      ...more,
    });
  const operation = (more: Json = {}): Json =>
    head('OperationDefinition', {
      kind: 'operation',
      code: 'press',
      system: false,
      type: true,
      instance: false,
      resource: ['Patient'],
      parameter: [{ name: 'in', use: 'in', min: 0, max: '1', type: 'string' }],
      ...more,
    });
  const parameter = (more: Json): Json =>
    operation({
      parameter: [{ name: 'in', use: 'in', min: 0, max: '1', type: 'string', ...more }],
    });
  const server = (more: Json = {}): Json =>
    head('CapabilityStatement', {
      kind: 'requirements',
      fhirVersion,
      format: ['json'],
      rest: [{ mode: 'server', resource: [{ type: 'Patient' }] }],
      ...more,
    });
  const rest = (more: Json): Json =>
    server({ rest: [{ mode: 'server', resource: [{ type: 'Patient', ...more }] }] });
  const measure = {
    resourceType: 'MeasureReport',
    status: 'complete',
    type: 'summary',
    measure: `${base}/Measure/x`,
    period: { start: '2026' },
  };
  return {
    'profile-sound': profile([]),
    'profile-without-kind': profile([], { kind: undefined }),
    'profile-of-unknown-type': profile([], { type: 'Banana' }),
    'profile-without-base': profile([], { baseDefinition: undefined }),
    'profile-without-derivation': profile([], { derivation: undefined }),
    'profile-of-unknown-fhirVersion': profile([], { fhirVersion: '9.9.9' }),
    'profile-without-views': profile([], { differential: undefined }),
    'profile-of-name-in-words': profile([], { name: 'my vines' }),
    'profile-of-path-of-another-type': profile([{ id: 'Group.name', path: 'Group.name' }]),
    'profile-of-unknown-path': profile([{ id: 'Patient.banana', path: 'Patient.banana' }]),
    'profile-of-id-twice': profile([
      { id: 'Patient.name', path: 'Patient.name' },
      { id: 'Patient.name', path: 'Patient.name' },
    ]),
    'profile-without-element-id': profile([{ path: 'Patient.name' }]),
    'profile-of-id-with-space': profile([{ id: 'Patient name', path: 'Patient.name' }]),
    'profile-of-min-above-max': element({ min: 2, max: '1' }),
    'profile-of-max-in-words': element({ max: 'many' }),
    'profile-of-min-negative': element({ min: -1 }),
    'profile-of-slicing-without-rules': element({
      slicing: { discriminator: [{ type: 'value', path: 'use' }] },
    }),
    'profile-of-slicing-without-discriminator': element({ slicing: { rules: 'open' } }),
    'profile-of-discriminator-of-unknown-type': element({
      slicing: { rules: 'open', discriminator: [{ type: 'banana', path: 'use' }] },
    }),
    'profile-of-constraint-without-key': element({
      constraint: [{ severity: 'error', human: 'x', expression: 'true' }],
    }),
    'profile-of-constraint-without-expression': element({
      constraint: [{ key: 'v-1', severity: 'error', human: 'x' }],
    }),
    'profile-of-constraint-of-broken-expression': element({
      constraint: [{ key: 'v-1', severity: 'error', human: 'x', expression: 'name.(' }],
    }),
    'profile-of-constraint-of-unknown-function': element({
      constraint: [{ key: 'v-1', severity: 'error', human: 'x', expression: 'banana()' }],
    }),
    'profile-of-constraint-of-unknown-element': element({
      constraint: [{ key: 'v-1', severity: 'error', human: 'x', expression: 'banana.exists()' }],
    }),
    'profile-of-constraint-of-unknown-severity': element({
      constraint: [{ key: 'v-1', severity: 'bad', human: 'x', expression: 'true' }],
    }),
    'profile-of-two-constraints-of-one-key': element({
      constraint: [
        { key: 'v-1', severity: 'error', human: 'x', expression: 'true' },
        { key: 'v-1', severity: 'error', human: 'x', expression: 'family.exists()' },
      ],
    }),
    'profile-of-binding-without-set': element({ binding: { strength: 'required' } }),
    'profile-of-binding-without-strength': element({
      binding: { valueSet: 'http://hl7.org/fhir/ValueSet/administrative-gender' },
    }),
    'profile-of-fixed-and-pattern': profile([
      { id: 'Patient.gender', path: 'Patient.gender', fixedCode: 'male', patternCode: 'male' },
    ]),
    'profile-of-fixed-of-other-type': profile([
      { id: 'Patient.gender', path: 'Patient.gender', fixedString: 'male' },
    ]),
    'profile-of-fixed-unknown-code': profile([
      { id: 'Patient.gender', path: 'Patient.gender', fixedCode: 'banana' },
    ]),
    'profile-of-type-of-unknown-code': element({ type: [{ code: 'Banana' }] }),
    'profile-of-type-twice': element({ type: [{ code: 'HumanName' }, { code: 'HumanName' }] }),
    'profile-of-target-on-no-reference': element({
      type: [
        { code: 'HumanName', targetProfile: ['http://hl7.org/fhir/StructureDefinition/Patient'] },
      ],
    }),
    'profile-of-content-reference-and-type': element({
      contentReference: '#Patient.contact',
      type: [{ code: 'HumanName' }],
    }),
    'profile-of-slice-name-with-space': profile([
      {
        id: 'Patient.name',
        path: 'Patient.name',
        slicing: { rules: 'open', discriminator: [{ type: 'value', path: 'use' }] },
      },
      { id: 'Patient.name:a b', path: 'Patient.name', sliceName: 'a b' },
    ]),
    'profile-of-max-value-on-concept': element({ maxValueInteger: 3 }),
    'profile-of-max-length-on-concept': element({ maxLength: 3 }),
    'profile-of-root-slice-name': profile([], {
      differential: { element: [{ id: 'Patient', path: 'Patient', sliceName: 'x' }] },
    }),
    'profile-first-element-with-type': profile([], {
      differential: { element: [{ id: 'Patient', path: 'Patient', type: [{ code: 'Patient' }] }] },
    }),
    'profile-of-context': profile([], { context: [{ type: 'element', expression: 'Patient' }] }),
    'profile-of-snapshot-of-nothing': profile([], { snapshot: { element: [] } }),
    'profile-of-snapshot-without-base': profile([], {
      snapshot: {
        element: [{ id: 'Patient', path: 'Patient', definition: 'x', min: 0, max: '*' }],
      },
    }),
    'profile-of-must-support-without-meaning': element({ mustSupport: 'yes' }),
    'profile-of-example-without-label': element({ example: [{ valueString: 'x' }] }),
    'profile-of-modifier-without-reason': element({ isModifier: true }),
    'profile-of-mapping-without-identity': element({ mapping: [{ map: 'x' }] }),
    'profile-of-mapping-undeclared': element({ mapping: [{ identity: 'v2', map: 'x' }] }),
    'extension-definition-sound': extension(),
    'extension-definition-without-context': extension({ context: undefined }),
    'extension-definition-of-unknown-context': extension({
      context: [{ type: 'element', expression: 'Banana' }],
    }),
    'extension-definition-of-context-type-unknown': extension({
      context: [{ type: 'banana', expression: 'Patient' }],
    }),
    'extension-definition-of-other-fixed-url': extension({
      url: `${base}/StructureDefinition/other`,
    }),
    'logical-model-sound': profile([], {
      kind: 'logical',
      type: `${base}/StructureDefinition/x1`,
      baseDefinition: 'http://hl7.org/fhir/StructureDefinition/Element',
      derivation: 'specialization',
      differential: { element: [{ id: 'Vines', path: 'Vines' }] },
    }),
    'search-sound': search(),
    'search-of-broken-expression': search({ expression: 'Patient.(' }),
    'search-of-unknown-element': search({ expression: 'Patient.banana' }),
    'search-of-other-base': search({ base: ['Observation'] }),
    'search-of-unknown-base': search({ base: ['Banana'] }),
    'search-without-code': search({ code: undefined }),
    'search-without-base': search({ base: undefined }),
    'search-of-unknown-type': search({ type: 'banana' }),
    'search-without-expression': search({ expression: undefined }),
    'search-of-chain-for-string': search({ chain: ['name'] }),
    'search-of-target-unknown': search({ type: 'reference', target: ['Banana'] }),
    'search-of-component-without-definition': search({
      type: 'composite',
      component: [{ expression: 'x' }],
    }),
    'search-of-composite-without-components': search({ type: 'composite' }),
    'search-derived-without-base': search({
      derivedFrom: 'http://hl7.org/fhir/SearchParameter/none',
    }),
    'operation-sound': operation(),
    'operation-of-name-in-words': operation({ name: 'my press' }),
    'operation-of-code-with-space': operation({ code: 'a b' }),
    'operation-of-unknown-kind': operation({ kind: 'banana' }),
    'operation-without-system': operation({ system: undefined }),
    'operation-of-unknown-resource': operation({ resource: ['Banana'] }),
    'operation-parameter-without-type-and-part': parameter({ type: undefined }),
    'operation-parameter-of-type-and-part': parameter({
      part: [{ name: 'p', use: 'in', min: 0, max: '1', type: 'string' }],
    }),
    'operation-parameter-of-unknown-type': parameter({ type: 'Banana' }),
    'operation-parameter-without-max': parameter({ max: undefined }),
    'operation-parameter-of-max-in-words': parameter({ max: 'many' }),
    'operation-parameter-of-unknown-use': parameter({ use: 'both' }),
    'operation-parameter-of-searchType': parameter({ searchType: 'string' }),
    'operation-parameter-of-target': parameter({
      targetProfile: ['http://hl7.org/fhir/StructureDefinition/Patient'],
    }),
    'operation-parameter-of-name-with-space': parameter({ name: 'a b' }),
    'operation-parameter-of-binding-without-set': parameter({ binding: { strength: 'required' } }),
    'server-sound': server(),
    'server-of-kind-instance': server({ kind: 'instance' }),
    'server-without-rest': server({ rest: undefined }),
    'server-of-unknown-kind': server({ kind: 'banana' }),
    'server-of-unknown-fhirVersion': server({ fhirVersion: '9.0' }),
    'server-of-unknown-format': server({ format: ['banana'] }),
    'server-without-format': server({ format: undefined }),
    'server-of-two-rests': server({ rest: [{ mode: 'server' }, { mode: 'server' }] }),
    'server-of-resource-twice': server({
      rest: [{ mode: 'server', resource: [{ type: 'Patient' }, { type: 'Patient' }] }],
    }),
    'server-of-parameter-twice': rest({
      searchParam: [
        { name: 'a', type: 'string' },
        { name: 'a', type: 'string' },
      ],
    }),
    'server-of-unknown-type': rest({ type: 'Banana' }),
    'server-of-unknown-interaction': rest({ interaction: [{ code: 'banana' }] }),
    'server-of-operation-without-definition': rest({ operation: [{ name: 'x' }] }),
    'server-of-two-documents': server({
      document: [
        { mode: 'producer', profile: `${base}/p` },
        { mode: 'producer', profile: `${base}/p` },
      ],
    }),
    'server-of-messaging-without-content': server({ messaging: [{}] }),
    'report-of-counts': { ...measure, group: [{ population: [{ count: -1 }] }] },
    'report-of-measure-in-words': { ...measure, measure: 'our measure' },
    'report-without-period': { ...measure, period: undefined },
    'report-of-data-with-groups': {
      ...measure,
      type: r5 ? 'data-exchange' : 'data-collection',
      group: [{ population: [{ count: 1 }] }],
    },
    'report-of-strata': {
      ...measure,
      group: [
        {
          stratifier: [
            {
              stratum: [
                {
                  value: { text: 'x' },
                  component: [{ code: { text: 'x' }, value: { text: 'x' } }],
                },
              ],
            },
          ],
        },
      ],
    },
    'parameters-of-value-and-resource': {
      resourceType: 'Parameters',
      parameter: [{ name: 'a', valueString: 'x', resource: { resourceType: 'Patient' } }],
    },
    'parameters-of-nothing': { resourceType: 'Parameters', parameter: [{ name: 'a' }] },
    'parameters-of-two-values': {
      resourceType: 'Parameters',
      parameter: [{ name: 'a', valueString: 'x', valueCode: 'x' }],
    },
    'parameters-without-name': { resourceType: 'Parameters', parameter: [{ valueString: 'x' }] },
    'parameters-of-parts': {
      resourceType: 'Parameters',
      parameter: [{ name: 'a', part: [{ name: 'b', valueString: 'x' }] }],
    },
    'parameters-of-broken-resource': {
      resourceType: 'Parameters',
      parameter: [{ name: 'a', resource: { resourceType: 'Patient', gender: 'banana' } }],
    },
    'graph-sound': head(
      'GraphDefinition',
      r5 ? { start: 'a', node: [{ nodeId: 'a', type: 'Patient' }] } : { start: 'Patient' },
    ),
    'outcome-of-unknown-code': {
      resourceType: 'OperationOutcome',
      issue: [{ severity: 'error', code: 'banana' }],
    },
    'outcome-of-no-issues': { resourceType: 'OperationOutcome', issue: [] },
    'outcome-of-expression': {
      resourceType: 'OperationOutcome',
      issue: [{ severity: 'error', code: 'invalid', expression: ['Patient.('] }],
    },
    'binary-without-type': { resourceType: 'Binary', data: 'QUJD' },
    'binary-of-unknown-type': { resourceType: 'Binary', contentType: 'banana', data: 'QUJD' },
    'binary-not-base64': { resourceType: 'Binary', contentType: 'text/plain', data: '*' },
  };
}
