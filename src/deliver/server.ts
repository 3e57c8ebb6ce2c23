import type { AnswerFault } from './answer-faults.ts';
import { nextWait, type Pause, pauseAsked } from './wait.ts';

/** A FHIR server, and how it is spoken to. */
export interface FhirServer {
  /** Base such as `https://clinic.example/fhir`, to which transactions are posted. */
  readonly base: string;
  /** Default: the global one. */
  readonly fetch?: typeof fetch;
  /**
   * OAuth 2.0 bearer token, asked for before each request; `renew` after the server refused the last
   * one. `backendToken` makes such a function.
   */
  readonly token?: (renew: boolean) => Promise<string> | string;
  /** How long one answer may take, in milliseconds. Default 60000. */
  readonly timeout?: number;
  /** Most characters of one answer. Default 10 million. */
  readonly largestAnswer?: number;
  /** How often a request is sent again after 429, 503 and the like. Default 4. */
  readonly retries?: number;
  /** Most milliseconds to wait before one of these; what asks for more is left to the caller. Default 30000. */
  readonly longestWait?: number;
  /** How to wait. Default: a timer. */
  readonly sleep?: (milliseconds: number) => Promise<void>;
  /** Milliseconds since 1970, for dates in `Retry-After`. Default: the clock. */
  readonly now?: () => number;
}

export interface Request {
  readonly method: 'GET' | 'POST';
  /** Below the base: `DiagnosticReport/1`; empty for the base itself. */
  readonly path: string;
  readonly body?: string;
}

/** The whole answer, or why there is none that can be trusted. */
export type Answer =
  | {
      readonly status: number;
      readonly text: string;
      readonly header: (name: string) => string | null;
    }
  | { readonly status: 'none'; readonly fault: AnswerFault };

/** One request and its outcome, for a log: no patient data, no token. */
export interface Exchange {
  readonly method: string;
  /** Type of resource, or empty for the base. */
  readonly type: string;
  readonly status: number | 'none';
}

/** Answers of one server, each request repeated as the server allows. */
export interface Connection {
  send(request: Request): Promise<Answer>;
  readonly exchanges: readonly Exchange[];
}

/** What is not a verdict on what was sent and may pass. */
const passing: ReadonlySet<number> = new Set([423, 425, 429, 500, 503]);

/** There is no token: nothing was sent. */
const notAuthorised: Answer = { status: 401, text: '', header: () => null };

export function connect(server: FhirServer): Connection {
  const exchanges: Exchange[] = [];
  const { retries = 4, longestWait = 30_000, sleep = timer, now = Date.now } = server;

  const withToken = async (request: Request, renew: boolean): Promise<Answer> => {
    let token: string | undefined;
    try {
      token = await server.token?.(renew);
    } catch {
      return notAuthorised;
    }
    return once(server, request, token);
  };
  const authorised = async (request: Request): Promise<Answer> => {
    const answer = await withToken(request, false);
    if (answer.status !== 401 || server.token === undefined) return answer;
    return withToken(request, true);
  };

  return {
    exchanges,
    send: async (request) => {
      for (let attempt = 0; ; attempt++) {
        const answer = await authorised(request);
        const type = /^[A-Za-z]*/.exec(request.path)?.[0] ?? '';
        exchanges.push({ method: request.method, type, status: answer.status });
        if (answer.status === 'none' || !passing.has(answer.status)) return answer;
        const pause: Pause = { attempt, asked: pauseAsked(answer.header, now()) };
        const wait = nextWait(pause);
        if (attempt >= retries || wait > longestWait) return answer;
        await sleep(wait);
      }
    },
  };
}

/** Ends an exchange whose answer cannot be trusted. */
class Untrusted extends Error {
  readonly fault: AnswerFault;

  constructor(fault: AnswerFault) {
    super(fault);
    this.name = 'Untrusted';
    this.fault = fault;
  }
}

async function once(
  server: FhirServer,
  request: Request,
  token: string | undefined,
): Promise<Answer> {
  const signal = AbortSignal.timeout(server.timeout ?? 60_000);
  try {
    // A fetch of the caller need not heed the signal.
    return await Promise.race([exchanged(server, request, token, signal), aborted(signal)]);
  } catch (thrown) {
    if (thrown instanceof Untrusted) return { status: 'none', fault: thrown.fault };
    return { status: 'none', fault: signal.aborted ? 'no-answer' : 'no-connection' };
  }
}

function aborted(signal: AbortSignal): Promise<never> {
  return new Promise((_, reject) => {
    signal.addEventListener('abort', () => reject(new Untrusted('no-answer')), { once: true });
  });
}

async function exchanged(
  server: FhirServer,
  { method, path, body }: Request,
  token: string | undefined,
  signal: AbortSignal,
): Promise<Answer> {
  const root = server.base.replace(/\/+$/, '');
  const answer = await (server.fetch ?? fetch)(path === '' ? root : `${root}/${path}`, {
    method,
    headers: {
      accept: 'application/fhir+json',
      ...(body !== undefined && { 'content-type': 'application/fhir+json' }),
      ...(token !== undefined && { authorization: `Bearer ${token}` }),
    },
    ...(body !== undefined && { body }),
    // Followed, a redirect could take patient data and token to another host.
    redirect: 'manual',
    signal,
  });
  const { status } = answer;
  // A browser shows no more of a redirect than its type.
  const redirects = answer.type === 'opaqueredirect' || (status >= 300 && status < 400);
  if (redirects && status !== 304) {
    await answer.body?.cancel();
    throw new Untrusted('redirect');
  }
  const text = await limitedText(answer, server.largestAnswer ?? 10_000_000);
  return { status, text, header: (name) => answer.headers.get(name) };
}

/** @throws Untrusted where the answer is longer, or not UTF-8 */
async function limitedText(answer: Response, most: number): Promise<string> {
  if (answer.body === null) return '';
  const decoder = new TextDecoder('utf-8', { fatal: true });
  const reader = answer.body.getReader();
  let text = '';
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return text + decoded(decoder);
    text += decoded(decoder, value);
    if (text.length > most) {
      await reader.cancel();
      throw new Untrusted('too-large');
    }
  }
}

function decoded(decoder: InstanceType<typeof TextDecoder>, piece?: Uint8Array): string {
  try {
    return piece === undefined ? decoder.decode() : decoder.decode(piece, { stream: true });
  } catch {
    throw new Untrusted('not-utf-8');
  }
}

function timer(milliseconds: number): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, milliseconds);
  });
}
