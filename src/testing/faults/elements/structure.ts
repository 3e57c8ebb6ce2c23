import { dataFaults, type Fault } from '../fault.ts';
import {
  all,
  entries,
  every,
  having,
  inOne,
  lacking,
  resources,
  setting,
  typeHaving,
  without,
} from '../place.ts';
import { jsonForm, section } from '../rules.ts';

const elementRule = section('ele-1', 'element.html');

/** Faults of the shape: what stands where, as what JSON type, under what name. */
export const structureFaults: readonly Fault[] = dataFaults('structure', [
  {
    id: 'unknown-property',
    title: 'a resource has a property that FHIR does not define',
    rule: jsonForm,
    code: 'structure',
    plant: setting(all(), 'bodySide', 'left'),
  },
  {
    id: 'unknown-property-of-data-type',
    title: 'a coding has a property that FHIR does not define',
    rule: jsonForm,
    code: 'structure',
    plant: setting(every('coding'), 'label', 'left'),
  },
  {
    id: 'unknown-property-of-backbone',
    title: 'a component has a property that only the observation has',
    rule: jsonForm,
    code: 'structure',
    plant: setting(every('component'), 'status', 'final'),
  },
  {
    id: 'unknown-property-of-entry',
    title: 'an entry of the bundle has a property that FHIR does not define',
    rule: jsonForm,
    code: 'structure',
    plant: setting(entries, 'note', 'sent twice'),
  },
  {
    id: 'property-in-capitals',
    title: 'a property is written with a capital letter',
    rule: jsonForm,
    code: 'structure',
    plant: (bundle, random) =>
      inOne(having(resources(bundle, 'Observation'), 'issued'), random, (object) => {
        object['Issued'] = object['issued'] ?? null;
        delete object['issued'];
        return ['Issued'];
      }),
  },
  {
    id: 'property-of-r5',
    title: 'an R4 observation has an element that came with R5',
    rule: section('Observation', 'observation.html#resource'),
    code: 'structure',
    versions: ['R4', 'R4B'],
    plant: setting(all('Observation'), 'triggeredBy', [
      { observation: { display: 'an earlier one' }, type: 'reflex' },
    ]),
  },
  {
    id: 'property-of-r4',
    title: 'an R5 service request has an element that R5 has no more',
    rule: ['ServiceRequest', 'https://hl7.org/fhir/R5/servicerequest.html#resource'],
    code: 'structure',
    versions: ['R5'],
    plant: setting(all('ServiceRequest'), 'reasonCode', [{ text: 'a mole that grew' }]),
  },
  {
    id: 'unknown-resource-type',
    title: 'a resource is of a type that FHIR does not define',
    rule: section('resource types', 'resourcelist.html'),
    code: 'structure',
    plant: setting(all('Observation'), 'resourceType', 'Observations'),
  },
  {
    id: 'no-resource-type',
    title: 'a resource does not say its type',
    rule: jsonForm,
    code: 'structure',
    plant: without(all(), 'resourceType'),
  },
  {
    id: 'list-for-resource',
    title: 'the resource of an entry is a list',
    rule: jsonForm,
    code: 'structure',
    plant: (bundle, random) =>
      inOne(resources(bundle, 'Observation'), random, (_, { path }) => {
        const at = path[1];
        const { entry } = bundle;
        const holder = Array.isArray(entry) && typeof at === 'number' ? entry[at] : undefined;
        if (typeof holder !== 'object' || holder === null || Array.isArray(holder))
          return undefined;
        holder['resource'] = [holder['resource'] ?? null];
        return [];
      }),
  },
  {
    id: 'object-for-code',
    title: 'an object stands where a code must',
    rule: jsonForm,
    code: 'structure',
    plant: setting(all('Observation'), 'status', { value: 'final' }),
  },
  {
    id: 'list-for-code',
    title: 'a list stands where one code must',
    rule: jsonForm,
    code: 'structure',
    plant: setting(all('Observation'), 'status', ['final']),
  },
  {
    id: 'object-for-list',
    title: 'one object stands where a list of them must',
    rule: jsonForm,
    code: 'structure',
    plant: setting(typeHaving('Observation', 'category'), 'category', (before) =>
      Array.isArray(before) ? (before[0] ?? null) : null,
    ),
  },
  {
    id: 'list-for-object',
    title: 'a list stands where one object must',
    rule: jsonForm,
    code: 'structure',
    plant: setting(all('Observation'), 'code', (before) => [before ?? null]),
  },
  {
    id: 'text-for-object',
    title: 'a reference is written as text',
    rule: jsonForm,
    code: 'structure',
    plant: setting(all('Observation'), 'subject', 'Patient/1'),
  },
  {
    id: 'text-for-concept',
    title: 'a concept is written as text',
    rule: jsonForm,
    code: 'structure',
    plant: setting(all('Observation', 'DiagnosticReport'), 'code', 'mole'),
  },
  {
    id: 'text-for-number',
    title: 'a decimal is written as text',
    rule: jsonForm,
    code: 'structure',
    plant: setting(every('valueQuantity'), 'value', (before) => String(before)),
  },
  {
    id: 'text-for-boolean',
    title: 'a truth value is written as text',
    rule: jsonForm,
    code: 'structure',
    plant: setting(all('Patient'), 'active', 'true'),
  },
  {
    id: 'number-for-text',
    title: 'a text is written as a number',
    rule: jsonForm,
    code: 'structure',
    plant: setting(every('coding'), 'code', 12738006),
  },
  {
    id: 'number-for-boolean',
    title: 'a truth value is written as a number',
    rule: jsonForm,
    code: 'structure',
    plant: setting(all('Patient'), 'active', 1),
  },
  {
    id: 'boolean-for-text',
    title: 'a text is written as a truth value',
    rule: jsonForm,
    code: 'structure',
    plant: setting(every('identifier'), 'value', true),
  },
  {
    id: 'null-for-element',
    title: 'an element is null',
    rule: jsonForm,
    code: 'structure',
    plant: setting((bundle) => lacking(resources(bundle, 'Observation'), 'note'), 'note', null),
  },
  {
    id: 'null-for-primitive',
    title: 'a text is null',
    rule: jsonForm,
    code: 'structure',
    plant: setting(every('coding'), 'display', null),
  },
  {
    id: 'null-in-list',
    title: 'a list holds a null',
    rule: jsonForm,
    code: 'structure',
    plant: setting(typeHaving('Observation', 'category'), 'category', (before) =>
      Array.isArray(before) ? [...before, null] : [null],
    ),
  },
  {
    id: 'empty-list',
    title: 'a list is empty',
    rule: jsonForm,
    code: 'structure',
    plant: setting((bundle) => lacking(resources(bundle, 'Observation'), 'note'), 'note', []),
  },
  {
    id: 'empty-object',
    title: 'an element is an empty object',
    rule: elementRule,
    code: 'invariant',
    plant: setting((bundle) => lacking(resources(bundle, 'Observation'), 'method'), 'method', {}),
  },
  {
    id: 'empty-object-in-list',
    title: 'a list holds an empty object',
    rule: elementRule,
    code: 'invariant',
    plant: setting(typeHaving('Observation', 'category'), 'category', (before) =>
      Array.isArray(before) ? [...before, {}] : [{}],
    ),
  },
  {
    id: 'only-an-id',
    title: 'an element has an id and nothing else',
    rule: elementRule,
    code: 'invariant',
    plant: setting((bundle) => lacking(resources(bundle, 'Observation'), 'method'), 'method', {
      id: 'm1',
    }),
  },
  {
    id: 'two-values',
    title: 'an observation has two values of different types',
    rule: section('value[x]', 'formats.html#choice'),
    code: 'structure',
    plant: setting(typeHaving('Observation', 'valueCodeableConcept'), 'valueString', 'left'),
  },
  {
    id: 'two-times',
    title: 'an observation has a moment and a period',
    rule: section('effective[x]', 'formats.html#choice'),
    code: 'structure',
    plant: setting(typeHaving('Observation', 'effectivePeriod'), 'effectiveDateTime', '2031-04-17'),
  },
  {
    id: 'value-of-wrong-type',
    title: 'an observation has a value of a type that it does not take',
    rule: section('Observation.value[x]', 'observation-definitions.html#Observation.value_x_'),
    code: 'structure',
    plant: setting(
      (bundle) => lacking(resources(bundle, 'Observation'), ...answers),
      'valueUri',
      'https://harbour-clinic.example/values/1',
    ),
  },
  {
    id: 'value-of-unknown-type',
    title: 'a value names a type that FHIR does not define',
    rule: section('Observation.value[x]', 'observation-definitions.html#Observation.value_x_'),
    code: 'structure',
    plant: setting(
      (bundle) => lacking(resources(bundle, 'Observation'), ...answers),
      'valueText',
      'left',
    ),
  },
  {
    id: 'extra-of-unknown-primitive',
    title: 'an extension is given for a text that the element does not define',
    rule: section('json', 'json.html#primitive'),
    code: 'structure',
    plant: setting(all('Observation'), '_bodySide', {
      extension: [
        {
          url: 'http://hl7.org/fhir/StructureDefinition/data-absent-reason',
          valueCode: 'unknown',
        },
      ],
    }),
  },
  {
    id: 'extra-of-object',
    title: 'an element that is no primitive is given the form that only primitives have',
    rule: section('json', 'json.html#primitive'),
    code: 'structure',
    plant: setting(all('Observation'), '_code', { id: 'c1' }),
  },
]);

const answers = [
  'valueCodeableConcept',
  'valueQuantity',
  'valueString',
  'valueInteger',
  'valueBoolean',
  'valueDateTime',
  'dataAbsentReason',
] as const;
