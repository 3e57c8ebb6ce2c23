import { changesIn, type Pair, type ServerChange } from '../../../deliver/stored/changes.ts';
import { differences } from '../../../deliver/stored/differences.ts';
import {
  type JsonResource,
  objectOf,
  objectsOf,
  resourceOf,
  textOf,
} from '../../../deliver/stored/json.ts';
import { type Place, placeFrom, placeName } from '../../../deliver/stored/place.ts';
import type { ExportOptions } from '../../../export/options.ts';
import { toBundleOrThrow } from '../../../export/to-bundle.ts';
import { fromJson } from '../../../fhir/json/from-json.ts';
import { toJson } from '../../../fhir/json/to-json.ts';
import type { Exam } from '../../../model/exam.ts';
import { fromBundle } from '../../../read/from-bundle.ts';
import type { ProbeContext } from '../context.ts';
import { Misbehaved } from '../misbehaviour.ts';
import { PROBE_IDENTITY } from '../probe-exams.ts';

/** A resource of a transaction and where the server says that it keeps it. */
export interface StoredResource {
  readonly fullUrl: string;
  readonly sent: JsonResource;
  readonly place: Place;
}

export interface Stored {
  readonly exam: Exam;
  readonly text: string;
  readonly resources: readonly StoredResource[];
}

interface SentEntry {
  readonly fullUrl: string;
  readonly sent: JsonResource;
  /** `Observation/1`, or a condition where the server gives the ids. */
  readonly url: string;
}

/** How the exams of a probe are written for this server. */
export function transactionOptions(context: ProbeContext): ExportOptions {
  const serverIds = (context.declared?.serverIds.size ?? 0) > 0;
  return {
    fhirVersion: context.settings.fhirVersion,
    bundleType: 'transaction',
    transaction: serverIds ? 'conditional' : 'put',
    identity: PROBE_IDENTITY,
    // Its people and devices are invented by the probe, which also deletes them.
    masterData: 'own',
  };
}

/** The exam as the transaction that is sent. */
export function transactionText(context: ProbeContext, exam: Exam): string {
  return toJson(toBundleOrThrow(exam, transactionOptions(context)));
}

/** Sends the exam as a transaction. @throws Misbehaved where it was not stored as a whole */
export async function storeExam(context: ProbeContext, exam: Exam): Promise<Stored> {
  const text = transactionText(context, exam);
  return { exam, text, resources: await storeText(context, text) };
}

/** Sends a transaction. @throws Misbehaved where it was not stored as a whole */
export async function storeText(
  context: ProbeContext,
  text: string,
): Promise<readonly StoredResource[]> {
  const entries = sentEntries(text);
  for (const { url } of entries) {
    // A creation or a condition names no place.
    if (placeFrom(url) === undefined) context.unknownIds = true;
    else context.left.add(url);
  }
  const request = { method: 'POST', path: '', body: text } as const;
  const answer = await context.client.resource(request, 'Bundle');
  context.unknownIds = false;
  return placed(context, entries, answer);
}

/** The entries of a transaction, as a server sees them. */
export function sentEntries(text: string): SentEntry[] {
  const bundle = resourceOf(fromJson(text).value);
  if (bundle === undefined) throw new TypeError('cannot read a transaction of our own');
  return objectsOf(bundle, 'entry').flatMap((entry) => {
    const sent = resourceOf(entry['resource']);
    const url = textOf(objectOf(entry, 'request'), 'url');
    const fullUrl = textOf(entry, 'fullUrl');
    return sent && url !== undefined && fullUrl !== undefined ? [{ fullUrl, sent, url }] : [];
  });
}

function placed(
  context: ProbeContext,
  entries: readonly SentEntry[],
  answer: JsonResource,
): StoredResource[] {
  const responses = objectsOf(answer, 'entry').map((entry) => objectOf(entry, 'response'));
  if (responses.length !== entries.length) {
    throw new Misbehaved('wrong-resource', {
      detail: `a transaction of ${entries.length} entries was answered with ${responses.length}`,
    });
  }
  return entries.map(({ url, ...entry }, at) => {
    const response = responses[at] ?? {};
    const status = textOf(response, 'status') ?? '';
    if (!/^20[01]/.test(status)) {
      throw new Misbehaved('unexpected-status', {
        detail: `an entry of a transaction was answered with status ${status.slice(0, 3)}`,
      });
    }
    const asked = placeFrom(url);
    const place = placeFrom(textOf(response, 'location') ?? '') ?? asked;
    if (place === undefined) {
      throw new Misbehaved('wrong-resource', {
        detail: 'the server does not tell where it stored',
      });
    }
    context.left.add(placeName(place));
    if (asked !== undefined && placeName(asked) !== placeName(place)) {
      const message = 'resources are stored under other ids than those asked for';
      context.client.tell({ misbehaviour: 'changed-ids', severity: 'error', message });
    }
    const version = place.version ?? etagVersion(textOf(response, 'etag'));
    return { ...entry, place: { ...place, version } };
  });
}

function etagVersion(etag: string | undefined): string | undefined {
  return /^(?:W\/)?"([^"]{1,64})"$/.exec(etag ?? '')?.[1];
}

export interface ReadBack {
  readonly changes: readonly ServerChange[];
  readonly pairs: readonly Pair[];
}

/** Reads every resource of a stored exam and compares the exam that they hold; tells what differs. */
export async function readBack(context: ProbeContext, stored: Stored): Promise<ReadBack> {
  const pairs: Pair[] = [];
  for (const { sent, place } of stored.resources) {
    const request = { method: 'GET', path: placeName(place) } as const;
    pairs.push({ sent, received: await context.client.resource(request, place.type) });
  }
  const places = new Map(stored.resources.map(({ fullUrl, place }) => [fullUrl, place]));
  const changes = changesIn(pairs, (fullUrl) => places.get(fullUrl));
  for (const { what, allowed, element, count } of changes) {
    if (allowed) continue;
    const many = count === 1 ? 'once' : `${count} times`;
    // Kinds that are not allowed are all names of misbehaviours.
    const misbehaviour = what as Exclude<typeof what, 'id' | 'meta' | 'reference' | 'narrative'>;
    const severity = misbehaviour === 'added-content' ? 'information' : 'error';
    context.client.tell({ misbehaviour, severity, message: `${element}, ${many}` });
  }
  compareExams(context, stored.exam, pairs);
  return { changes, pairs };
}

function compareExams(context: ProbeContext, exam: Exam, pairs: readonly Pair[]): void {
  const bundle = {
    resourceType: 'Bundle',
    type: 'collection',
    entry: pairs.map(({ received }) => ({
      fullUrl: `${context.settings.base.href}${received.resourceType}/${String(received['id'])}`,
      resource: received,
    })),
  };
  const { value, remainder } = fromBundle(bundle, { identity: PROBE_IDENTITY });
  const different = new Set(differences(exam, value).map(({ path }) => String(path[0] ?? 'exam')));
  const left = remainder.filter(({ kind }) => kind === 'content').length;
  if (different.size === 0 && left === 0) return;
  const parts = [
    different.size > 0 ? `different: ${[...different].join(', ')}` : undefined,
    left > 0 ? `parts that the exam does not have: ${left}` : undefined,
  ];
  context.client.tell({
    misbehaviour: 'changed-exam',
    severity: 'error',
    message: parts.filter(Boolean).join('; '),
  });
}

/** The place of the only resource of a type that an exam has once, such as its report. */
export function placeOf(stored: Stored, type: string): Place {
  const found = stored.resources.find(({ sent }) => sent.resourceType === type);
  if (found === undefined) throw new TypeError(`cannot find the ${type} of an exam of our own`);
  return found.place;
}
