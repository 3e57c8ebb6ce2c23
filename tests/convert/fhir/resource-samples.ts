import type { ConvertResult } from '../../../src/convert/fhir/index.ts';
import type { FhirMapping } from '../../../src/convert/mapping/fhir-mapping.ts';

/** Resources of another system, invented: harbour workers, each statement with the name of its person in it. */
export interface Resource {
  readonly resourceType: string;
  readonly id: string;
  readonly [element: string]: unknown;
}

export const resourceMapping: FhirMapping = {
  format: 'face-neck-mapping/1',
  source: { syntax: 'fhir', form: 'resources' },
  exam: {
    prefix: 'harbour',
    status: 'final',
    protocol: { id: 'full', version: '1.0.0' },
    recorded: '2024-03-02T09:00:00Z',
    examiner: { reference: 'Practitioner/7' },
  },
};

export function patient(person: string): Resource {
  return { resourceType: 'Patient', id: person, name: [{ text: person }] };
}

export function observation(person: string, id: string, more: object = {}): Resource {
  return {
    resourceType: 'Observation',
    id,
    status: 'final',
    subject: { reference: `Patient/${person}` },
    code: { text: 'Weather' },
    valueString: `dry for ${person}`,
    effectiveDateTime: '2024-03-01',
    ...more,
  };
}

export function report(
  person: string,
  id: string,
  results: readonly string[],
  more: object = {},
): Resource {
  return {
    resourceType: 'DiagnosticReport',
    id,
    status: 'final',
    code: { text: 'Harbour check' },
    subject: { reference: `Patient/${person}` },
    effectiveDateTime: '2024-03-01',
    result: results.map((result) => ({ reference: `Observation/${result}` })),
    ...more,
  };
}

/** A person with reports of two observations each, and observations that no report leads to. */
export function record(person: string, reports: number, loose: number): readonly Resource[] {
  const made: Resource[] = [patient(person)];
  for (let at = 0; at < reports; at += 1) {
    const ids = [`${person}-${at}-a`, `${person}-${at}-b`];
    made.push(report(person, `${person}-${at}`, ids));
    made.push(...ids.map((id) => observation(person, id)));
  }
  for (let at = 0; at < loose; at += 1) {
    made.push(
      observation(person, `${person}-loose-${at}`, { effectiveDateTime: `2024-02-1${at}` }),
    );
  }
  return made;
}

export function linesOf(resources: readonly object[]): string {
  return resources.map((resource) => `${JSON.stringify(resource)}\n`).join('');
}

export function bundleOf(resources: readonly object[]): string {
  const entry = resources.map((resource) => ({ resource }));
  return JSON.stringify({ resourceType: 'Bundle', id: 'b1', type: 'collection', entry });
}

/** Resources of three persons: with no, one and two reports, and results of two days without one. */
export const persons = ['anna', 'bert', 'cleo'] as const;
export const all = persons.flatMap((person, at) => record(person, at, 2));

/** Of each exam its id, its person, and whom its statements name. */
export function told({ exams }: ConvertResult): readonly (readonly [string, unknown, unknown])[] {
  return exams
    .map(({ exam }) => {
      const named = exam.statements.map((one) => (one.kind === 'note' ? one.text : one.kind));
      return [exam.id, exam.subject.name?.text, named] as const;
    })
    .sort(([a], [b]) => (a < b ? -1 : 1));
}
