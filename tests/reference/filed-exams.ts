import type { Resource } from 'fhir/r4.js';
import { isSame } from '../../src/data/plain-data.ts';
import { deliver } from '../../src/deliver/index.ts';
import { type Exam, fromBundle, fromJson, toBundleOrThrow } from '../../src/index.ts';
import { clinic } from '../clinic.ts';
import { entryAt, resourcesAt, send } from './exam-store.ts';
import { readAgain } from './read-again.ts';

/** What became of one exam on a server. */
export interface FiledExam {
  readonly exam: string;
  readonly entries: number;
  /** Most entries of one transaction. */
  readonly most: number;
  readonly result: string;
  /** Read back from the server it is the exam that was sent. */
  readonly equal: boolean;
  /** Patients with the identifier of the exam's. */
  readonly patients: number;
}

type Version = 'R4' | 'R5';

/** Sends an exam in transactions of at most so many entries, and reads it back from where it is kept. */
export async function fileExam(
  base: string,
  exam: Exam,
  { most, fhirVersion }: { readonly most: number; readonly fhirVersion: Version },
): Promise<FiledExam> {
  const bundle = toBundleOrThrow(exam, { ...clinic, bundleType: 'transaction', fhirVersion });
  const { value } = await deliver(bundle, { base, timeout: 600_000 }, { most });
  const kept = value?.state.places ?? {};
  // In the order of the bundle: pieces are sent in another, and a collection tells an order.
  const places = (bundle.entry ?? []).flatMap(({ fullUrl = '' }) => kept[fullUrl] ?? []);
  const held = await resourcesAt(base, places);
  const entry = places.map((place) => entryAt(base, held.get(place)));
  const read = fromBundle({ resourceType: 'Bundle', type: 'collection', entry }, clinic);
  const [identifier] = exam.subject.identifiers ?? [];
  return {
    exam: exam.id,
    entries: bundle.entry?.length ?? 0,
    most,
    result: value?.result ?? 'not sent',
    equal: isSame(read.value, exam),
    patients: identifier === undefined ? 0 : await patientsWith(base, identifier),
  };
}

async function patientsWith(
  base: string,
  { system, value }: { readonly system: string; readonly value: string },
): Promise<number> {
  const token = encodeURIComponent(`${system}|${value}`);
  const found = await readAt(base, `Patient?identifier=${token}&_summary=count`);
  return Number(found['total']);
}

/** What a server answers to a read or search that must not come from its cache. */
export async function readAt(base: string, path: string): Promise<Record<string, unknown>> {
  const text = await readAgain(`${base}/${path}`, { headers: { 'cache-control': 'no-cache' } });
  return fromJson(text).value as Record<string, unknown>; // an answer of the server under test
}

export const person = { system: 'https://clinic.example/patients', value: 'P-12990' };

/** A Patient of whom the exams know a part. */
const fuller = {
  resourceType: 'Patient',
  id: 'fuller',
  active: true,
  identifier: [person, { system: 'https://land.example/id', value: '88' }],
  name: [{ family: 'Picker', given: ['Ann', 'Maria'] }],
  telecom: [{ system: 'phone', value: '555 0100' }],
  birthDate: '2001-03-04',
  address: [{ city: 'Old Harbour' }],
} as const;

export async function storeFuller(base: string): Promise<Resource> {
  const request = { method: 'PUT', url: 'Patient/fuller' };
  const entry = [{ resource: fuller, request }];
  await send(base, { resourceType: 'Bundle', type: 'transaction', entry });
  return (await readAt(base, 'Patient/fuller')) as unknown as Resource; // just stored
}

/** Elements of the fuller Patient that are no longer as they were. */
export async function changedFields(base: string, before: Resource): Promise<string[]> {
  const now = await readAt(base, 'Patient/fuller');
  const names = new Set([...Object.keys(before), ...Object.keys(now)]);
  return [...names].filter(
    (name) => !isSame(now[name], (before as unknown as Record<string, unknown>)[name]), // looked at by name
  );
}
