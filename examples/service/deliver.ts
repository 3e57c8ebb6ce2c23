import { limitedText } from './limited-text.ts';

export interface FhirServer {
  /** Base such as `http://127.0.0.1:8080/fhir`, to which transactions are posted. */
  readonly url: string;
  /** OAuth bearer token, where the server asks for one. */
  readonly token?: string;
  /** How long an answer may take, in milliseconds. */
  readonly timeout: number;
}

/**
 * `stored`: it is all there, the report in this version. `refused`: sending it again would not help.
 * `conflict`: the report on the server has another version than the one named. `busy`: nothing was
 * done. `unknown`: no answer that can be trusted came, so that it may be done, or be done later.
 */
export type Delivery =
  | { readonly result: 'stored'; readonly version?: string }
  | { readonly result: 'refused'; readonly status: number }
  | { readonly result: 'conflict' }
  | { readonly result: 'busy'; readonly waitSeconds?: number }
  | { readonly result: 'unknown' };

const LARGEST_ANSWER = 10_000_000;

/** The entry of the report as `toBundle` writes it: the first of the transaction. */
const reportRequest = /"request":\{"method":"PUT","url":"(DiagnosticReport\/[^"]+)"/;

/**
 * Sends one transaction. With a version, the server stores it only while the report there still has
 * that version, so that a request that it works off late cannot undo what was sent after it.
 * @see https://hl7.org/fhir/R4/http.html#concurrency
 */
export async function deliver(
  server: FhirServer,
  bundle: string,
  version: string | null,
): Promise<Delivery> {
  const body =
    version === null
      ? bundle
      : bundle.replace(reportRequest, (found) => `${found},"ifMatch":${JSON.stringify(version)}`);
  try {
    const response = await fetch(server.url, { ...options(server), method: 'POST', body });
    const text = response.body === null ? '' : await limitedText(response.body, LARGEST_ANSWER);
    return judged(response, text, bundle);
  } catch {
    return { result: 'unknown' }; // not reached, too slow, cut off, redirected, or not UTF-8
  }
}

/** The report on the server: its version, null where it names none. */
export type Held = { readonly version: string | null } | 'gone' | 'unknown';

/** What the server holds of the report now. */
export async function heldReport(server: FhirServer, bundle: string): Promise<Held> {
  const report = reportRequest.exec(bundle)?.[1];
  if (report === undefined) return 'unknown';
  try {
    const response = await fetch(`${server.url}/${report}`, options(server));
    const text = response.body === null ? '' : await limitedText(response.body, LARGEST_ANSWER);
    if (response.status === 404 || response.status === 410) return 'gone';
    if (!response.ok || valueIn(parsed(text), 'resourceType') !== 'DiagnosticReport') {
      return 'unknown';
    }
    const named = weakTag(valueIn(valueIn(parsed(text), 'meta'), 'versionId'));
    return { version: response.headers.get('etag') ?? named ?? null };
  } catch {
    return 'unknown';
  }
}

function options({ token, timeout }: FhirServer): RequestInit {
  return {
    headers: {
      'content-type': 'application/fhir+json',
      accept: 'application/fhir+json',
      ...(token !== undefined && { authorization: `Bearer ${token}` }),
    },
    redirect: 'error',
    signal: AbortSignal.timeout(timeout),
  };
}

/** Answers of the 400s that are not a verdict on the content, so that it is worth sending it again. */
const passing: ReadonlySet<number> = new Set([401, 403, 404, 408, 409, 423, 425, 429]);

function judged(response: Response, text: string | undefined, bundle: string): Delivery {
  const { status, headers } = response;
  if (response.ok) return storedAnswer(text, bundle) ?? { result: 'unknown' };
  if (status === 412) return { result: 'conflict' };
  // A gateway that gave up waiting says nothing of what the server behind it does.
  if (status === 502 || status === 504 || status === 408) return { result: 'unknown' };
  if (status >= 400 && status < 500 && !passing.has(status)) return { result: 'refused', status };
  const waitSeconds = secondsUntil(headers.get('retry-after'), Date.now());
  return { result: 'busy', ...(waitSeconds !== undefined && { waitSeconds }) };
}

/**
 * Seconds that `Retry-After` asks for, as a number of seconds or as a date.
 * @see https://www.rfc-editor.org/rfc/rfc9110#field.retry-after
 */
export function secondsUntil(value: string | null, now: number): number | undefined {
  if (value === null || value.trim() === '') return undefined;
  if (/^\s*\d+\s*$/.test(value)) return Number(value);
  const date = Date.parse(value);
  return Number.isNaN(date) ? undefined : Math.max(0, Math.ceil((date - now) / 1000));
}

/** @see https://hl7.org/fhir/R4/http.html#transaction-response */
function storedAnswer(text: string | undefined, bundle: string): Delivery | undefined {
  const answer = parsed(text);
  const answers = listIn(answer, 'entry');
  const sent = listIn(parsed(bundle), 'entry');
  const stored =
    valueIn(answer, 'type') === 'transaction-response' &&
    answers.length === sent.length &&
    answers.every((entry) => /^2\d\d/.test(String(valueIn(valueIn(entry, 'response'), 'status'))));
  if (!stored) return undefined;
  const at = sent.findIndex((entry) =>
    /^DiagnosticReport\//.test(String(valueIn(valueIn(entry, 'request'), 'url'))),
  );
  const response = valueIn(answers[at], 'response');
  const etag = valueIn(response, 'etag');
  const history = /\/_history\/([^/]+)$/.exec(String(valueIn(response, 'location')))?.[1];
  const version = typeof etag === 'string' ? etag : weakTag(history);
  return { result: 'stored', ...(version !== undefined && { version }) };
}

function weakTag(version: unknown): string | undefined {
  return typeof version === 'string' ? `W/"${version}"` : undefined;
}

function parsed(text: string | undefined): unknown {
  try {
    return JSON.parse(text ?? '');
  } catch {
    return undefined; // not JSON
  }
}

function valueIn(holder: unknown, name: string): unknown {
  if (typeof holder !== 'object' || holder === null) return undefined;
  return Object.getOwnPropertyDescriptor(holder, name)?.value;
}

function listIn(holder: unknown, name: string): readonly unknown[] {
  const value = valueIn(holder, name);
  return Array.isArray(value) ? value : [];
}
