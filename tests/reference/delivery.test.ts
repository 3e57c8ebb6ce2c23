import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { examples } from '../../examples/all-exams.ts';
import { deliver, readCapabilities, settingsFor } from '../../src/deliver/index.ts';
import { type Exam, fromJson, toBundleOrThrow } from '../../src/index.ts';
import { clinic } from '../clinic.ts';
import { send, storeExisting } from './exam-store.ts';
import { type FhirServer, startServer } from './server.ts';

let server: FhirServer;

beforeAll(async () => {
  server = await startServer({ validate: false });
  await storeExisting(server.url, [...exams, large]);
}, 1_800_000);

afterAll(async () => {
  await server.stop();
});

const person = { system: 'https://clinic.example/patients', value: 'P-12990' };

function ofPerson(name: string): Exam {
  const exam = examples.get(name);
  if (exam === undefined) throw new Error(`no example ${name}`);
  return { ...exam, subject: { identifiers: [person], birthDate: '2001' } };
}

const exams = ['skin-lesion', 'neck-lump'].map(ofPerson);
/** More entries than the largest cut has, which the others have not. */
const large = ofPerson('yearly-check');

async function read(path: string): Promise<Record<string, unknown>> {
  const answer = await fetch(`${server.url}/${path}`, { headers: { 'cache-control': 'no-cache' } });
  return fromJson(await answer.text()).value as Record<string, unknown>; // an answer of the server under test
}

/** A Patient of whom the exams know a part. */
const fuller = {
  resourceType: 'Patient',
  id: 'fuller',
  active: true,
  identifier: [person, { system: 'https://land.example/id', value: '88' }],
  name: [{ family: 'Picker', given: ['Ann', 'Maria'] }],
  telecom: [{ system: 'phone', value: '555 0100' }],
  birthDate: '2001-03-04',
  address: [{ city: 'Old Harbour' }],
};

describe('a real server that knows the patient better than the exams', () => {
  it.each([
    [25, exams],
    [50, exams],
    [160, exams],
    [500, [...exams, large]],
  ] as const)(
    'keeps its record, and gets the exams: at most %i entries',
    async (most, sent) => {
      await send(server.url, {
        resourceType: 'Bundle',
        type: 'transaction',
        entry: [{ resource: fuller, request: { method: 'PUT', url: 'Patient/fuller' } }],
      });
      const before = await read('Patient/fuller');
      const capabilities = await readCapabilities({ base: server.url });
      if (capabilities === undefined) throw new Error('the server declares nothing');
      const settings = settingsFor(capabilities);
      for (const exam of sent) {
        const bundle = toBundleOrThrow(exam, {
          ...clinic,
          bundleType: 'transaction',
          ...settings.export,
        });
        const options = { most, ...settings.deliver };
        const { value } = await deliver(bundle, { base: server.url, timeout: 300_000 }, options);
        expect({ result: value?.result, codes: value?.codes }).toEqual({
          result: 'stored',
          codes: undefined,
        });
      }
      expect(await read('Patient/fuller')).toEqual(before);
      const found = await read(
        `Patient?identifier=${person.system}|${person.value}&_summary=count`,
      );
      expect(found['total']).toBe(1);
      const reports = await read('DiagnosticReport?patient=fuller&_summary=count');
      expect(reports['total']).toBe(sent.length);
    },
    900_000,
  );
});
