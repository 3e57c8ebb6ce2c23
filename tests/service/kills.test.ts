import { describe, expect, it } from 'vitest';
import { createRandom } from '../../src/testing/random.ts';
import { examsToSend, type Sent } from './exams.ts';
import { type Behaviour, type FhirServer, startFhirServer } from './fhir-server.ts';
import { countsOf, drained, freshDatabase, post, type Service, startService } from './service.ts';

const random = createRandom(20250901);
const kills = 20;
const perRound = 8;

/** Mostly sound, with every way to fail that leaves the sender in doubt. */
const moods: readonly Behaviour[] = [
  ...Array<Behaviour>(8).fill('answer'),
  'busy',
  'too-many',
  'drop',
  'half',
  'store-and-drop',
  'html',
];

function wait(milliseconds: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, milliseconds));
}

/** Posts all at once; adds those that were acknowledged. */
async function load(service: Service, exams: readonly Sent[], done: Set<Sent>): Promise<void> {
  await Promise.all(
    exams.map(async (exam) => {
      const status = await post(service.url, exam.text);
      if (status === 201 || status === 200) done.add(exam);
    }),
  );
}

/** The FHIR server goes away for a moment in every fourth round. */
async function disturb(fhir: FhirServer, round: number): Promise<void> {
  if (round % 4 !== 3) return;
  await fhir.kill();
  await wait(random.int(5, 50));
  await fhir.restart();
}

describe('the service, killed 20 times under load', () => {
  it('loses no exam that it acknowledged and passes none on twice', async () => {
    const exams = examsToSend(1, kills * perRound);
    const fhir = await startFhirServer();
    fhir.behave(() => random.pick(moods));
    const settings = { DATABASE: freshDatabase(), FHIR_URL: fhir.url, FHIR_TIMEOUT_MS: '2000' };
    const acknowledged = new Set<Sent>();
    let open: Sent[] = [];
    let killedWithRequestsOpen = 0;
    let killedWithOutboxFull = 0;

    for (let round = 0; round < kills; round++) {
      const service = await startService(settings);
      if (round > 0 && (await countsOf(service.url)).waiting > 0) killedWithOutboxFull += 1;
      const batch = [...open, ...exams.slice(round * perRound, (round + 1) * perRound)];
      const before = acknowledged.size;
      const loading = load(service, batch, acknowledged);
      const disturbing = disturb(fhir, round);
      // After so many answers and not after a time, so that it does not matter how fast the machine
      // is; every third kill comes early, with most requests open.
      const answers = round % 3 === 0 ? random.int(0, 2) : random.int(3, batch.length);
      while (acknowledged.size - before < answers) await wait(2);
      await service.kill();
      await loading;
      await disturbing;
      open = batch.filter((one) => !acknowledged.has(one));
      if (open.length > 0) killedWithRequestsOpen += 1;
    }

    // What was never acknowledged is sent again by its sender; nothing else is.
    const service = await startService(settings);
    await load(service, open, acknowledged);
    const counts = await drained(service.url);
    await service.end();
    await fhir.kill();

    expect(acknowledged.size).toBe(exams.length);
    expect(counts).toEqual({ stored: exams.length, waiting: 0, refused: 0 });
    const wanted = exams.flatMap(({ resources }) => resources);
    const lost = wanted.filter((url) => !fhir.resources.has(url));
    const double = [...fhir.resources].filter(([, { versions }]) => versions !== 1);
    const reports = [...fhir.resources.keys()].filter((url) => url.startsWith('DiagnosticReport/'));
    expect({ lost, double, reports: reports.length, resources: fhir.resources.size }).toEqual({
      lost: [],
      double: [],
      reports: exams.length,
      resources: new Set(wanted).size,
    });
    // Kills at idle moments would prove nothing.
    expect(killedWithRequestsOpen).toBeGreaterThanOrEqual(5);
    expect(killedWithOutboxFull).toBeGreaterThanOrEqual(5);
    expect(fhir.received()).toBeGreaterThan(exams.length);
    console.log(
      `${exams.length} exams in, ${reports.length} out, ${lost.length} lost, ${double.length} double; ` +
        `${killedWithRequestsOpen} kills with open requests, ${killedWithOutboxFull} with a full outbox, ` +
        `${fhir.received()} transactions received`,
    );
  });
});
