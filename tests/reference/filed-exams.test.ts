import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { examples } from '../../examples/all-exams.ts';
import type { Exam } from '../../src/index.ts';
import { sampleExams } from '../../src/testing/sample-exam.ts';
import { storeExisting } from './exam-store.ts';
import { seededCount } from './exams.ts';
import { changedFields, fileExam, person, storeFuller } from './filed-exams.ts';
import { type FhirServer, startServer } from './server.ts';

const named = (name: string): Exam => {
  const exam = examples.get(name);
  if (exam === undefined) throw new Error(`no example ${name}`);
  return exam;
};

// R4 is held by delivery.test.ts and probe.test.ts.
describe('a real server of R5', () => {
  const fhirVersion = 'R5';
  let server: FhirServer;

  beforeAll(async () => {
    server = await startServer({ validate: true, fhirVersion });
  }, 1_800_000);
  afterAll(async () => {
    await server.stop();
  });

  it('takes the examples and gives them back equal, each with one Patient', async () => {
    await storeExisting(server.url, [...examples.values()], fhirVersion);
    for (const exam of examples.values()) {
      const filed = await fileExam(server.url, exam, { most: 500, fhirVersion });
      console.info(JSON.stringify(filed));
      expect(filed).toMatchObject({ result: 'stored', equal: true });
      expect(filed.patients).toBeLessThanOrEqual(1);
    }
  }, 3_600_000);

  it('takes seeded exams and gives them back equal', async () => {
    const exams = [...sampleExams(1, Math.min(20, seededCount))];
    await storeExisting(server.url, exams, fhirVersion);
    for (const exam of exams) {
      const filed = await fileExam(server.url, exam, { most: 160, fhirVersion });
      expect(filed, exam.id).toMatchObject({ result: 'stored', equal: true });
    }
  }, 3_600_000);

  it.each([25, 50, 160, 500])(
    'that knows the patient better keeps its record, cut at %i',
    async (most) => {
      const before = await storeFuller(server.url);
      // The yearly check alone has more than 500 entries.
      const large = most === 500 ? ['yearly-check'] : [];
      for (const name of ['skin-lesion', 'neck-lump', ...large]) {
        const exam = { ...named(name), subject: { identifiers: [person], birthDate: '2001' } };
        const filed = await fileExam(server.url, exam, { most, fhirVersion });
        console.info(JSON.stringify(filed));
        expect(filed).toMatchObject({ result: 'stored', patients: 1 });
      }
      expect(await changedFields(server.url, before)).toEqual([]);
    },
    1_800_000,
  );
});
