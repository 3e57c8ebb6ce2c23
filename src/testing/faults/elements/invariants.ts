import { dataFaults, type Fault, type JsonObject } from '../fault.ts';
import {
  adding,
  all,
  answering,
  every,
  having,
  inOne,
  items,
  lacking,
  resources,
  setting,
  typeHaving,
} from '../place.ts';
import { invariant } from '../rules.ts';

const contained: JsonObject = { resourceType: 'Practitioner', id: 'within' };
const named: JsonObject = { ...contained, name: [{ text: 'B. Marl' }] };

/** Faults against published invariants that have no file of their own. */
export const invariantFaults: readonly Fault[] = dataFaults('invariant', [
  {
    id: 'value-and-absent-reason',
    title: 'an observation has a value and a reason why it has none',
    rule: invariant('obs-6', 'Observation'),
    code: 'invariant',
    plant: setting(
      (bundle) => resources(bundle, 'Observation').filter(({ object }) => hasValue(object)),
      'dataAbsentReason',
      { text: 'not known' },
    ),
  },
  {
    id: 'component-repeats-code',
    title: 'a component has the code of the observation, which has a value',
    rule: invariant('obs-7', 'Observation'),
    code: 'invariant',
    plant: (bundle, random) =>
      inOne(
        resources(bundle, 'Observation').filter(
          ({ object }) => hasValue(object) && items(object['code'], []).length > 0,
        ),
        random,
        (object) => {
          const before = Array.isArray(object['component']) ? object['component'] : [];
          object['component'] = [
            ...before,
            { code: structuredClone(object['code'] ?? null), valueString: 'left' },
          ];
          return ['component', before.length, 'code'];
        },
      ),
  },
  {
    id: 'body-site-and-structure',
    title: 'an observation has a body site and a body structure',
    rule: invariant('obs-8', 'Observation', 'R5'),
    code: 'invariant',
    versions: ['R5'],
    plant: setting(typeHaving('Observation', 'bodySite'), 'bodyStructure', {
      display: 'left cheek',
    }),
  },
  {
    id: 'request-site-and-structure',
    title: 'a service request has a body site and a body structure',
    rule: invariant('bdystr-1', 'ServiceRequest', 'R5'),
    code: 'invariant',
    versions: ['R5'],
    plant: (bundle, random) =>
      inOne(resources(bundle, 'ServiceRequest'), random, (object) => {
        object['bodySite'] = [{ text: 'left cheek' }];
        object['bodyStructure'] = { display: 'left cheek' };
        return ['bodyStructure'];
      }),
  },
  {
    id: 'request-detail-without-code',
    title: 'a service request has details of an order without code',
    rule: invariant('prr-1', 'ServiceRequest'),
    code: 'invariant',
    versions: ['R4', 'R4B'],
    plant: (bundle, random) =>
      inOne(having(resources(bundle, 'ServiceRequest'), 'code'), random, (object) => {
        delete object['code'];
        object['orderDetail'] = [{ text: 'both sides' }];
        return ['orderDetail'];
      }),
  },
  {
    id: 'contained-in-contained',
    title: 'a contained resource holds another',
    rule: invariant('dom-2', 'DomainResource'),
    code: 'structure',
    plant: containing({ ...named, contained: [{ ...named, id: 'deeper' }] }),
  },
  {
    id: 'contained-not-used',
    title: 'a contained resource that nothing refers to',
    rule: invariant('dom-3', 'DomainResource'),
    code: 'invariant',
    plant: adding(all('Observation'), 'contained', named),
  },
  {
    id: 'contained-with-version',
    title: 'a contained resource has a version of its own',
    rule: invariant('dom-4', 'DomainResource'),
    code: 'invariant',
    plant: containing({ ...named, meta: { versionId: '2' } }),
  },
  {
    id: 'contained-with-update-time',
    title: 'a contained resource has a time of update of its own',
    rule: invariant('dom-4', 'DomainResource'),
    code: 'invariant',
    plant: containing({ ...named, meta: { lastUpdated: '2031-04-17T10:20:00+02:00' } }),
  },
  {
    id: 'contained-with-security',
    title: 'a contained resource has a security label of its own',
    rule: invariant('dom-5', 'DomainResource'),
    code: 'invariant',
    plant: containing({
      ...named,
      meta: { security: [{ system: 'https://harbour-clinic.example/labels', code: 'staff' }] },
    }),
  },
  {
    id: 'no-narrative',
    title: 'a resource without narrative',
    rule: invariant('dom-6', 'DomainResource'),
    severity: 'warning',
    code: 'invariant',
    plant: (bundle, random) =>
      inOne(
        having(resources(bundle, 'Observation', 'DiagnosticReport'), 'text'),
        random,
        (object) => {
          delete object['text'];
          return [];
        },
      ),
  },
  {
    id: 'attachment-without-type',
    title: 'an attachment has data and does not say of what type',
    rule: invariant('att-1', 'Attachment'),
    code: 'invariant',
    plant: adding(all('DiagnosticReport'), 'presentedForm', { data: 'bW9sZQ==' }),
  },
  {
    id: 'telecom-without-system',
    title: 'a telephone number that does not say what it is',
    rule: invariant('cpt-2', 'ContactPoint'),
    code: 'invariant',
    plant: adding(all('Patient', 'Practitioner'), 'telecom', { value: '555 0100' }),
  },
  {
    id: 'organization-of-nothing',
    title: 'an organization without name and identifier',
    rule: invariant('org-1', 'Organization'),
    code: 'invariant',
    plant: (bundle, random) =>
      inOne(resources(bundle, 'Organization'), random, (object) => {
        delete object['name'];
        delete object['identifier'];
        object['active'] = true;
        return [];
      }),
  },
  {
    id: 'organization-at-home',
    title: 'an organization has a home address',
    rule: invariant('org-2', 'Organization'),
    code: 'invariant',
    versions: ['R4', 'R4B'],
    plant: adding(all('Organization'), 'address', { use: 'home', text: 'Quay 7' }),
  },
  {
    id: 'organization-with-home-telephone',
    title: 'an organization has a home telephone',
    rule: invariant('org-3', 'Organization'),
    code: 'invariant',
    versions: ['R4', 'R4B'],
    plant: adding(all('Organization'), 'telecom', {
      system: 'phone',
      value: '555 0100',
      use: 'home',
    }),
  },
  {
    id: 'contact-of-nobody',
    title: 'a contact of a patient without name, telephone, address and organization',
    rule: invariant('pat-1', 'Patient'),
    code: 'invariant',
    plant: adding(all('Patient'), 'contact', { gender: 'female' }),
  },
  {
    id: 'reference-of-nothing',
    title: 'a reference says nothing but a type',
    rule: invariant('ref-2', 'Reference', 'R5'),
    code: 'invariant',
    versions: ['R5'],
    plant: setting(all('Observation'), 'specimen', { type: 'Specimen' }),
  },
  {
    id: 'section-of-nothing',
    title: 'a section without text, entries and sections',
    rule: invariant('cmp-1', 'Composition'),
    code: 'invariant',
    plant: adding(all('Composition'), 'section', { title: 'Neck' }),
  },
  {
    id: 'section-empty-and-full',
    title: 'a section has entries and a reason why it has none',
    rule: invariant('cmp-2', 'Composition'),
    code: 'invariant',
    plant: setting((bundle) => having(every('section')(bundle), 'entry'), 'emptyReason', {
      text: 'nothing was asked',
    }),
  },
  {
    id: 'agent-for-itself',
    title: 'an agent acts on behalf of itself',
    rule: invariant('prov-1', 'Provenance', 'R5'),
    code: 'invariant',
    versions: ['R5'],
    plant: setting(every('agent'), 'onBehalfOf', (_, { who }) => structuredClone(who ?? null)),
  },
  {
    id: 'timing-without-unit',
    title: 'a duration in a timing without its unit',
    rule: ['tim-1', 'https://hl7.org/fhir/R4/datatypes.html#Timing'],
    code: 'invariant',
    plant: (bundle, random) =>
      inOne(resources(bundle, 'ServiceRequest'), random, (object) => {
        delete object['occurrenceDateTime'];
        object['occurrenceTiming'] = { repeat: { duration: 2 } };
        return ['occurrenceTiming', 'repeat'];
      }),
  },
  {
    id: 'timing-with-offset-alone',
    title: 'a timing with an offset from nothing',
    rule: ['tim-9', 'https://hl7.org/fhir/R4/datatypes.html#Timing'],
    code: 'invariant',
    plant: (bundle, random) =>
      inOne(resources(bundle, 'ServiceRequest'), random, (object) => {
        delete object['occurrenceDateTime'];
        object['occurrenceTiming'] = { repeat: { offset: 30 } };
        return ['occurrenceTiming', 'repeat'];
      }),
  },
  {
    id: 'sampled-data-without-interval',
    title: 'sampled data with neither interval nor offsets',
    rule: ['sdd-1', 'https://hl7.org/fhir/R5/datatypes.html#SampledData'],
    code: 'invariant',
    versions: ['R5'],
    plant: answering({
      valueSampledData: { origin: { value: 0 }, intervalUnit: 'ms', dimensions: 1, data: '1 2 3' },
    }),
  },
]);

function hasValue(object: JsonObject): boolean {
  return Object.keys(object).some((property) => /^value[A-Z]/.test(property));
}

/** Puts a resource inside an observation, and refers to it, so that only its own fault is one. */
function containing(resource: JsonObject) {
  return (...[bundle, random]: Parameters<ReturnType<typeof setting>>) =>
    inOne(lacking(resources(bundle, 'Observation'), 'contained'), random, (object) => {
      object['contained'] = [structuredClone(resource)];
      object['performer'] = [{ reference: '#within' }];
      return ['contained', 0];
    });
}
