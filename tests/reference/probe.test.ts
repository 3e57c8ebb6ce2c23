import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { optionalParts } from '../../src/model/optional-parts.ts';
import { fromBundle } from '../../src/read/from-bundle.ts';
import { probeServer } from '../../src/testing/probe/probe-server.ts';
import type { ProbeReport } from '../../src/testing/probe/report/report.ts';
import { probeText } from '../../src/testing/probe/report/report-text.ts';
import { sampleExam } from '../../src/testing/sample-exam.ts';
import { withOnly } from '../../src/testing/without.ts';
import { clinic } from '../clinic.ts';
import { extensionsPack } from './definitions.ts';
import {
  entryAt,
  inBatches,
  placesOf,
  resourcesAt,
  send,
  storeAndRead,
  storeExisting,
  transactionOf,
} from './exam-store.ts';
import { exampleExams, seededExams } from './exams.ts';
import { type FhirServer, startServer } from './server.ts';

let server: FhirServer;
let report: ProbeReport;

beforeAll(async () => {
  const packs = await extensionsPack();
  const load = packs.filter(({ version }) => version === 'R4').map(({ folder }) => folder);
  server = await startServer({ validate: true, load });
  // A first transaction takes long where other suites share the processors.
  report = await probeServer(server.url, { clean: true, timeout: 300_000, totalTime: 1_800_000 });
}, 1_800_000);

afterAll(async () => {
  await server.stop();
});

describe('a probe of a real server', () => {
  it('passes every step and leaves nothing behind', () => {
    const told = probeText(report);
    expect(
      report.steps.map(({ id, verdict }) => `${id} ${verdict}`),
      told,
    ).toEqual(report.steps.map(({ id }) => `${id} passed`));
    expect(report.passed, told).toBe(true);
  });

  it('finds that the server rewrites references, adds meta, and changes nothing else', () => {
    expect(new Set(report.changes.map(({ what }) => what))).toEqual(new Set(['reference', 'meta']));
  });

  it('has none of its faults stored', () => {
    const stored = report.faults.filter(({ verdict }) => verdict === 'accepted');
    expect(stored).toEqual([]);
    // A text that ends in the middle makes this server fail (500) in place of refusing it (400).
    const failed = report.faults.filter(({ verdict }) => verdict === 'failed');
    expect(failed.map(({ fault, status }) => `${fault} ${status}`)).toEqual(['cut-off 500']);
    expect(report.faults.length).toBeGreaterThan(20);
  });
});

describe('exams that a real server has stored', () => {
  it.each([
    ['all examples', exampleExams],
    ['300 seeded exams', () => [...seededExams()]],
  ])(
    'come back equal: %s',
    async (_, make) => {
      const exams = make().map(({ exam }) => exam);
      await storeExisting(server.url, exams);
      let equal = 0;
      // One at a time: conditional creations of two transactions wait for each other in H2.
      for (const batch of inBatches(exams, 150)) {
        const bundles = await storeAndRead(server.url, batch);
        for (const [at, bundle] of bundles.entries()) {
          const { value, remainder } = fromBundle(bundle, clinic);
          expect(value, batch[at]?.id).toEqual(batch[at]);
          expect(remainder.filter(({ kind }) => kind === 'content')).toEqual([]);
          equal += 1;
        }
      }
      expect(equal).toBe(exams.length);
    },
    1_800_000,
  );
});

describe('an exam that is sent again with half of its statements', () => {
  it('leaves the others on the server as entered in error, and is read back without them', async () => {
    const earlier = sampleExam(7, { size: 'usual' });
    const statements = earlier.statements.filter((_, at) => at % 2 === 0);
    const exam = withOnly(earlier, statements, new Set(optionalParts));
    await storeExisting(server.url, [earlier]);
    const places = placesOf(await send(server.url, transactionOf(earlier)));
    await send(server.url, transactionOf(exam, earlier));
    const found = [...(await resourcesAt(server.url, places)).values()];
    const kept = new Set((transactionOf(exam).entry ?? []).map(({ resource }) => resource?.id));
    const gone = found.filter(
      ({ id, resourceType }) => resourceType === 'Observation' && !kept.has(id),
    );
    expect(gone.length).toBeGreaterThanOrEqual(earlier.statements.length - statements.length);
    expect(new Set(gone.map((one) => 'status' in one && one.status))).toEqual(
      new Set(['entered-in-error']),
    );
    const entry = found.map((resource) => entryAt(server.url, resource));
    const read = fromBundle({ resourceType: 'Bundle', type: 'collection', entry }, clinic);
    expect(read.value?.statements.map(({ key }) => key)).toEqual(
      exam.statements.map(({ key }) => key),
    );
  }, 300_000);
});
