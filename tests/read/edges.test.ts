import { describe, expect, it } from 'vitest';
import { codesFromCsv } from '../../src/convert/code-map/from-csv.ts';
import { toBundle, toBundleOrThrow } from '../../src/export/to-bundle.ts';
import type { Exam } from '../../src/model/exam.ts';
import type { Statement } from '../../src/model/statement.ts';
import { fromBundle } from '../../src/read/from-bundle.ts';
import { createCatalogue } from '../../src/terminology/catalogue.ts';
import { versions } from './round-trip.ts';

/** An exam with as little as an exam can have. */
const bare: Exam = {
  format: 'face-neck-exam/1',
  id: 'check-1',
  status: 'final',
  subject: { reference: 'Patient/1' },
  examiners: [{ key: 'a', reference: 'Practitioner/1' }],
  performed: { start: '2024-03-01T09:00:00Z' },
  recorded: '2024-03-01T09:30:00Z',
  protocol: { id: 'full', version: '1.0.0' },
  statements: [],
};

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

  it('with rows of an adopter', () => {
    const system = 'https://clinic.example/codes';
    const { value: catalogue } = createCatalogue({
      system,
      regions: [
        {
          code: 'chin.left-dimple',
          display: 'Dimple',
          parent: 'skin',
          section: 'skin',
          laterality: 'paired',
          methods: ['inspection'],
        },
      ],
      findings: [{ code: 'salt-crust', display: 'Crust of salt', regions: ['chin.left-dimple'] }],
    });
    if (catalogue === undefined) throw new Error('the rows are sound');
    const exam: Exam = {
      ...bare,
      statements: [
        {
          key: 'f',
          kind: 'finding',
          finding: 'salt-crust',
          presence: 'present',
          region: 'chin.left-dimple',
          side: 'left',
        },
      ],
    };
    const { value, remainder } = fromBundle(toBundleOrThrow(exam, { catalogue }), { catalogue });
    expect(value).toEqual(exam);
    expect(remainder).toEqual([]);
    // Without these rows the words are all that can be kept.
    expect(fromBundle(toBundleOrThrow(exam, { catalogue })).value?.statements).toMatchObject([
      { kind: 'note', text: 'Crust of salt (Dimple, left): Present' },
    ]);
  });
});

describe('what an export adds is known again', () => {
  const exam: Exam = {
    ...bare,
    statements: [
      {
        key: 'f',
        kind: 'finding',
        finding: 'lid-position.ptosis',
        presence: 'present',
        region: 'lid-upper',
        side: 'left',
      },
      {
        key: 'm',
        kind: 'measurement',
        measure: 'mrd1',
        region: 'lid-upper',
        side: 'left',
        value: '4.0',
        unit: 'mm',
      },
    ],
  };

  it('codes of a map of the clinic', () => {
    const rows = [
      'source,code,system,target,relation,action,unit',
      'findings,lid-position.ptosis,https://harbour.example/codes,P1,equivalent,replace,',
      'regions,lid-upper.left,https://harbour.example/codes,L9,equivalent,add,',
      'measures,mrd1,https://harbour.example/codes,M4,equivalent,add,mm',
    ];
    const { value: codes } = codesFromCsv(rows.join('\n'));
    if (codes === undefined) throw new Error('the map is sound');
    const bundle = toBundleOrThrow(exam, { codes });
    expect(JSON.stringify(bundle)).toContain('"L9"');
    const { value, remainder } = fromBundle(bundle, { codes });
    expect(value).toEqual(exam);
    expect(remainder).toEqual([]);
  });

  it('claims of our profiles', () => {
    for (const bundleType of ['collection', 'document'] as const) {
      const { value, remainder } = fromBundle(
        toBundleOrThrow(exam, { profiles: true, bundleType }),
      );
      expect(value).toEqual(exam);
      expect(remainder).toEqual([]);
    }
  });
});

describe('the observations of an exam alone', () => {
  it('are read where the rest is supplied', () => {
    const note: Statement = { key: 'n', kind: 'note', text: 'Seen' };
    const { entry = [] } = toBundleOrThrow({ ...bare, statements: [note] });
    const observations = entry.filter(({ resource }) => resource?.resourceType === 'Observation');
    const bundle = { resourceType: 'Bundle', type: 'collection', entry: observations };
    const { value, issues } = fromBundle(bundle, { supplied: bare });
    expect(issues).toEqual([]);
    expect(value).toMatchObject({ id: 'check-1', statements: [note], protocol: bare.protocol });
    expect(fromBundle(bundle).issues.map(({ message }) => message)).toContain(
      'the bundle does not state the status of the exam',
    );
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

describe('a bundle of ours that was damaged', () => {
  const exam: Exam = {
    ...bare,
    statements: [
      {
        key: 'm',
        kind: 'measurement',
        measure: 'mrd1',
        region: 'lid-upper',
        side: 'left',
        value: '4.0',
        unit: 'mm',
      },
      { key: 'n', kind: 'note', text: 'Seen' },
    ],
    conclusion: { text: 'Well', concern: 'none', basedOn: ['m'] },
  };
  interface Damaged {
    entry: { resource: { identifier?: { value: string }[] } & Record<string, unknown> }[];
  }
  function damage(change: (measurement: Record<string, unknown>) => void): object {
    const bundle = structuredClone(toBundleOrThrow(exam)) as unknown as Damaged;
    const found = bundle.entry.find(
      ({ resource }) => resource.identifier?.[0]?.value === 'check-1|m',
    );
    if (found === undefined) throw new Error('the exam has a measurement');
    change(found.resource);
    return bundle;
  }

  it('keeps a statement that lost its value as a note under its key, and says so', () => {
    const { value, issues } = fromBundle(damage((resource) => delete resource.valueQuantity));
    expect(value?.statements[0]).toMatchObject({
      key: 'm',
      kind: 'note',
      text: 'Margin reflex distance 1',
      region: 'lid-upper',
      side: 'left',
    });
    expect(value?.conclusion?.basedOn).toEqual(['m']);
    expect(issues.map(({ code }) => code)).toEqual(['unread-statement']);
  });

  it('leaves out a part that the rules refuse, and says where its report stands', () => {
    const bundle = structuredClone(
      toBundleOrThrow({
        ...exam,
        history: [{ action: 'sign', by: 'a', at: '2024-03-01T09:30:00Z', version: 1 }],
      }),
    );
    const json = JSON.stringify(bundle).replace(
      '"recorded":"2024-03-01T09:30:00Z"',
      '"recorded":"2023-03-01T09:30:00Z"',
    );
    const { value, issues, remainder } = fromBundle(JSON.parse(json));
    expect(value?.history).toBeUndefined();
    expect(issues.map(({ code, path }) => [code, path])).toEqual([
      ['reversed-dates', ['entry', 0, 'resource']],
    ]);
    expect(remainder.map(({ what }) => what)).toContain('Provenance');
  });

  it('keeps a statement that the rules refuse as a note, with the rule', () => {
    const { value, issues, remainder } = fromBundle(
      damage((resource) =>
        Object.assign(resource.valueQuantity as object, { code: 's', unit: 's' }),
      ),
    );
    expect(value?.statements[0]).toMatchObject({ key: 'm', kind: 'note' });
    expect(issues).toMatchObject([
      { code: 'wrong-unit', severity: 'error', path: ['entry', 6, 'resource'] },
    ]);
    expect(remainder.map(({ what }) => what)).toContain('Observation.bodySite.coding');
  });

  it('does not take a statement that was withdrawn by itself', () => {
    const { value, remainder } = fromBundle(
      damage((resource) => Object.assign(resource, { status: 'entered-in-error' })),
    );
    expect(value?.statements.map(({ key }) => key)).toEqual(['n']);
    expect(remainder.map(({ what }) => what)).toContain(
      'Observation: its status says that it was withdrawn or not made',
    );
  });
});
