import { type DataFault, dataFaults, type Fault, type JsonObject } from './fault.ts';
import { all, every, having, inOne, isObject, type Place, resources, setting } from './place.ts';
import { invariant, primitive, section } from './rules.ts';

/** References SHALL be to an actual resource, and SHALL be resolvable. */
const resolvable = section('Reference', 'references-definitions.html#Reference');
const nowhere = 'urn:uuid:0c1e2f3a-4b5c-4d6e-8f70-8192a3b4c5d6';

/** Faults of references between resources. */
export const referenceFaults: readonly Fault[] = dataFaults('reference', [
  {
    id: 'reference-to-nothing',
    title: 'a reference by UUID to a resource that is not in the bundle',
    rule: resolvable,
    code: 'not-found',
    plant: setting(every('subject', 'performer', 'hasMember', 'result'), 'reference', nowhere),
  },
  {
    id: 'focus-to-nothing',
    title: 'an element that takes any resource refers by UUID to none in the bundle',
    rule: resolvable,
    code: 'not-found',
    plant: setting(all('Observation'), 'focus', [{ reference: nowhere }]),
  },
  {
    id: 'reference-to-missing-contained',
    title: 'a reference to a contained resource that is not there',
    rule: invariant('ref-1', 'Reference'),
    code: 'invariant',
    plant: setting(every('performer'), 'reference', '#nobody'),
  },
  {
    id: 'reference-to-contained-of-other',
    title: 'a reference to a resource that another resource contains',
    rule: invariant('ref-1', 'Reference'),
    code: 'invariant',
    plant: (bundle, random) => {
      const [holder, reader] = random.shuffled(resources(bundle, 'Observation'));
      if (holder === undefined || reader === undefined) return undefined;
      holder.object['contained'] = [
        { resourceType: 'Practitioner', id: 'within', name: [{ text: 'B. Marl' }] },
      ];
      holder.object['performer'] = [{ reference: '#within' }];
      reader.object['performer'] = [{ reference: '#within' }];
      return [...reader.path, 'performer', 0, 'reference'];
    },
  },
  toOtherType('subject-of-wrong-type', 'the subject of an observation is an observation', {
    from: 'Observation',
    property: 'subject',
    to: 'Observation',
  }),
  toOtherType('performer-of-wrong-type', 'the performer of an observation is a device', {
    from: 'Observation',
    property: 'performer',
    to: 'Device',
  }),
  toOtherType('encounter-of-wrong-type', 'the encounter of an observation is a patient', {
    from: 'Observation',
    property: 'encounter',
    to: 'Patient',
  }),
  toOtherType('member-of-wrong-type', 'the member of a group is a patient', {
    from: 'Observation',
    property: 'hasMember',
    to: 'Patient',
  }),
  toOtherType('result-of-wrong-type', 'a result of a report is a patient', {
    from: 'DiagnosticReport',
    property: 'result',
    to: 'Patient',
  }),
  toOtherType('device-of-wrong-type', 'the device of an observation is a practitioner', {
    from: 'Observation',
    property: 'device',
    to: 'Practitioner',
  }),
  toOtherType('author-of-wrong-type', 'the author of a document is an observation', {
    from: 'Composition',
    property: 'author',
    to: 'Observation',
  }),
  {
    id: 'relative-reference-of-wrong-type',
    title: 'the subject of an observation is an encounter, by a relative reference',
    rule: section('Observation.subject', 'observation-definitions.html#Observation.subject'),
    code: 'structure',
    plant: setting(all('Observation'), 'subject', { reference: 'Encounter/1' }),
  },
  {
    id: 'reference-to-unknown-type',
    title: 'a relative reference to a type that FHIR does not define',
    rule: resolvable,
    code: 'structure',
    plant: setting(all('Observation'), 'subject', { reference: 'Patients/1' }),
  },
  {
    id: 'reference-type-disagrees',
    title: 'the type that a reference gives is not that of its target',
    rule: section('Reference.type', 'references-definitions.html#Reference.type'),
    code: 'structure',
    plant: (bundle, random) =>
      inOne(every('subject')(bundle), random, (object) => {
        object['type'] = 'Group';
        return ['type'];
      }),
  },
  {
    id: 'reference-type-unknown',
    title: 'the type that a reference gives is none',
    rule: section('Reference.type', 'references-definitions.html#Reference.type'),
    severity: 'warning',
    code: 'code-invalid',
    plant: (bundle, random) =>
      inOne(every('performer')(bundle), random, (object) => {
        delete object['reference'];
        object['type'] = 'Clinician';
        object['display'] = 'B. Marl';
        return ['type'];
      }),
  },
  {
    id: 'reference-empty',
    title: 'a reference is an empty text',
    rule: primitive('string'),
    code: 'value',
    plant: setting(every('performer'), 'reference', ''),
  },
  {
    id: 'reference-malformed-uuid',
    title: 'a reference by UUID that is none',
    rule: primitive('uuid'),
    code: 'value',
    plant: setting(every('subject'), 'reference', 'urn:uuid:patient-1'),
  },
  {
    id: 'group-in-itself',
    title: 'an observation is a member of itself',
    rule: section('Observation.hasMember', 'observation.html#obsgrouping'),
    severity: 'warning',
    code: 'business-rule',
    plant: (bundle, random) =>
      inOne(withUrl(bundle, 'Observation'), random, (object, { path }) => {
        object['hasMember'] = [{ reference: urlAt(bundle, path) ?? nowhere }];
        return ['hasMember', 0];
      }),
  },
  {
    id: 'groups-in-a-circle',
    title: 'two observations are members of each other',
    rule: section('Observation.hasMember', 'observation.html#obsgrouping'),
    severity: 'warning',
    code: 'business-rule',
    plant: (bundle, random) => {
      const [one, other] = random.shuffled(
        withUrl(bundle, 'Observation').filter(({ object }) => object['hasMember'] === undefined),
      );
      if (one === undefined || other === undefined) return undefined;
      one.object['hasMember'] = [{ reference: urlAt(bundle, other.path) ?? nowhere }];
      other.object['hasMember'] = [{ reference: urlAt(bundle, one.path) ?? nowhere }];
      return [...one.path, 'hasMember', 0];
    },
  },
  {
    id: 'reference-to-two-subjects',
    title: 'one reference where the element takes one is a list of two',
    rule: section('Observation.subject', 'observation-definitions.html#Observation.subject'),
    code: 'structure',
    plant: setting(all('Observation'), 'subject', (before) => [before ?? null, before ?? null]),
  },
]);

interface Wrong {
  readonly from: string;
  readonly property: string;
  readonly to: string;
}

/** Points a reference at a resource of the bundle whose type the element does not take. */
function toOtherType(id: string, title: string, { from, property, to }: Wrong): DataFault {
  return {
    id,
    title,
    rule: section(
      `${from}.${property}`,
      `${from.toLowerCase()}-definitions.html#${from}.${property}`,
    ),
    code: 'structure',
    plant: (bundle, random) => {
      const [target] = random.some(withUrl(bundle, to), 1);
      const reference = target && urlAt(bundle, target.path);
      if (reference === undefined) return undefined;
      return inOne(having(resources(bundle, from), property), random, (object) => {
        const list = Array.isArray(object[property]);
        object[property] = list ? [{ reference }] : { reference };
        return list ? [property, 0] : [property];
      });
    },
  };
}

function withUrl(bundle: JsonObject, type: string): Place[] {
  return resources(bundle, type).filter(({ path }) => urlAt(bundle, path) !== undefined);
}

/** The fullUrl of the entry that a path leads through. */
function urlAt({ entry }: JsonObject, [, at]: Place['path']): string | undefined {
  const holder = Array.isArray(entry) && typeof at === 'number' ? entry[at] : undefined;
  const url = isObject(holder) ? holder['fullUrl'] : undefined;
  return typeof url === 'string' ? url : undefined;
}
