import { fhirVersionNumber } from '../../../../src/fhir/version.ts';
import type { FhirRelease } from '../../corpus.ts';
import type { Json } from '../places.ts';

const base = 'http://vineyard.example/fhir';
const status = 'http://hl7.org/fhir/resource-status';
const events = 'http://hl7.org/fhir/event-status';
/** Takes three of the eight codes of event-status in each version. */
const someEvents = 'http://hl7.org/fhir/ValueSet/immunization-status';
const own = `${base}/CodeSystem/x2`;

/** Maps whose codes stand outside what they map between, and extensions outside their versions, by name. */
export function scopeCases(version: FhirRelease): Record<string, Json> {
  const r5 = version === 'R5';
  const [from, to] = r5
    ? ['sourceScopeCanonical', 'targetScopeCanonical']
    : ['sourceCanonical', 'targetCanonical'];
  const relation = r5 ? { relationship: 'equivalent' } : { equivalence: 'equivalent' };
  const map = (source: string, code: string, target: string, to: string, more: Json): Json => ({
    resourceType: 'ConceptMap',
    id: 'x1',
    url: `${base}/ConceptMap/x1`,
    version: '1',
    name: 'Vines',
    title: 'Vines',
    status: 'active',
    experimental: false,
    description: 'Vines',
    ...more,
    group: [{ source, target, element: [{ code, target: [{ code: to, ...relation }] }] }],
  });
  const into = (code: string, more: Json = {}): Json => map(own, 'a', status, code, more);
  const outOf = (code: string, more: Json): Json => map(events, code, own, 'a', more);
  const intoEvents = (code: string, more: Json): Json => map(own, 'a', events, code, more);
  const extended = (url: string, value: Json, resource: Json): Json => ({
    id: 'x1',
    ...resource,
    extension: [{ url: `http://hl7.org/fhir/StructureDefinition/${url}`, ...value }],
  });
  const patient = { reference: 'Patient/1' };
  const concept = { text: 'Vines' };
  const parameter = { name: 'a', use: 'in', min: 0, max: '1', type: r5 ? 'DataType' : 'Element' };
  const operation = (more: Json): Json => ({
    resourceType: 'OperationDefinition',
    id: 'x1',
    url: `${base}/OperationDefinition/x1`,
    name: 'Vines',
    status: 'active',
    kind: 'operation',
    code: 'vines',
    system: true,
    type: false,
    instance: false,
    parameter: [{ ...parameter, ...more }],
  });
  const valueSet = {
    resourceType: 'ValueSet',
    url: `${base}/ValueSet/x1`,
    name: 'Vines',
    status: 'active',
    compose: { include: [{ system: events }] },
  };
  const comment = { url: 'http://hl7.org/fhir/StructureDefinition/codesystem-concept-comments' };
  return {
    'map-of-held-target': into('draft'),
    'map-of-target-outside-its-system': into('not-done'),
    'map-of-source-in-its-set': outOf('completed', { [from]: someEvents }),
    'map-of-source-outside-its-set': outOf('on-hold', { [from]: someEvents }),
    'map-of-source-outside-its-versioned-set': outOf('on-hold', {
      [from]: `${someEvents}|${fhirVersionNumber[version]}`,
    }),
    'map-of-target-in-its-set': intoEvents('completed', { [to]: someEvents }),
    'map-of-target-outside-its-set': intoEvents('on-hold', { [to]: someEvents }),
    'map-of-other-system-than-its-set': into('draft', { [to]: someEvents }),
    'map-of-source-in-unknown-set': outOf('on-hold', { [from]: `${base}/ValueSet/none` }),
    'map-of-own-source-and-set-of-another': map(own, 'a', events, 'completed', {
      [from]: someEvents,
    }),
    'extension-ended-on-parameter': operation({
      extension: [
        {
          url: 'http://hl7.org/fhir/StructureDefinition/operationdefinition-allowed-type',
          valueUri: 'code',
        },
      ],
    }),
    'extension-ended-on-task': extended(
      'task-candidateList',
      { valueReference: { reference: 'Practitioner/1' } },
      { resourceType: 'Task', status: 'draft', intent: 'plan' },
    ),
    'extension-ended-on-procedure': extended(
      'procedure-schedule',
      { valueTiming: { event: ['2026-03-04'] } },
      { resourceType: 'Procedure', status: 'completed', code: concept, subject: patient },
    ),
    'extension-until-now-on-goal': extended(
      'goal-acceptance',
      {
        extension: [
          { url: 'individual', valueReference: patient },
          { url: 'status', valueCode: 'agree' },
        ],
      },
      { resourceType: 'Goal', lifecycleStatus: 'active', description: concept, subject: patient },
    ),
    'extension-place-ended-on-value-set': extended(
      'resource-effectivePeriod',
      { valuePeriod: { start: '2026-03-04' } },
      valueSet,
    ),
    'extension-place-ended-on-concept': {
      resourceType: 'CodeSystem',
      id: 'x1',
      url: `${base}/CodeSystem/x1`,
      name: 'Vines',
      status: 'active',
      caseSensitive: true,
      content: 'complete',
      concept: [{ code: 'a', extension: [{ ...comment, valueString: 'x' }] }],
    },
    'extension-place-of-later-version': extended(
      'artifact-title',
      { valueString: 'x' },
      { resourceType: 'Basic', code: concept },
    ),
  };
}
