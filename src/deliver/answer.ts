import type { BundleEntry } from 'fhir/r4.js';
import type { AnyBundle } from '../export/to-bundle.ts';
import { fromJson } from '../fhir/json/from-json.ts';
import type { AnswerFault } from './answer-faults.ts';

/** What one entry of a response says. */
export interface EntryAnswer {
  readonly status: number | undefined;
  /** `Patient/7`: where the server keeps it. */
  readonly place: string | undefined;
  /** Version as an ETag: `W/"3"`. */
  readonly version: string | undefined;
}

/** The answers to the entries of a bundle, in their order, or why they cannot be had. */
export type EntryAnswers =
  | { readonly answers: readonly EntryAnswer[] }
  | { readonly fault: AnswerFault };

/**
 * Reads the response to a transaction or batch.
 * @param places where the server keeps what was stored before, by `fullUrl`
 * @see https://hl7.org/fhir/R4/http.html#transaction-response
 */
export function entryAnswers(
  text: string,
  bundle: AnyBundle,
  places: Readonly<Record<string, string>>,
): EntryAnswers {
  const { value } = fromJson(text);
  if (value === undefined) return { fault: textFault(text) };
  if (saysError(value)) return { fault: 'success-with-error' };
  const type = valueIn(value, 'resourceType');
  if (type !== 'Bundle' || valueIn(value, 'type') !== `${bundle.type}-response`) {
    return { fault: 'wrong-resource' };
  }
  const entries = listIn(value, 'entry');
  if (entries.length !== (bundle.entry?.length ?? 0)) return { fault: 'wrong-count' };
  const answers = entries.map((entry) => entryAnswer(valueIn(entry, 'response')));
  const fault = placeFault(bundle, answers, places);
  return fault === undefined ? { answers } : { fault };
}

function textFault(text: string): AnswerFault {
  if (text.trim() === '') return 'empty-answer';
  return /^\s*<(!doctype\s+html|html)[\s>]/i.test(text) ? 'html-answer' : 'not-json';
}

function saysError(value: unknown): boolean {
  return (
    valueIn(value, 'resourceType') === 'OperationOutcome' &&
    listIn(value, 'issue').some((one) => /^(error|fatal)$/.test(String(valueIn(one, 'severity'))))
  );
}

/** Places that cannot be those of what was sent. */
function placeFault(
  { type, entry = [] }: AnyBundle,
  answers: readonly EntryAnswer[],
  places: Readonly<Record<string, string>>,
): AnswerFault | undefined {
  const inside = new Set(entry.map(({ fullUrl }) => fullUrl));
  const others = Object.entries(places).filter(([fullUrl]) => !inside.has(fullUrl));
  const taken = new Set(others.map(([, place]) => place));
  // One structure for all versions.
  for (const [at, { resource, request }] of (entry as BundleEntry[]).entries()) {
    const { place, status } = answers[at] ?? {};
    if (status === undefined || !isStored(status)) continue;
    const byId = isById(request);
    // A batch cannot refer by a condition.
    if (place === undefined && !byId && type === 'batch') return 'no-place';
    if (place === undefined) continue;
    if (!place.startsWith(`${resource?.resourceType}/`)) return 'wrong-place';
    // Two people of an exam can be one who is there.
    if (byId && taken.has(place)) return 'same-place';
    if (byId) taken.add(place);
  }
  return undefined;
}

/** Whether a resource is written at an id of ours, and matched with nothing. */
export function isById(request: BundleEntry['request']): boolean {
  return request?.method === 'PUT' && !request.url.includes('?');
}

/** Whether the status of an entry says that it is stored: 202 is done later. */
export function isStored(status: number): boolean {
  return status >= 200 && status < 300 && status !== 202;
}

function entryAnswer(response: unknown): EntryAnswer {
  const status = /^\d{3}/.exec(String(valueIn(response, 'status')))?.[0];
  const location = String(valueIn(response, 'location') ?? '');
  const [, place, version] =
    /(?:^|\/)([A-Z][A-Za-z]+\/[A-Za-z0-9\-.]{1,64})(?:\/_history\/([A-Za-z0-9\-.]{1,64}))?$/.exec(
      location,
    ) ?? [];
  const etag = valueIn(response, 'etag');
  return {
    status: status === undefined ? undefined : Number(status),
    place,
    version: typeof etag === 'string' ? etag : weakTag(version),
  };
}

/** What a server holds of one resource now: its version, null where it names none. */
export function heldVersion(
  text: string,
  etag: string | null,
  resourceType: string,
): string | null | undefined {
  const { value } = fromJson(text);
  if (valueIn(value, 'resourceType') !== resourceType) return undefined;
  return etag ?? weakTag(valueIn(valueIn(value, 'meta'), 'versionId')) ?? null;
}

/** The codes of an OperationOutcome that are errors; they hold no patient data, unlike its texts. */
export function outcomeCodes(text: string): readonly string[] {
  const { value } = fromJson(text);
  return listIn(value, 'issue').flatMap((issue) => {
    const code = valueIn(issue, 'code');
    return typeof code === 'string' && /^[a-z-]{1,40}$/.test(code) ? [code] : [];
  });
}

function weakTag(version: unknown): string | undefined {
  return typeof version === 'string' ? `W/"${version}"` : undefined;
}

/** An own property of what another program sent. */
export function valueIn(holder: unknown, name: string): unknown {
  if (typeof holder !== 'object' || holder === null) return undefined;
  return Object.getOwnPropertyDescriptor(holder, name)?.value;
}

export function listIn(holder: unknown, name: string): readonly unknown[] {
  const value = valueIn(holder, name);
  return Array.isArray(value) ? value : [];
}
