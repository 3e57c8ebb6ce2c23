import { describe, expect, it } from 'vitest';
import { toBundle, toBundleOrThrow } from '../../../src/export/to-bundle.ts';
import type { Exam } from '../../../src/model/exam.ts';
import type { Statement } from '../../../src/model/statement.ts';
import { fromBundle } from '../../../src/read/from-bundle.ts';
import { versions } from '../round-trip.ts';
import { bare } from './bare-exam.ts';

function back(exam: Exam): Exam | undefined {
  return fromBundle(toBundleOrThrow(exam)).value;
}

describe('an exam comes back equal', () => {
  const note = (key: string, rest: object): Statement => ({
    key,
    kind: 'note',
    text: 'Seen',
    ...rest,
  });

  it.each<[string, Partial<Exam>]>([
    ['with nothing but its head', {}],
    [
      'whose subject, place and visit are references with a number and a name',
      {
        subject: {
          reference: 'Patient/1',
          identifiers: [{ system: 'urn:a', value: '1' }],
          name: { text: 'M. Kelsund' },
        },
        organization: {
          reference: 'https://clinic.example/Organization/1',
          identifiers: [{ system: 'urn:a', value: '2' }],
          name: 'Quay 7',
        },
        encounter: { reference: 'Encounter/1', identifiers: [{ system: 'urn:a', value: '3' }] },
      },
    ],
    [
      'whose examiners share one reference',
      {
        examiners: [
          { key: 'a', reference: 'Practitioner/1' },
          { key: 'b', reference: 'Practitioner/1', name: { text: 'K. Varrowby' } },
        ],
        statements: [note('n1', {}), note('n2', { examiner: 'b' })],
        history: [{ action: 'sign', by: 'b', at: '2024-03-01T09:30:00Z', version: 1 }],
      },
    ],
    [
      'whose examiners have roles and references',
      {
        examiners: [
          {
            key: 'a',
            reference: 'Practitioner/1',
            role: 'Works doctor',
            identifiers: [{ system: 'urn:a', value: '1' }],
            name: { text: 'K. Varrowby' },
          },
          { key: 'b', reference: 'Practitioner/1', role: 'Nurse' },
        ],
        statements: [note('n1', { examiner: 'b' })],
      },
    ],
    [
      'whose organization is a bare address',
      { organization: { reference: 'https://ravelport.example/health-station' } },
    ],
    [
      'whose instruments share one reference',
      {
        instruments: [
          {
            key: 'i',
            type: 'loupe',
            reference: 'Device/1',
            magnification: '2.50',
            serial: 'S',
            detail: 'scratched',
          },
          { key: 'j', type: 'penlight', reference: 'Device/1' },
        ],
        statements: [note('n1', { instruments: ['j', 'i'] })],
      },
    ],
    [
      'whose codings of the caller equal codings of ours',
      {
        statements: [
          {
            key: 'f',
            kind: 'finding',
            finding: 'pallor',
            presence: 'present',
            region: 'general',
            codings: [
              { system: 'http://snomed.info/sct', code: '398979000', display: 'Pale complexion' },
            ],
          },
        ],
      },
    ],
    [
      'that is withdrawn, with its conclusion',
      {
        status: 'entered-in-error',
        conclusion: { text: 'Well', concern: 'none', codings: [{ system: 'urn:a', code: 'x' }] },
        statements: [
          {
            key: 's',
            kind: 'region-state',
            region: 'general',
            state: 'not-examined',
            reason: { code: 'time' },
          },
          {
            key: 't',
            kind: 'region-state',
            region: 'general',
            state: 'not-applicable',
            reason: { code: 'time' },
          },
        ],
      },
    ],
    [
      'whose consent was told at the time of the exam',
      {
        consents: [
          { to: 'touch', answer: 'given', at: '2024-03-01T09:00:00Z' },
          { to: 'share', answer: 'refused' },
        ],
      },
    ],
  ])('%s', (_, parts) => {
    const exam = { ...bare, ...parts };
    for (const fhirVersion of versions) {
      const { value, remainder } = fromBundle(toBundleOrThrow(exam, { fhirVersion }));
      expect(value).toEqual(exam);
      expect(remainder).toEqual([]);
    }
  });

  it('as a draft, where drafts are exported', () => {
    const exam = { ...bare, status: 'draft' as const };
    expect(fromBundle(toBundleOrThrow(exam, { allowDraft: true })).value).toEqual(exam);
  });
});

describe('what holds by default comes back left out', () => {
  it.each<[string, Partial<Exam>, Partial<Exam>]>([
    [
      'the first examiner and the time of the exam',
      {
        statements: [
          { key: 'n', kind: 'note', text: 'Seen', examiner: 'a', at: bare.performed.start },
        ],
      },
      { statements: [{ key: 'n', kind: 'note', text: 'Seen' }] },
    ],
    [
      'a reason in the words of its display',
      {
        statements: [
          {
            key: 's',
            kind: 'region-state',
            region: 'general',
            state: 'not-examined',
            reason: { code: 'time', text: 'No time left' },
          },
        ],
      },
      {
        statements: [
          {
            key: 's',
            kind: 'region-state',
            region: 'general',
            state: 'not-examined',
            reason: { code: 'time' },
          },
        ],
      },
    ],
  ])('%s', (_, stated, left) => {
    expect(back({ ...bare, ...stated })).toEqual({ ...bare, ...left });
  });
});

describe('what stands beside a reference and does not fit into it', () => {
  it('is not exported, and that is said', () => {
    const exam: Exam = {
      ...bare,
      subject: {
        reference: 'Patient/1',
        birthDate: '1970',
        gender: 'female',
        name: { family: 'Kelsund' },
      },
      encounter: { reference: 'Encounter/1', class: 'field' },
    };
    const { issues, value } = toBundle(exam);
    expect(issues.map(({ code, severity, path }) => [code, severity, path.join('.')])).toEqual([
      ['not-exported', 'information', 'subject.name.family'],
      ['not-exported', 'information', 'subject.birthDate'],
      ['not-exported', 'information', 'subject.gender'],
      ['not-exported', 'information', 'encounter.class'],
    ]);
    expect(fromBundle(value).value).toEqual({ ...bare, encounter: { reference: 'Encounter/1' } });
  });
});
