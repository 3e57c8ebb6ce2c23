import { toBundleOrThrow } from '../../../src/export/to-bundle.ts';
import { german } from '../../../src/terminology/languages/de.ts';
import { sampleExam } from '../../../src/testing/sample-exam.ts';
import { canary } from './mutate.ts';

/** Inputs that were found by damage and by attack, each with what was wrong with it. */
export interface Case {
  readonly target: string;
  readonly why: string;
  readonly input: () => unknown;
}

const system = 'https://quay.example/codes';
const row = { code: 'quay', display: 'Quay' };
const holes = (): unknown[] => {
  const list: unknown[] = [1, 2];
  delete list[0];
  return list;
};

/** Exams that were accepted and left as FHIR that is not valid. */
const people: readonly (readonly [why: string, parts: object])[] = [
  ['a name that says nothing', { subject: { name: {} } }],
  ['a subject that is an observation', { subject: { reference: 'Observation/1' } }],
  ['a subject inside nothing', { subject: { reference: '#x' } }],
  [
    'a subject of no bundle',
    { subject: { reference: 'urn:uuid:5b2c1a52-4d9f-4ed6-8ab0-1bd25d6b9a11' } },
  ],
  ['an organization that is a patient', { organization: { reference: 'Patient/1' } }],
  ['an examiner that is a device', { examiners: [{ key: 'nurse', reference: 'Device/1' }] }],
  ['a visit that is a patient', { encounter: { reference: 'Patient/1' } }],
  ['a system that is no OID', { subject: { identifiers: [{ system: 'urn:oid:a', value: '1' }] } }],
  [
    'an identifier whose use is undefined',
    { subject: { identifiers: [{ system, value: '1', use: undefined }] } },
  ],
];

const labels = (security: unknown) => ({ allowDraft: true, filing: { security } });

function withBigint(): unknown {
  const exam = sampleExam(1, { size: 'small' });
  const [first, ...others] = exam.statements;
  return { exam: { ...exam, statements: [{ ...first, methods: [10n] }, ...others] } };
}

export const corpus: readonly Case[] = [
  {
    target: 'createCatalogue',
    why: 'rows that are none',
    input: () => ({ system, regions: [null] }),
  },
  {
    target: 'createCatalogue',
    why: 'lists inside a row that are none',
    input: () => ({ system, findings: [{ ...row, regions: 5 }] }),
  },
  {
    target: 'createCatalogue',
    why: 'a list of negatives without entries',
    input: () => ({ system, negatives: [{ ...row, section: 'skin' }] }),
  },
  {
    target: 'createCatalogue',
    why: 'maps that are text',
    input: () => ({ system, findings: [{ ...row, regions: [], maps: 'x' }] }),
  },
  {
    target: 'checkExam settings',
    why: 'a judgement that is nothing',
    input: () => ({ judgements: holes() }),
  },
  {
    target: 'checkExam settings',
    why: 'judgements that are no list',
    input: () => ({ judgements: {} }),
  },
  {
    target: 'checkExam settings',
    why: 'rule sets that are no list',
    input: () => ({ ruleSets: 5 }),
  },
  {
    target: 'checkExam settings',
    why: 'a dismissal without a reason',
    input: () => ({ dismissals: [{ prompt: 'R16' }] }),
  },
  {
    target: 'compileProfiles',
    why: 'value sets that import each other, more than calls can stand within calls',
    input: () =>
      Array.from({ length: 5000 }, (_, at) => ({
        resourceType: 'ValueSet',
        url: `https://quay.example/ValueSet/${at}`,
        compose: { include: [{ valueSet: [`https://quay.example/ValueSet/${at + 1}`] }] },
      })),
  },
  { target: 'compileProfiles', why: 'no list', input: () => ({}) },
  {
    target: 'parse, check, export and validate',
    why: 'half a pair for an exam',
    input: () => '\ud800',
  },
  { target: 'compileProfiles', why: 'nothing', input: () => undefined },
  { target: 'amendExam', why: 'no exam', input: () => ({ step: {} }) },
  { target: 'amendExam', why: 'nothing', input: () => undefined },
  {
    target: 'toHtml',
    why: 'a status by a name that every object has',
    input: () => ({ ...sampleExam(5, { size: 'small' }), status: 'toString' }),
  },
  {
    target: 'toHtml',
    why: 'a sex by a name that every object has',
    input: () => {
      const exam = sampleExam(5, { size: 'small' });
      return { ...exam, subject: { ...exam.subject, gender: 'toString' } };
    },
  },
  {
    target: 'fromBundle',
    why: 'half a pair in the number of the exam',
    input: () => {
      const bundle = structuredClone(toBundleOrThrow(sampleExam(5, { size: 'small' })));
      const report = bundle.entry?.find(
        ({ resource }) => resource?.resourceType === 'DiagnosticReport',
      );
      Object.assign(report?.resource ?? {}, { identifier: [{ system, value: 'a\ud800b' }] });
      return bundle;
    },
  },
  { target: 'toHtml', why: 'no exam', input: () => ({ statements: [null] }) },
  {
    target: 'toXml',
    why: 'an object of undefined alone',
    input: () => ({ resourceType: 'Observation', subject: { reference: undefined } }),
  },
  {
    target: 'validateBundle r4',
    why: 'a code of spaces, 5 MB',
    input: () => ({ resourceType: 'Observation', status: 'a'.concat(' a'.repeat(2.5e6)) }),
  },
  {
    target: 'codesFromCsv',
    why: '8 MB of rows',
    input: () => `source,code,system,target,relation\n${'a,b,c,d,e\n'.repeat(8e5)}`,
  },
  {
    target: 'licenceIssues',
    why: 'a code below a name that is a word of a patient',
    input: () => ({ [canary]: { coding: [{ system: 'http://snomed.info/sct', code: '1' }] } }),
  },
  {
    target: 'toXml',
    why: 'a word of a patient as a name beside a value',
    input: () => ({ resourceType: 'Observation', _status: { [canary]: 1 } }),
  },
  {
    target: 'signExam',
    why: 'a status that is a word of a patient',
    input: () => ({ exam: { ...sampleExam(1), status: canary }, step: { by: 'nurse', at: '' } }),
  },
  {
    target: 'validateBundle r5',
    why: 'a bigint in a code that components are compared with',
    input: () => {
      const code = { coding: [{ code: 10n }] };
      return { resourceType: 'Observation', code, component: [{ code }], valueInteger: 1 };
    },
  },
  {
    target: 'validateBundle r4',
    why: 'a request for a type that is a word of a patient',
    input: () => ({
      resourceType: 'Bundle',
      type: 'transaction',
      entry: [
        { resource: { resourceType: canary }, request: { method: 'POST', url: 'Observation' } },
      ],
    }),
  },
  { target: 'values told', why: 'a bigint for a code', input: () => withBigint() },
  {
    target: 'parse, check, export and validate',
    why: 'a coding whose version is there and undefined',
    input: () => {
      const exam = sampleExam(1, { size: 'small' });
      const codings = [{ system, version: undefined, code: 'a', display: undefined }];
      return { ...exam, statements: exam.statements.map((one) => ({ ...one, codings })) };
    },
  },
  {
    target: 'toBundle options',
    why: 'a tag in the form of one whose language has six letters',
    input: () => ({ allowDraft: true, language: { ...german, tag: canary } }),
  },
  { target: 'toBundle options', why: 'no options', input: () => null },
  { target: 'toBundle options', why: 'labels that are no codings', input: () => labels(5) },
  { target: 'toBundle options', why: 'a label without a code', input: () => labels([{}]) },
  { target: 'toBundle options', why: 'a catalogue that is none', input: () => ({ catalogue: {} }) },
  { target: 'toBundle options', why: 'a map that is none', input: () => ({ codes: 5 }) },
  {
    target: 'toBundle options',
    why: 'a base with spaces',
    input: () => ({ canonicalBase: 'a b' }),
  },
  {
    target: 'toHtml and toLetter language',
    why: 'no texts',
    input: () => ({ ...german, texts: 5 }),
  },
  {
    target: 'toHtml and toLetter language',
    why: 'no displays',
    input: () => ({ ...german, displays: null }),
  },
  ...people.map(([why, parts]) => ({
    target: 'parse, check, export and validate',
    why,
    input: () => {
      const { history: _, ...exam } = sampleExam(1, { size: 'small' });
      const [{ key }] = exam.examiners;
      const examiners = 'examiners' in parts ? [{ key, reference: 'Device/1' }] : exam.examiners;
      return { ...exam, ...parts, examiners };
    },
  })),
];
