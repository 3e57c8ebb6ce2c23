import type { IncomingMessage, RequestListener, ServerResponse } from 'node:http';
import { accept } from './accept.ts';
import { limitedText } from './limited-text.ts';
import { isFull } from './sqlite.ts';
import type { Store } from './store.ts';

/** The largest exam that is taken; a full one has about a megabyte. */
const LARGEST = 5_000_000;

interface Answer {
  readonly status: number;
  readonly body: unknown;
  readonly headers?: Readonly<Record<string, string>>;
}

/**
 * `POST /exams` takes an exam as JSON: 201 new, 200 known (same or changed), 422 with the issues,
 * 507 where the disk is full. It answers only after the exam is on disk. `GET /exams/ID` gives the
 * bundle, `GET /outbox` the counts. No content of an exam is ever logged.
 */
export function receiver(store: Store, stored: () => void): RequestListener {
  return async (request, response) => {
    try {
      send(response, await answerTo(request, store, stored));
    } catch (error) {
      // A client that went away half-way is no fault of ours, and nobody is left to be told.
      if (!response.destroyed) send(response, failure(error));
    }
  };
}

async function answerTo(
  request: IncomingMessage,
  store: Store,
  stored: () => void,
): Promise<Answer> {
  const path = new URL(request.url ?? '/', 'http://localhost').pathname;
  if (request.method === 'POST' && path === '/exams') return receive(request, store, stored);
  if (request.method === 'GET' && path === '/outbox') return { status: 200, body: store.counts() };
  if (request.method === 'GET' && path.startsWith('/exams/')) {
    const bundle = store.bundle(decodeURIComponent(path.slice('/exams/'.length)));
    if (bundle !== undefined) return { status: 200, body: bundle };
  }
  return { status: 404, body: { error: 'there is nothing here' } };
}

async function receive(
  request: IncomingMessage,
  store: Store,
  stored: () => void,
): Promise<Answer> {
  if (!/^application\/json\s*(;|$)/i.test(request.headers['content-type'] ?? '')) {
    return { status: 415, body: { error: 'expected an exam as application/json' } };
  }
  const text = await limitedText(request.iterator({ destroyOnReturn: false }), LARGEST);
  if (text === undefined) {
    // The rest is not read, so the connection can not be used again.
    const headers = { connection: 'close' };
    return { status: 413, body: { error: `expected at most ${LARGEST} bytes` }, headers };
  }
  const { accepted, issues } = accept(text, store.bundle);
  if (accepted === undefined) return { status: 422, body: { issues } };
  const outcome = store.put(accepted.exam, accepted.bundle);
  if (outcome !== 'same') stored();
  const headers = { location: `/exams/${encodeURIComponent(accepted.exam)}` };
  return { status: outcome === 'new' ? 201 : 200, body: { outcome, issues }, headers };
}

function failure(error: unknown): Answer {
  if (isFull(error)) return { status: 507, body: { error: 'no room to store the exam' } };
  if (error instanceof URIError) return { status: 404, body: { error: 'there is nothing here' } };
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
