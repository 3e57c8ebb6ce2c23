import { timingSafeEqual } from 'node:crypto';
import type { IncomingMessage, RequestListener, ServerResponse } from 'node:http';
import { type AcceptThread, Busy } from './accept-thread.ts';
import { limitedText } from './limited-text.ts';
import { isFull } from './sqlite.ts';
import type { Store } from './store.ts';

/** The largest exam that is taken; a full one has about a megabyte. */
const LARGEST = 5_000_000;
/** Bytes of all bodies that are being received at one time. */
const LARGEST_TOGETHER = 100_000_000;

interface Answer {
  readonly status: number;
  readonly body: unknown;
  readonly headers?: Readonly<Record<string, string>>;
}

export interface ReceiverParts {
  readonly store: Store;
  readonly thread: AcceptThread;
  /** Called after an exam was stored that is new or has changed. */
  readonly stored: () => void;
  /** Names under which this service may be called, besides those of this machine. */
  readonly hosts: readonly string[];
  /** Bearer token that a request must bring, where one is set. */
  readonly token: string | undefined;
}

/**
 * `POST /exams` takes an exam as JSON: 201 new, 200 known (same or changed), 422 with the issues,
 * 503 when it is too busy, 507 where the disk is full. It answers only after the exam is on disk.
 * `GET /exams/ID` gives the bundle, `GET /outbox` the counts, `GET /given-up` what the FHIR server
 * refused, `POST /given-up/ID` queues it again, `GET /health` needs no token. No content of an exam
 * is ever logged.
 */
export function receiver(parts: ReceiverParts): RequestListener {
  const budget = { bytes: 0 };
  return async (request, response) => {
    try {
      send(response, await answerTo(request, parts, budget));
    } catch (error) {
      // A client that went away half-way is not a fault of ours, and nobody is left to be told.
      if (!response.destroyed) send(response, failure(error));
    }
  };
}

const ours = ['localhost', '127.0.0.1', '[::1]'];
const nothing: Answer = { status: 404, body: { error: 'there is nothing here' } };

async function answerTo(
  request: IncomingMessage,
  parts: ReceiverParts,
  budget: { bytes: number },
): Promise<Answer> {
  const { store, hosts, token } = parts;
  // A page of another site whose name was pointed at this machine must not reach the exams.
  const host = (request.headers.host ?? '').replace(/:\d+$/, '').toLowerCase();
  if (![...ours, ...hosts].includes(host)) {
    return { status: 421, body: { error: 'this service has another name' } };
  }
  const path = new URL(request.url ?? '/', 'http://localhost').pathname;
  const call = `${request.method} ${path.split('/').slice(0, 2).join('/')}`;
  if (call === 'GET /health') return { status: 200, body: { ok: true } };
  if (token !== undefined && !bears(request, token)) {
    const headers = { 'www-authenticate': 'Bearer' };
    return { status: 401, body: { error: 'expected the token of this service' }, headers };
  }
  const id = decodeURIComponent(path.split('/')[2] ?? '');
  switch (call) {
    case 'POST /exams':
      return id === '' ? receive(request, parts, budget) : nothing;
    case 'GET /exams': {
      const bundle = store.bundle(id);
      return bundle === undefined ? nothing : { status: 200, body: bundle };
    }
    case 'GET /outbox':
      return { status: 200, body: store.counts() };
    case 'GET /given-up':
      return { status: 200, body: store.givenUp() };
    case 'POST /given-up':
      if (!store.again(id)) return nothing;
      parts.stored();
      return { status: 202, body: { queued: true } };
    default:
      return nothing;
  }
}

function bears(request: IncomingMessage, token: string): boolean {
  const given = Buffer.from(/^Bearer (.+)$/.exec(request.headers.authorization ?? '')?.[1] ?? '');
  const wanted = Buffer.from(token);
  return given.length === wanted.length && timingSafeEqual(given, wanted);
}

async function receive(
  request: IncomingMessage,
  { store, thread, stored }: ReceiverParts,
  budget: { bytes: number },
): Promise<Answer> {
  if (!/^application\/json\s*(;|$)/i.test(request.headers['content-type'] ?? '')) {
    return { status: 415, body: { error: 'expected an exam as application/json' } };
  }
  const text = await limitedText(
    withinBudget(request.iterator({ destroyOnReturn: false }), budget),
    LARGEST,
  );
  if (text === undefined) {
    // The rest is not read, so the connection cannot be used again.
    const headers = { connection: 'close' };
    return { status: 413, body: { error: `expected at most ${LARGEST} bytes` }, headers };
  }
  return thread.accept(text, store.bundle, ({ accepted, issues }) => {
    if (accepted === undefined) return { status: 422, body: { issues } };
    const outcome = store.put(accepted.exam, accepted.bundle);
    if (outcome !== 'same') stored();
    const headers = { location: `/exams/${encodeURIComponent(accepted.exam)}` };
    return { status: outcome === 'new' ? 201 : 200, body: { outcome, issues }, headers };
  });
}

/** Counts the bytes while they are held, so that many unfinished bodies cannot fill the memory. */
async function* withinBudget(
  stream: AsyncIterable<Uint8Array>,
  budget: { bytes: number },
): AsyncIterable<Uint8Array> {
  let held = 0;
  try {
    for await (const chunk of stream) {
      held += chunk.byteLength;
      budget.bytes += chunk.byteLength;
      if (budget.bytes > LARGEST_TOGETHER) throw new Busy();
      yield chunk;
    }
  } finally {
    budget.bytes -= held;
  }
}

function failure(error: unknown): Answer {
  if (isFull(error)) return { status: 507, body: { error: 'no room to store the exam' } };
  if (error instanceof Busy) {
    const headers = { 'retry-after': '5', connection: 'close' };
    return { status: 503, body: { error: 'too busy' }, headers };
  }
  if (error instanceof URIError) return nothing;
  if (hasCode(error, 'ERR_ENCODING_INVALID_ENCODED_DATA')) {
    return { status: 400, body: { error: 'expected UTF-8' } };
  }
  return { status: 503, body: { error: 'the exam was not stored' } };
}

function hasCode(error: unknown, code: string): boolean {
  return error instanceof Error && 'code' in error && error.code === code;
}

function send(response: ServerResponse, { status, body, headers }: Answer): void {
  response
    .writeHead(status, { 'content-type': 'application/json; charset=utf-8', ...headers })
    .end(typeof body === 'string' ? body : JSON.stringify(body));
}
