import { describe, expect, it } from 'vitest';
import {
  type Exam,
  type ExportOptions,
  fromBundle,
  type Issue,
  toBundle,
  toBundleOrThrow,
  toJson,
  toNdjson,
} from '../../src/index.ts';
import { sampleExam, sampleExams } from '../../src/testing/index.ts';
import { clinic } from '../clinic.ts';
import { everyExport } from '../read/round-trip.ts';
import { sampled } from '../sampled.ts';

const exam = sampleExam(3, { size: 'small' });
const ours = 'https://face-neck-fhir.example/fhir/NamingSystem';

function told(issues: readonly Issue[]): string[] {
  return issues
    .filter(({ severity }) => severity === 'error')
    .map(({ code, path }) => `${code} ${path.join('.')}`);
}

/** Options of a caller, some without types, and what each lacks. */
const lacking: readonly (readonly [string, object, readonly string[]])[] = [
  ['nothing', {}, ['missing-property identity']],
  ['undefined', { identity: undefined }, ['missing-property identity']],
  ['null', { identity: null }, ['wrong-type identity']],
  ['a number', { identity: 7 }, ['wrong-type identity']],
  ['an empty text', { identity: '' }, ['invalid-value identity']],
  ['a word', { identity: 'records' }, ['invalid-value identity']],
  [
    'a URI with a space',
    { identity: 'https://clinic.example/my records' },
    ['invalid-value identity'],
  ],
  [
    'an OID, below which nothing can stand',
    { identity: 'urn:oid:1.2.3' },
    ['invalid-value identity'],
  ],
  [
    'the system of exams alone',
    { identity: { exam: 'https://clinic.example/exams' } },
    ['missing-property identity.statement', 'missing-property identity.tracking'],
  ],
  [
    'a malformed one among three',
    {
      identity: { exam: 'urn:oid:1.2.3', statement: 'urn:oid:x', tracking: 'https://a.example/t' },
    },
    ['invalid-value identity.statement'],
  ],
  [
    'our own, written out',
    { identity: { exam: `${ours}/exam`, statement: 'urn:oid:1.2.3', tracking: 'urn:oid:1.2.4' } },
    ['missing-property identity.exam'],
  ],
  [
    'our own base',
    { canonicalBase: 'https://face-neck-fhir.example/fhir' },
    ['missing-property identity'],
  ],
  ['a base that is no URI', { canonicalBase: 'fhir' }, ['invalid-value canonicalBase']],
];

const enough: readonly object[] = [
  clinic,
  { identity: 'https://clinic.example/records/' },
  { identity: { exam: 'urn:oid:1.2.3', statement: 'urn:oid:1.2.4', tracking: 'urn:oid:1.2.5' } },
  { canonicalBase: 'https://clinic.example/fhir' },
];

describe('what is stored says whose it is', () => {
  it.each(lacking)('a transaction with %s is refused', (_, options, wanted) => {
    for (const fhirVersion of ['R4', 'R4B', 'R5'] as const) {
      const made = toBundle(exam, { ...options, fhirVersion, bundleType: 'transaction' });
      expect({ ok: made.ok, told: told(made.issues) }).toEqual({ ok: false, told: wanted });
    }
    const { lines, issues } = toNdjson(exam, options);
    expect({ size: lines.size, told: told(issues) }).toEqual({
      size: 0,
      told: wanted.map((one) => one.replace(' ', ' 0.')),
    });
  });

  it('tells the form that is expected', () => {
    const { issues } = toBundle(exam, { bundleType: 'transaction' });
    expect(issues.map(({ expected }) => expected)).toEqual([
      'an absolute URI of yours, such as https://clinic.example/records',
    ]);
  });

  it.each(enough)('with %j it is made', (options) => {
    const made = toBundle(exam, { ...options, bundleType: 'transaction' });
    expect(told(made.issues)).toEqual([]);
    expect(fromBundle(made.value, options).value).toEqual(exam);
    expect(toNdjson(exam, options).lines.size).toBeGreaterThan(3);
  });

  it('and of whom: a name alone tells nobody from another', () => {
    const unnamed: Exam = { ...exam, subject: { name: { text: 'Invented Picker' } } };
    const made = toBundle(unnamed, { ...clinic, bundleType: 'transaction' });
    expect(told(made.issues)).toEqual(['missing-property subject']);
    expect(told(toNdjson(unnamed, clinic).issues)).toEqual(['missing-property 0.subject']);
    for (const bundleType of ['collection', 'document'] as const)
      expect(toBundle(unnamed, { bundleType }).ok).toBe(true);
  });

  it.each([
    '417',
    'Patient',
    'Patient/',
    '/Patient/1',
    'patient/1',
    'Patient/a b',
    'Patient/1/2',
    '#p',
    'urn:uuid:1',
    'Patient?name=x',
    'Practitioner/1',
    'ftp://a.example/Patient/1',
  ])('a reference such as %s is refused', (reference) => {
    const wrong: Exam = { ...exam, subject: { reference } };
    expect(told(toBundle(wrong, { ...clinic, bundleType: 'transaction' }).issues)).toHaveLength(1);
  });
});

/** Every id of ours (all are UUIDs) and every identifier of a bundle. */
function namesIn(bundle: unknown): ReadonlySet<string> {
  const text = toJson(bundle);
  const names = new Set(text.match(/[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}/g));
  JSON.parse(text, (_, value) => {
    if (typeof value?.system === 'string' && typeof value.value === 'string')
      names.add(`${value.system}|${value.value}`);
    return value;
  });
  return names;
}

describe('two clinics with the same numbers', () => {
  it.each([...everyExport.entries()])('never meet, way %i of storing', (at, options) => {
    const other = (own: Exam): Exam =>
      JSON.parse(toJson(own).replaceAll('https://clinic.example', 'https://quay.example'));
    const elsewhere: ExportOptions = { ...options, identity: 'https://quay.example/records' };
    let shared = 0;
    for (const own of sampleExams(at * 5 + 1, sampled(1, 5), {
      size: at % 2 === 0 ? 'small' : 'edge',
    })) {
      const theirs = namesIn(toBundleOrThrow(other(own), elsewhere));
      const names = namesIn(toBundleOrThrow(own, options));
      shared += names.size;
      const met = [...names].filter((name) => theirs.has(name));
      expect(met, own.id).toEqual([]);
    }
    expect(shared).toBeGreaterThan(sampled(50, 100));
  });
});
