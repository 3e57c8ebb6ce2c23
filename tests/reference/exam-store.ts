import type { Bundle, BundleEntry, Resource } from 'fhir/r4.js';
import { toR5 } from '../../src/fhir/to-r5.ts';
import { type Exam, fromJson, toBundleOrThrow, toJson } from '../../src/index.ts';
import { clinic } from '../clinic.ts';
import { recordsReferredTo } from './existing-records.ts';
import { readAgain } from './read-again.ts';
import { refusal } from './refusal.ts';

const json = { 'content-type': 'application/fhir+json', accept: 'application/fhir+json' };

/** Sends a bundle to the server; throws where it answers with anything but success. */
export async function send(url: string, bundle: object): Promise<Bundle> {
  const answer = await fetch(url, { method: 'POST', headers: json, body: toJson(bundle) });
  const text = await answer.text();
  if (!answer.ok) throw new Error(`the server answered ${answer.status}: ${refusal(text)}`);
  return fromJson(text).value as Bundle; // an answer of the server under test to a bundle
}

/** Exams in pieces whose bundles hold about `entries` resources together. */
export function* inBatches(exams: readonly Exam[], entries: number): Generator<Exam[]> {
  let batch: Exam[] = [];
  let size = 0;
  for (const exam of exams) {
    batch.push(exam);
    size += transactionOf(exam).entry?.length ?? 0;
    if (size < entries) continue;
    yield batch;
    batch = [];
    size = 0;
  }
  if (batch.length > 0) yield batch;
}

/** Records that the exams take for granted, such as the clinic, so that the server can resolve them. */
export async function storeExisting(
  url: string,
  exams: readonly Exam[],
  fhirVersion: 'R4' | 'R5' = 'R4',
): Promise<void> {
  const r4 = recordsReferredTo(exams.map((exam) => transactionOf(exam)));
  const records = fhirVersion === 'R5' ? r4.map(toR5) : r4;
  if (records.length === 0) return;
  await send(url, {
    resourceType: 'Bundle',
    type: 'transaction',
    entry: records.map((resource) => ({
      resource,
      request: { method: 'PUT', url: `${resource.resourceType}/${resource.id}` },
    })),
  });
}

/**
 * Stores the exams in one transaction and reads every resource of each back, from where the server
 * says that it is. People, places and devices that exams share stand in it once.
 */
export async function storeAndRead(
  url: string,
  exams: readonly Exam[],
): Promise<Bundle<Resource>[]> {
  const bundles = exams.map((exam) => transactionOf(exam));
  const sent = new Map(
    bundles.flatMap(({ entry = [] }) => entry.map((one) => [one.fullUrl ?? '', one] as const)),
  );
  const stored = await send(url, {
    resourceType: 'Bundle',
    type: 'transaction',
    entry: [...sent.values()],
  });
  const places = placesOf(stored);
  const at = new Map([...sent.keys()].map((name, index) => [name, places[index] ?? '']));
  const read = await resourcesAt(url, places);
  return bundles.map(({ entry = [] }) => ({
    resourceType: 'Bundle',
    type: 'collection',
    entry: entry.map(({ fullUrl = '' }) => entryAt(url, read.get(at.get(fullUrl) ?? ''))),
  }));
}

/** Type and id of each resource, in the order of the transaction that was answered. */
export function placesOf({ entry = [] }: Bundle): string[] {
  return entry.map(({ response }) =>
    (response?.location ?? '').replace(/\/_history\/.*$/, '').replace(/^.*\/(?=[^/]+\/[^/]+$)/, ''),
  );
}

/** What the server holds at these places, by place. */
export async function resourcesAt(
  url: string,
  places: readonly string[],
): Promise<Map<string, Resource>> {
  const names = [...new Set(places)];
  const batch = {
    resourceType: 'Bundle',
    type: 'batch',
    entry: names.map((name) => ({ request: { method: 'GET', url: name } })),
  };
  const text = await readAgain(url, { method: 'POST', headers: json, body: toJson(batch) });
  const read = fromJson(text).value as Bundle; // an answer of the server under test to a bundle
  return new Map(
    (read.entry ?? []).flatMap(({ resource }, at) =>
      resource === undefined ? [] : [[names[at] ?? '', resource] as const],
    ),
  );
}

export function entryAt(url: string, resource: Resource | undefined): BundleEntry<Resource> {
  return {
    fullUrl: `${url}/${resource?.resourceType}/${resource?.id}`,
    ...(resource && { resource }),
  };
}

/** The exam as a transaction of R4; with `previous` it takes back what that one held besides. */
export function transactionOf(exam: Exam, previous?: Exam): Bundle {
  const options = { ...clinic, bundleType: 'transaction', ...(previous && { previous }) } as const;
  return toBundleOrThrow(exam, options) as Bundle; // R4 is the default
}
