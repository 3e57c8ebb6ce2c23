/**
 * Takes exams by HTTP, keeps them in SQLite and passes them on to a FHIR server.
 * Run: npm run example:service; in a folder of your own, install face-neck-fhir, libsql and jose.
 * Settings by environment: PORT, ALLOWED_HOSTS (with commas), SERVICE_TOKEN, DATABASE, FHIR_URL,
 * FHIR_MOST_ENTRIES, FHIR_TOKEN (or FHIR_TOKEN_URL, FHIR_CLIENT_ID and FHIR_CLIENT_KEY, a file with
 * a JWK, for SMART Backend Services), FHIR_TIMEOUT_MS, FHIR_SETTLE_MS, RETRY_FIRST_MS, RETRY_LONGEST_MS, RETRY_ATTEMPTS,
 * REQUEST_TIMEOUT_MS, EXAM_TIMEOUT_MS, MAX_CONNECTIONS, MAX_DATABASE_PAGES.
 */
import { mkdirSync, readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { dirname } from 'node:path';
import type { FhirServer } from 'face-neck-fhir/deliver';
import { backendToken } from 'face-neck-fhir/deliver/backend-token';
import { startAcceptThread } from './accept-thread.ts';
import { receiver } from './receive.ts';
import { startSender } from './sender.ts';
import { openStore } from './store.ts';

function setting(name: string): string | undefined;
function setting(name: string, otherwise: string): string;
function setting(name: string, otherwise?: string): string | undefined {
  const value = process.env[name];
  return value === undefined || value === '' ? otherwise : value;
}

function whole(name: string, otherwise: number): number {
  const value = Number(setting(name, String(otherwise)));
  if (!Number.isSafeInteger(value) || value < 0) {
    throw new TypeError(`cannot start: expected a whole number in ${name}`);
  }
  return value;
}

const maxPages = whole('MAX_DATABASE_PAGES', 0);
const database = setting('DATABASE', 'output/service/exams.sqlite');
mkdirSync(dirname(database), { recursive: true });
const store = openStore(database, maxPages === 0 ? undefined : maxPages);

function tokenOf(): FhirServer['token'] {
  const fixed = setting('FHIR_TOKEN');
  if (fixed !== undefined) return () => fixed;
  const tokenUrl = setting('FHIR_TOKEN_URL');
  if (tokenUrl === undefined) return undefined;
  const key = JSON.parse(readFileSync(setting('FHIR_CLIENT_KEY', ''), 'utf8'));
  return backendToken({ tokenUrl, clientId: setting('FHIR_CLIENT_ID', ''), key });
}

const base = setting('FHIR_URL');
const token = tokenOf();
const most = whole('FHIR_MOST_ENTRIES', 0);
const timeout = whole('FHIR_TIMEOUT_MS', 60_000);
const sender =
  base === undefined
    ? undefined
    : startSender(
        store,
        // The outbox waits and tries again, so that what waits stands in it.
        { base, timeout, retries: 0, ...(token !== undefined && { token }) },
        most === 0 ? undefined : most,
        {
          first: whole('RETRY_FIRST_MS', 500),
          longest: whole('RETRY_LONGEST_MS', 300_000),
          attempts: whole('RETRY_ATTEMPTS', 500),
          settle: whole('FHIR_SETTLE_MS', 2 * timeout),
        },
        (line) => console.error(line),
      );
const thread = startAcceptThread(whole('EXAM_TIMEOUT_MS', 30_000));

const requestTimeout = whole('REQUEST_TIMEOUT_MS', 30_000);
const server = createServer(
  {
    requestTimeout,
    headersTimeout: Math.min(requestTimeout, 10_000),
    connectionsCheckingInterval: Math.min(requestTimeout, 5_000),
  },
  receiver({
    store,
    thread,
    stored: () => sender?.wake(),
    hosts: setting('ALLOWED_HOSTS', '').split(',').filter(Boolean),
    token: setting('SERVICE_TOKEN'),
  }),
);
// A client may close its half of the connection once the exam is out; it is answered all the same.
Object.assign(server, { httpAllowHalfOpen: true });
server.maxConnections = whole('MAX_CONNECTIONS', 500);

// It listens to this machine alone: put your own gateway, with TLS and log-in, before it.
server.listen(whole('PORT', 8081), '127.0.0.1', () => {
  const address = server.address();
  const port = typeof address === 'object' && address !== null ? address.port : '';
  console.log(`Listening on http://127.0.0.1:${port}`);
  if (sender === undefined) console.log('FHIR_URL is not set: bundles wait in the outbox');
});

/** Takes no more requests, finishes those under way within a second, then closes. */
async function end(): Promise<void> {
  const closed = new Promise((resolve) => server.close(resolve));
  server.closeIdleConnections();
  await Promise.race([closed, new Promise((resolve) => setTimeout(resolve, 1_000).unref())]);
  server.closeAllConnections();
  await Promise.all([sender?.stop(), thread.stop()]);
  store.close();
}
process.once('SIGTERM', end);
process.once('SIGINT', end);
