import { type DataFault, dataFaults, type Fault, type JsonObject } from '../fault.ts';
import { adding, all, every, noting, type Place, requests, setting, without } from '../place.ts';
import { cardinality } from '../rules.ts';

/** Faults of number: what must be there is not, or there is more of it than can be. */
export const cardinalityFaults: readonly Fault[] = dataFaults('cardinality', [
  missing('Observation', 'status'),
  missing('Observation', 'code'),
  missing('DiagnosticReport', 'status'),
  missing('DiagnosticReport', 'code'),
  missing('Composition', 'status'),
  missing('Composition', 'type'),
  missing('Composition', 'date'),
  missing('Composition', 'author'),
  missing('Composition', 'title'),
  missing('Provenance', 'target'),
  { ...missing('Provenance', 'recorded'), versions: ['R4', 'R4B'] },
  missing('Provenance', 'agent'),
  missing('ServiceRequest', 'status'),
  missing('ServiceRequest', 'intent'),
  missing('ServiceRequest', 'subject'),
  missing('Encounter', 'status'),
  { ...missing('Encounter', 'class'), versions: ['R4', 'R4B'] },
  { ...missing('Media', 'status'), versions: ['R4', 'R4B'] },
  { ...missing('Media', 'content'), versions: ['R4', 'R4B'] },
  { ...missing('DocumentReference', 'status'), versions: ['R5'] },
  { ...missing('DocumentReference', 'content'), versions: ['R5'] },
  {
    ...missingPart('Observation.component.code', every('component'), 'code'),
    title: 'a component without code',
  },
  {
    ...missingPart('Provenance.agent.who', every('agent'), 'who'),
    title: 'an agent of a provenance who is nobody',
  },
  {
    ...missingPart('Provenance.entity.what', every('entity'), 'what'),
    title: 'an entity of a provenance that is nothing',
  },
  {
    id: 'no-diagnostic-report-media-link',
    title: 'a picture of a report without link',
    rule: cardinality('DiagnosticReport.media.link'),
    code: 'required',
    plant: adding(all('DiagnosticReport'), 'media', { comment: 'the left cheek' }, 'link'),
  },
  {
    ...missingPart('Narrative.status', every('text'), 'status'),
    title: 'a narrative without status',
  },
  { ...missingPart('Narrative.div', every('text'), 'div'), title: 'a narrative without text' },
  {
    ...missingPart('Extension.url', every('extension'), 'url'),
    title: 'an extension without url',
  },
  {
    ...missingPart('Bundle.type', (bundle) => [{ object: bundle, path: [] }], 'type'),
    title: 'a bundle without type',
  },
  {
    ...missingPart('Bundle.entry.request.method', requests, 'method'),
    title: 'a request without method',
  },
  {
    ...missingPart('Bundle.entry.request.url', requests, 'url'),
    title: 'a request without url',
  },
  {
    id: 'no-annotation-text',
    title: 'a note without text',
    rule: cardinality('Annotation.text'),
    code: 'required',
    plant: noting({ time: '2031-04-17' }),
  },
  {
    id: 'no-communication-language',
    title: 'a language that a patient speaks, without the language',
    rule: cardinality('Patient.communication.language'),
    code: 'required',
    plant: setting(all('Patient'), 'communication', [{ preferred: true }]),
  },
  {
    id: 'no-link-other',
    title: 'a link of a patient to nobody',
    rule: cardinality('Patient.link.other'),
    code: 'required',
    plant: setting(all('Patient'), 'link', [{ type: 'seealso' }]),
  },
  {
    id: 'no-qualification-code',
    title: 'a qualification that is not named',
    rule: cardinality('Practitioner.qualification.code'),
    code: 'required',
    plant: setting(all('Practitioner'), 'qualification', [{ period: { start: '2020' } }]),
  },
]);

function missing(type: string, property: string): DataFault {
  return missingPart(`${type}.${property}`, all(type), property);
}

function missingPart(
  path: string,
  find: (bundle: JsonObject) => Place[],
  property: string,
): DataFault {
  const [type = '', ...steps] = path.split('.');
  const name = [type, ...steps].join('-');
  return {
    id: `no-${name.replace(/[A-Z]/g, (letter, at) => `${at ? '-' : ''}${letter.toLowerCase()}`)}`.replaceAll(
      '--',
      '-',
    ),
    title: `${type} without ${steps.join('.')}`,
    rule: cardinality(path),
    code: 'required',
    plant: without(find, property),
  };
}
