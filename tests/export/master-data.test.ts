import { describe, expect, it } from 'vitest';
import type { ExportOptions, MasterDataMode } from '../../src/index.ts';
import { type Exam, toBundle, toBundleOrThrow, toJson } from '../../src/index.ts';
import { fromBundle } from '../../src/read/from-bundle.ts';
import { sampleExams } from '../../src/testing/sample-exam.ts';
import { validateBundle } from '../../src/validate/versions/r4.ts';
import { clinic } from '../clinic.ts';
import { sampled } from '../sampled.ts';
import { type FakeServer, startFake } from '../testing/fake-server.ts';

const person = { system: 'https://clinic.example/patients', value: 'P-12990' };
const staff = { system: 'https://clinic.example/staff', value: 'N-7' };
const site = { system: 'https://clinic.example/sites', value: 'quay, north|2' };

/** Two exams of one person by one nurse with one dermatoscope, of which each says something else. */
function exams(): readonly [Exam, Exam] {
  const [one, two] = [...sampleExams(5, 2, { size: 'small' })].map((exam, at) => {
    const { encounter: _, ...rest } = exam;
    return {
      ...rest,
      subject: { identifiers: [person], ...(at === 0 && { birthDate: '2001' }) },
      examiners: exam.examiners.map((examiner, place) =>
        place === 0
          ? { key: examiner.key, identifiers: [staff], role: 'harbour nurse' }
          : { key: examiner.key, name: { text: `Witness ${place}` } },
      ),
      organization: { identifiers: [site], name: 'Quay clinic' },
      instruments: [
        { key: 'scope', type: 'dermatoscope', serial: 'D-2291', magnification: `${10 + at}` },
        { key: 'scope-2', type: 'otoscope', detail: `speculum ${at + 4} mm` },
        ...(exam.instruments ?? []),
      ],
    } as unknown as Exam; // at least one examiner, as before
  });
  if (one === undefined || two === undefined) throw new Error('two exams were asked for');
  return [one, two];
}

const transaction = (masterData?: MasterDataMode): ExportOptions => ({
  ...clinic,
  bundleType: 'transaction',
  ...(masterData && { masterData }),
});

async function post(server: FakeServer, bundle: object): Promise<number> {
  const answer = await fetch(server.url, { method: 'POST', body: toJson(bundle) });
  return answer.status;
}

function countOf(server: FakeServer, type: string): number {
  return [...server.stored.keys()].filter((name) => name.startsWith(`${type}/`)).length;
}

describe('two exams of one person on a server', () => {
  it.each(['match', 'own'] as const)(
    'share person, place, clinician and devices: %s',
    async (mode) => {
      const server = await startFake();
      const both = exams();
      for (const exam of both) {
        expect(await post(server, toBundleOrThrow(exam, transaction(mode)))).toBe(200);
      }
      for (const type of ['Patient', 'Organization']) expect(countOf(server, type), type).toBe(1);
      expect(countOf(server, 'DiagnosticReport')).toBe(2);
      const named = (type: string, word: string): number =>
        [...server.stored].filter(
          ([name, { resource }]) => name.startsWith(type) && toJson(resource).includes(word),
        ).length;
      expect(named('Practitioner/', 'N-7')).toBe(1);
      expect(named('PractitionerRole/', 'harbour nurse')).toBe(1);
      expect(named('Device/', 'D-2291')).toBe(1);
      await server.stop();
    },
  );

  it.each(['put', 'conditional'] as const)(
    'and a fuller record stays untouched: %s',
    async (mode) => {
      const server = await startFake();
      const fuller = {
        resourceType: 'Patient',
        id: '417',
        active: true,
        identifier: [person, { system: 'https://land.example/id', value: '88' }],
        name: [{ family: 'Picker', given: ['Ann', 'Maria'] }],
        birthDate: '2001-03-04',
        address: [{ city: 'Old Harbour' }],
        generalPractitioner: [{ display: 'Dr. Quay' }],
      };
      await post(server, {
        resourceType: 'Bundle',
        type: 'transaction',
        entry: [
          {
            fullUrl: 'https://clinic.example/fhir/Patient/417',
            resource: fuller,
            request: { method: 'PUT', url: 'Patient/417' },
          },
        ],
      });
      const before = server.stored.get('Patient/417');
      for (const exam of exams()) {
        const options = { ...transaction(), transaction: mode };
        expect(await post(server, toBundleOrThrow(exam, options))).toBe(200);
      }
      expect(countOf(server, 'Patient')).toBe(1);
      expect(server.stored.get('Patient/417')).toBe(before);
      const reports = [...server.stored].filter(([name]) => name.startsWith('DiagnosticReport/'));
      for (const [, { resource }] of reports) {
        expect(resource['subject']).toMatchObject({ reference: 'Patient/417' });
      }
      await server.stop();
    },
  );
});

describe('the requests of a transaction', () => {
  const [exam] = exams();
  const requestsFor = (options: ExportOptions, type: string): unknown[] =>
    (toBundleOrThrow(exam, { ...transaction(), ...options }).entry ?? []).flatMap(
      ({ resource, request }) => (resource?.resourceType === type ? [request] : []),
    );

  it('never update what is only matched, in either mode', () => {
    const modes = [{ transaction: 'put' }, { transaction: 'conditional' }] as const;
    for (const sample of sampleExams(300, sampled(3, 30), { size: 'edge' })) {
      for (const mode of modes) {
        const { entry = [] } = toBundleOrThrow(sample, { ...transaction(), ...mode });
        const updates = entry.filter(
          ({ resource, request }) =>
            /^(Patient|Practitioner|Organization|Encounter)$/.test(resource?.resourceType ?? '') &&
            request?.method === 'PUT' &&
            request.url?.includes('?'),
        );
        // Whoever is identified within the exam alone is nobody else's.
        const others = updates.filter(({ request }) => !request?.url?.includes('examiner'));
        expect(others, sample.id).toEqual([]);
      }
    }
  });

  it('escape what separates the parts of a search', () => {
    expect(requestsFor({}, 'Organization')).toEqual([
      {
        method: 'POST',
        url: 'Organization',
        ifNoneExist: 'identifier=https%3A%2F%2Fclinic.example%2Fsites%7Cquay%5C%2C%20north%5C%7C2',
      },
    ]);
  });

  it('follow the mode of each kind on its own', () => {
    const masterData = { patient: 'reference', organization: 'own' } as const;
    expect(requestsFor({ masterData }, 'Patient')).toEqual([]);
    expect(requestsFor({ masterData }, 'Organization')).toMatchObject([{ method: 'PUT' }]);
    expect(requestsFor({ masterData }, 'Practitioner')).toMatchObject([{ method: 'POST' }]);
    const { value, issues } = toBundle(exam, { ...transaction(), masterData });
    const report = value?.entry?.find(
      ({ resource }) => resource?.resourceType === 'DiagnosticReport',
    );
    const wanted = 'Patient?identifier=https%3A%2F%2Fclinic.example%2Fpatients%7CP-12990';
    expect(report?.resource).toMatchObject({ subject: { reference: wanted, identifier: person } });
    expect(issues.map(({ code, path }) => [code, path])).toContainEqual([
      'not-exported',
      ['subject', 'birthDate'],
    ]);
  });

  it('are not made where nothing says which record is meant', () => {
    const { identifiers: _, ...nameless } = { ...exam.subject, name: { text: 'Somebody' } };
    const { value, issues } = toBundle(
      { ...exam, subject: nameless },
      { ...transaction(), masterData: { patient: 'reference' } },
    );
    expect(value).toBeUndefined();
    expect(issues.map(({ code, path }) => [code, path])).toEqual([
      ['missing-property', ['subject']],
    ]);
  });

  it.each(['match', 'own', 'reference'] as const)(
    'are valid, and the exam comes back: %s',
    (mode) => {
      let compared = 0;
      for (const sample of [...exams(), ...sampleExams(7, sampled(3, 20), { size: 'edge' })]) {
        const masterData = {
          patient: mode,
          practitioner: mode,
          organization: mode,
          encounter: mode,
        };
        const made = toBundle(sample, { ...transaction(), masterData });
        if (made.value === undefined) continue;
        const { issues } = validateBundle(made.value);
        expect(issues.filter(({ severity }) => severity === 'error')).toEqual([]);
        // What does not fit into a reference is told, and then is not there.
        if (made.issues.some(({ code }) => code === 'not-exported')) continue;
        const { value, remainder } = fromBundle(made.value, clinic);
        expect(value, sample.id).toEqual(sample);
        expect(remainder, sample.id).toEqual([]);
        compared += 1;
      }
      expect(compared).toBeGreaterThan(mode === 'reference' ? 0 : sampled(2, 5));
    },
  );
});

describe('a document about those whom the receiver holds', () => {
  it.each(['R4', 'R4B', 'R5'] as const)(
    'holds them as far as they are known, %s',
    (fhirVersion) => {
      const [exam] = exams();
      const known = {
        ...exam,
        subject: { reference: 'Patient/417', identifiers: [person, staff], birthDate: '2001' },
        examiners: [
          { key: 'nurse', reference: 'https://clinic.example/fhir/Practitioner/9' },
          { key: 'scribe', reference: 'Practitioner/10', role: 'scribe' },
        ],
        organization: { reference: 'Organization/3' },
        encounter: { reference: 'Encounter/12', class: 'ambulatory' },
      } as unknown as Exam; // as typed, with statements that name no examiner
      const said = { ...known, statements: known.statements.filter((one) => !one.examiner) };
      const { conclusion: _, history: __, ...plain } = said;
      const made = toBundle(plain as Exam, { bundleType: 'document', fhirVersion });
      expect(made.issues).toEqual([]);
      const types = (made.value?.entry ?? []).map(({ resource }) => resource?.resourceType);
      for (const type of ['Patient', 'Practitioner', 'Organization', 'Encounter']) {
        expect(types, type).toContain(type);
      }
      const text = toJson(made.value);
      const targets = new Set([...text.matchAll(/"fullUrl":"([^"]+)"/g)].map(([, url]) => url));
      for (const [, reference = ''] of text.matchAll(/"reference":"([^"]+)"/g)) {
        if (!reference.startsWith('Device/')) expect(targets, reference).toContain(reference);
      }
      const { value, remainder } = fromBundle(made.value);
      expect(value).toEqual(plain);
      expect(remainder).toEqual([]);
    },
  );
});
