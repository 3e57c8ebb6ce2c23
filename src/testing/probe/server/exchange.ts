import { Misbehaved } from '../misbehaviour.ts';

export interface HttpRequest {
  readonly method: 'GET' | 'POST' | 'PUT' | 'DELETE';
  readonly url: URL;
  readonly headers: Readonly<Record<string, string>>;
  readonly body?: string;
}

export interface HttpAnswer {
  readonly status: number;
  readonly header: (name: string) => string | undefined;
  readonly text: string;
}

export interface Limits {
  readonly timeout: number;
  readonly mostBytes: number;
  /** Aborts when the time for the whole probe is over. */
  readonly over: AbortSignal;
}

/** Redirects that are followed for one request. */
const MOST_REDIRECTS = 5;

/**
 * One request and its whole answer, within the limits of time and size. Redirects are followed on
 * the same origin alone.
 * @throws Misbehaved
 */
export async function exchange(request: HttpRequest, limits: Limits): Promise<HttpAnswer> {
  let { url } = request;
  for (let redirects = 0; redirects <= MOST_REDIRECTS; redirects++) {
    const answer = await one({ ...request, url }, limits);
    const next = redirectOf(request, url, answer);
    if (next === undefined) return answer;
    if (next.origin !== url.origin) throw new Misbehaved('redirect-to-other-host');
    url = next;
  }
  throw new Misbehaved('endless-redirect');
}

/** Where an answer redirects to. A changing request is repeated only where the status says so. */
function redirectOf({ method }: HttpRequest, from: URL, answer: HttpAnswer): URL | undefined {
  const { status } = answer;
  const keeps = status === 307 || status === 308;
  const asks = keeps || status === 301 || status === 302 || status === 303;
  const location = answer.header('location');
  if (!asks || (method !== 'GET' && !keeps) || location === undefined) return undefined;
  return URL.canParse(location, from.href) ? new URL(location, from.href) : undefined;
}

async function one(request: HttpRequest, limits: Limits): Promise<HttpAnswer> {
  const { method, url, headers, body } = request;
  if (limits.over.aborted) throw new Misbehaved('out-of-time');
  const controller = new AbortController();
  const stop = (): void => controller.abort();
  const timer = setTimeout(stop, limits.timeout);
  limits.over.addEventListener('abort', stop);
  let begun = false;
  try {
    const answer = await fetch(url, {
      method,
      headers,
      ...(body !== undefined && { body }),
      redirect: 'manual',
      signal: controller.signal,
    });
    begun = true;
    const text = await limitedText(answer, limits.mostBytes);
    return { status: answer.status, header: (name) => answer.headers.get(name) ?? undefined, text };
  } catch (thrown) {
    if (thrown instanceof Misbehaved) throw thrown;
    if (limits.over.aborted) throw new Misbehaved('out-of-time');
    if (controller.signal.aborted) throw new Misbehaved(begun ? 'slow-answer' : 'no-answer');
    throw new Misbehaved(begun || wasClosed(thrown) ? 'cut-off-answer' : 'no-connection');
  } finally {
    clearTimeout(timer);
    limits.over.removeEventListener('abort', stop);
    // Ends what is left of an answer that was too large.
    controller.abort();
  }
}

/** Codes that Node gives where a connection was made and then closed; browsers give none. */
const closedCodes: ReadonlySet<unknown> = new Set(['UND_ERR_SOCKET', 'ECONNRESET', 'EPIPE']);

function wasClosed(thrown: unknown): boolean {
  const cause = thrown instanceof Error ? thrown.cause : undefined;
  return typeof cause === 'object' && cause !== null && 'code' in cause
    ? closedCodes.has(cause.code)
    : false;
}

async function limitedText(
  answer: { readonly body: ReadableStream<Uint8Array> | null },
  most: number,
): Promise<string> {
  if (answer.body === null) return '';
  const decoder = new TextDecoder('utf-8', { fatal: true });
  const reader = answer.body.getReader();
  const pieces: string[] = [];
  let length = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    length += value.byteLength;
    if (length > most) {
      throw new Misbehaved('too-large', { detail: `the answer is larger than ${most} bytes` });
    }
    pieces.push(decoded(decoder, value));
  }
  pieces.push(decoded(decoder));
  return pieces.join('');
}

function decoded(decoder: InstanceType<typeof TextDecoder>, piece?: Uint8Array): string {
  try {
    return piece === undefined ? decoder.decode() : decoder.decode(piece, { stream: true });
  } catch {
    throw new Misbehaved('not-utf-8');
  }
}
