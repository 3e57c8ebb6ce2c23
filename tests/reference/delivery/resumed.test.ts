import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { examples } from '../../../examples/all-exams.ts';
import { cutBundle, readBack } from '../../../src/deliver/index.ts';
import { type Exam, fromJson, orThrow, toBundleOrThrow } from '../../../src/index.ts';
import { clinic } from '../../clinic.ts';
import { storeExisting } from '../exam-store.ts';
import { type FhirServer, startServer } from '../server.ts';
import type { Moment, Order } from './send-once.ts';

const MOST = 40;
const program = join(import.meta.dirname, 'send-once.ts');

/** The same exam of another person, so that each delivery begins with nothing on the server. */
function lesionOf(number: number): Exam {
  const exam = examples.get('skin-lesion');
  if (exam === undefined) throw new Error('no example');
  const identifiers = [{ system: 'https://clinic.example/patients', value: `killed-${number}` }];
  return { ...exam, id: `${exam.id}-${number}`, subject: { identifiers, birthDate: '2001' } };
}

describe.each(['R4', 'R5'] as const)('a delivery to a real server of %s', (fhirVersion) => {
  let server: FhirServer;
  let folder: string;
  let number = 0;
  const transaction = (exam: Exam) =>
    toBundleOrThrow(exam, { ...clinic, bundleType: 'transaction', fhirVersion });
  const pieces = orThrow('cut', cutBundle(transaction(lesionOf(0)), { most: MOST })).length;

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'resumed-'));
    server = await startServer({ validate: false, fhirVersion });
    await storeExisting(server.url, [lesionOf(0)], fhirVersion);
    // What all exams share is there before: the site, the examiner, the instruments.
    await sent(lesionOf(0));
  }, 1_800_000);
  afterAll(async () => {
    await server.stop();
    rmSync(folder, { recursive: true, force: true });
  });

  /** What became of a process that sends the exam: its exit code, or the signal that ended it. */
  async function run(exam: Exam, kill?: Order['kill']): Promise<number | string> {
    const kept = join(folder, `${exam.id}.state.json`);
    const order: Order = { base: server.url, fhirVersion, most: MOST, exam, kept };
    const file = join(folder, `${exam.id}.order.json`);
    writeFileSync(file, JSON.stringify({ ...order, ...(kill && { kill }) }));
    const child = spawn(process.execPath, ['--import', 'tsx', program, file], {
      stdio: ['ignore', 'ignore', 'inherit'],
    });
    const [code, signal] = await once(child, 'close');
    return signal ?? code;
  }

  /** Sends the exam until it is stored, as an outbox does that is asked again and again. */
  async function sent(exam: Exam): Promise<void> {
    let code: number | string = 'not run';
    for (let attempt = 0; attempt < 10 && code !== 0; attempt++) code = await run(exam);
    expect(code).toBe(0);
  }

  async function held(): Promise<Record<string, unknown>> {
    const types = new Set(transaction(lesionOf(0)).entry?.map((one) => one.resource?.resourceType));
    const counts: [string, unknown][] = [];
    for (const type of types) {
      const answer = await fetch(`${server.url}/${type}?_summary=count`, {
        headers: { 'cache-control': 'no-cache' },
      });
      const { total } = fromJson(await answer.text()).value as { total?: unknown }; // of the server under test
      counts.push([String(type), Number(total)]);
    }
    return Object.fromEntries(counts);
  }

  /** How many resources of each type a delivery adds, and whether the server holds the exam as sent. */
  async function delivered(kill?: Order['kill']) {
    number += 1;
    const exam = lesionOf(number);
    const before = await held();
    if (kill !== undefined) expect(await run(exam, kill)).toBe('SIGKILL');
    await sent(exam);
    const after = await held();
    const added = Object.keys(after).map((type) => [
      type,
      Number(after[type]) - Number(before[type]),
    ]);
    const state = JSON.parse(readFileSync(join(folder, `${exam.id}.state.json`), 'utf8'));
    const to = { base: server.url, timeout: 300_000 };
    const { changes, exchanges: _, ...found } = await readBack(transaction(exam), to, state);
    const changed = changes.filter(({ allowed }) => !allowed);
    return { added: Object.fromEntries(added), changed, ...found };
  }

  const moments: readonly Moment[] = ['kept', 'not-kept', 'in-flight'];
  const kills = moments.flatMap((moment) =>
    Array.from({ length: pieces - 1 }, (_, at) => [at + 1, moment] as const),
  );

  it(`killed between any two of ${pieces} bundles and started again, ends as one that was not`, async () => {
    expect(pieces).toBeGreaterThanOrEqual(4);
    const steady = await delivered();
    expect(steady).toMatchObject({ same: true, changed: [], missing: [], doubled: [], unread: [] });
    expect(steady.added['Patient']).toBe(1);
    for (const [after, moment] of kills) {
      expect(await delivered({ after, moment }), `${moment} after ${after}`).toEqual(steady);
    }
  }, 3_600_000);
});
