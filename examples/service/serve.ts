/**
 * Takes exams by HTTP, keeps them in SQLite and passes them on to a FHIR server.
 * Run: npm run example:service
 * Settings by environment: PORT, DATABASE, FHIR_URL, FHIR_TOKEN, FHIR_TIMEOUT_MS, RETRY_FIRST_MS,
 * RETRY_LONGEST_MS, REQUEST_TIMEOUT_MS, MAX_DATABASE_PAGES.
 */
import { mkdirSync } from 'node:fs';
import { createServer } from 'node:http';
import { dirname } from 'node:path';
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

const url = setting('FHIR_URL');
const token = setting('FHIR_TOKEN');
const sender =
  url === undefined
    ? undefined
    : startSender(
        store,
        { url, timeout: whole('FHIR_TIMEOUT_MS', 60_000), ...(token !== undefined && { token }) },
        { first: whole('RETRY_FIRST_MS', 500), longest: whole('RETRY_LONGEST_MS', 300_000) },
      );

const requestTimeout = whole('REQUEST_TIMEOUT_MS', 30_000);
const server = createServer(
  {
    requestTimeout,
    headersTimeout: Math.min(requestTimeout, 10_000),
    connectionsCheckingInterval: Math.min(requestTimeout, 5_000),
  },
  receiver(store, () => sender?.wake()),
);

// It has no log-in, so it listens to this machine alone: put your own gateway before it.
server.listen(whole('PORT', 8081), '127.0.0.1', () => {
  const address = server.address();
  const port = typeof address === 'object' && address !== null ? address.port : '';
  console.log(`Listening on http://127.0.0.1:${port}`);
  if (sender === undefined) console.log('FHIR_URL is not set: bundles wait in the outbox');
});

async function end(): Promise<void> {
  server.close();
  server.closeAllConnections();
  await sender?.stop();
  store.close();
}
process.once('SIGTERM', end);
process.once('SIGINT', end);
