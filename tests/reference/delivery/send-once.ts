/**
 * Sends an exam as an outbox does, keeping the state in a file after each bundle, and ends as it is
 * told: by itself, or killed once the server has stored so many bundles.
 */
import { existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { type DeliveryState, deliver } from '../../../src/deliver/index.ts';
import { type Exam, toBundleOrThrow } from '../../../src/index.ts';
import { clinic } from '../../clinic.ts';

/** When the process ends: the state of the last bundle is kept, or lost, or its answer has not come. */
export type Moment = 'kept' | 'not-kept' | 'in-flight';

export interface Order {
  readonly base: string;
  readonly fhirVersion: 'R4' | 'R5';
  readonly most: number;
  readonly exam: Exam;
  /** File of the state. */
  readonly kept: string;
  readonly kill?: { readonly after: number; readonly moment: Moment };
}

const { base, fhirVersion, most, exam, kept, kill }: Order = JSON.parse(
  readFileSync(process.argv[2] ?? '', 'utf8'),
);
const state: DeliveryState | undefined = existsSync(kept)
  ? JSON.parse(readFileSync(kept, 'utf8'))
  : undefined;
const bundle = toBundleOrThrow(exam, { ...clinic, bundleType: 'transaction', fhirVersion });

const die = (): void => {
  process.kill(process.pid, 'SIGKILL');
};
let sent = 0;
const send: typeof fetch = (...request) => {
  sent += 1;
  // Long enough for the request to be on its way, too short for its answer.
  if (kill?.moment === 'in-flight' && sent > kill.after) setTimeout(die, 10);
  return fetch(...request);
};
const onProgress = (now: DeliveryState): void => {
  const isLast = now.sent === kill?.after;
  if (isLast && kill.moment === 'not-kept') die();
  writeFileSync(`${kept}.new`, JSON.stringify(now));
  renameSync(`${kept}.new`, kept);
  if (isLast && kill.moment === 'kept') die();
};
const { value, issues } = await deliver(
  bundle,
  { base, timeout: 300_000, fetch: send },
  { most, state, onProgress },
);
if (value?.result === 'stored') writeFileSync(kept, JSON.stringify(value.state));
else console.error(JSON.stringify({ result: value?.result, codes: value?.codes, issues }));
process.exitCode = value?.result === 'stored' ? 0 : 1;
