import { limitedText } from './limited-text.ts';

export interface FhirServer {
  /** Base such as `http://127.0.0.1:8080/fhir`, to which transactions are posted. */
  readonly url: string;
  /** OAuth bearer token, where the server asks for one. */
  readonly token?: string;
  /** How long an answer may take, in milliseconds. */
  readonly timeout: number;
}

/** `stored`: it is all there; `refused`: sending it again would not help; `later`: not known or busy. */
export type Delivery =
  | { readonly result: 'stored' }
  | { readonly result: 'refused'; readonly status: number }
  | { readonly result: 'later'; readonly waitSeconds?: number };

const LARGEST_ANSWER = 10_000_000;

/**
 * Sends one transaction. Only an answer that says of every entry that it was stored counts; where
 * no answer comes, the same is sent again, which changes nothing on the server if it was stored.
 */
export async function deliver(server: FhirServer, bundle: string): Promise<Delivery> {
  try {
    const response = await fetch(server.url, {
      method: 'POST',
      headers: {
        'content-type': 'application/fhir+json',
        accept: 'application/fhir+json',
        ...(server.token !== undefined && { authorization: `Bearer ${server.token}` }),
      },
      body: bundle,
      redirect: 'error',
      signal: AbortSignal.timeout(server.timeout),
    });
    const text = response.body === null ? '' : await limitedText(response.body, LARGEST_ANSWER);
    return judged(response, text, bundle);
  } catch {
    return { result: 'later' }; // not reached, too slow, cut off, redirected, or no UTF-8
  }
}

/** Answers of the 400s that are no verdict on the content, so that it is worth sending it again. */
const passing: ReadonlySet<number> = new Set([401, 403, 404, 408, 423, 425, 429]);

function judged(response: Response, text: string | undefined, bundle: string): Delivery {
  const { status, headers } = response;
  if (response.ok) return { result: saysStored(text, bundle) ? 'stored' : 'later' };
  if (status >= 400 && status < 500 && !passing.has(status)) return { result: 'refused', status };
  const wait = Number(headers.get('retry-after') ?? Number.NaN);
  return { result: 'later', ...(wait >= 0 && { waitSeconds: wait }) };
}

/** @see https://hl7.org/fhir/R4/http.html#transaction-response */
function saysStored(text: string | undefined, bundle: string): boolean {
  try {
    const answer: unknown = JSON.parse(text ?? '');
    const entries = listIn(answer, 'entry');
    return (
      valueIn(answer, 'type') === 'transaction-response' &&
      entries.length === listIn(JSON.parse(bundle), 'entry').length &&
      entries.every((entry) => /^2\d\d/.test(String(valueIn(valueIn(entry, 'response'), 'status'))))
    );
  } catch {
    return false; // no JSON
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
