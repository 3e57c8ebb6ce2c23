import { describe, expect, it } from 'vitest';
import type { Statement } from '../../src/model/statement.ts';
import { fromBundle, type Supplied } from '../../src/read/from-bundle.ts';

/** What an exam must have and a bare observation does not say. */
const supplied: Supplied = {
  id: 'check-1',
  status: 'final',
  examiners: [{ key: 'reader', reference: 'Practitioner/7' }],
  performed: { start: '2024-03-01' },
  recorded: '2024-03-02T09:00:00Z',
  protocol: { id: 'full', version: '1.0.0' },
};

const sct = 'http://snomed.info/sct';
const laterality = 'http://hl7.org/fhir/StructureDefinition/observation-structureLaterality';

/** One observation, made after the published example Observation-vomiting: a code, and Present or Absent. */
function observation(parts: object): object {
  return {
    resourceType: 'Observation',
    id: 'o1',
    status: 'final',
    subject: { reference: 'Patient/3' },
    effectiveDateTime: '2024-03-01',
    ...parts,
  };
}

function readOne(parts: object): { statement: Statement | undefined; rest: string[] } {
  const entry = [{ resource: observation(parts) }];
  const bundle = { resourceType: 'Bundle', type: 'collection', entry };
  const { value, remainder } = fromBundle(bundle, { supplied });
  return {
    statement: value?.statements[0],
    rest: remainder.filter(({ kind }) => kind === 'content').map(({ what }) => what),
  };
}

const concept = (code: string, text?: string): object => ({
  coding: [{ system: sct, code }],
  ...(text !== undefined && { text }),
});
/** 25064002 Headache is a symptom of ours; 398979000 Pale complexion a sign; 367577003 Eyebrow a region. */
const pale = concept('398979000');
const absent = concept('2667000');
const present = concept('52101004');

describe('an observation of others', () => {
  it('is a sign where its code and answer mean exactly one of ours', () => {
    const { statement } = readOne({ code: pale, valueCodeableConcept: absent });
    expect(statement).toMatchObject({
      kind: 'finding',
      finding: 'pallor',
      presence: 'absent',
      region: 'general',
    });
    const yes = readOne({ code: pale, valueCodeableConcept: present }).statement;
    expect(yes).toMatchObject({ finding: 'pallor', presence: 'present' });
    expect(readOne({ code: pale, valueBoolean: false }).statement).toMatchObject({
      presence: 'absent',
    });
  });

  it('keeps its codes as codings of the caller', () => {
    const { statement } = readOne({ code: pale, valueCodeableConcept: present });
    expect(statement?.codings).toEqual([{ system: sct, code: '398979000' }]);
  });

  it('is asserted by a finding as its code alone, and never where a value says why there is none', () => {
    const alone = { code: { ...pale, text: 'Pallor' } };
    expect(readOne(alone).statement).toMatchObject({ finding: 'pallor', presence: 'present' });
    // FHIR, invariant obs-6: dataAbsentReason stands in place of a value.
    const absentReason = { coding: [{ code: 'not-performed' }], text: 'Not performed' };
    expect(readOne({ ...alone, dataAbsentReason: absentReason }).statement).toMatchObject({
      kind: 'note',
      text: 'Pallor: Not performed',
    });
  });

  it('takes region and side from an equivalent code and the standard extension', () => {
    const site = (side: string): object => ({
      extension: [
        { url: laterality, valueCodeableConcept: { coding: [{ system: sct, code: side }] } },
      ],
      coding: [{ system: sct, code: '367577003' }],
    });
    // 278528006 Facial swelling: our sign facial-swelling.
    const swollen = { code: concept('278528006'), valueCodeableConcept: present };
    const right = readOne({ ...swollen, bodySite: site('24028007') });
    expect(right.statement).toMatchObject({ kind: 'finding', region: 'eyebrow', side: 'right' });
    expect(right.rest).toEqual([]);
    const without = readOne({ ...swollen, bodySite: concept('367577003') });
    expect(without.statement?.kind).toBe('note');
  });

  it('is a note with its words where its codes mean none of ours, and the rest is told', () => {
    // After the published example Observation-f001: a blood test.
    const { statement, rest } = readOne({
      code: { coding: [{ system: 'http://loinc.org', code: '15074-8', display: 'Glucose' }] },
      valueQuantity: {
        value: 6.3,
        unit: 'mmol/l',
        system: 'http://unitsofmeasure.org',
        code: 'mmol/L',
      },
      referenceRange: [{ low: { value: 3.1 } }],
    });
    expect(statement).toMatchObject({ kind: 'note', text: 'Glucose: 6.3 mmol/l' });
    expect(rest).toEqual([
      'Observation.valueQuantity.system',
      'Observation.valueQuantity.code',
      'Observation.referenceRange',
    ]);
  });

  it('is left out where its status says that it is withdrawn, and that is told', () => {
    const { statement, rest } = readOne({
      code: pale,
      valueCodeableConcept: present,
      status: 'entered-in-error',
    });
    expect(statement).toBeUndefined();
    expect(rest).toEqual(['Observation: its status says that it was withdrawn or not made']);
  });

  it('of another patient never becomes a statement about this one', () => {
    const entry = [
      { resource: observation({ code: pale, valueCodeableConcept: absent }) },
      {
        resource: observation({
          id: 'o2',
          code: pale,
          valueCodeableConcept: present,
          subject: { reference: 'Patient/4' },
        }),
      },
    ];
    const { value, issues } = fromBundle(
      { resourceType: 'Bundle', type: 'collection', entry },
      { supplied },
    );
    expect(value?.statements.map(({ key }) => key)).toEqual(['Observation/o1']);
    expect(issues.map(({ code, path }) => [code, path])).toContainEqual([
      'several-patients',
      ['entry', 1, 'resource', 'subject'],
    ]);
  });
});

describe('a bundle of others', () => {
  const report = {
    resourceType: 'DiagnosticReport',
    id: 'r',
    status: 'final',
    subject: { reference: 'Patient/3' },
  };
  const bundleOf = (...resources: object[]): object => ({
    resourceType: 'Bundle',
    type: 'collection',
    entry: resources.map((resource) => ({ resource })),
  });

  it('gives no exam where it lacks what an exam must have, and says what', () => {
    const { value, issues, remainder } = fromBundle(bundleOf(report));
    expect(value).toBeUndefined();
    expect(issues.map(({ code, message }) => [code, message])).toEqual(
      ['examiners', 'performed', 'recorded', 'protocol'].map((name) => [
        'missing-property',
        `the bundle does not state the ${name} of the exam`,
      ]),
    );
    expect(remainder).toEqual([{ path: [], what: 'Bundle', kind: 'content' }]);
  });

  it('keeps a conclusion as a note, since its level of concern is not told', () => {
    const { value, issues } = fromBundle(bundleOf({ ...report, conclusion: 'Nothing of note' }), {
      supplied,
    });
    expect(value?.conclusion).toBeUndefined();
    expect(value?.statements).toEqual([
      { key: 'report/conclusion', kind: 'note', text: 'Nothing of note' },
    ]);
    expect(issues.map(({ code }) => code)).toEqual(['unread-statement']);
  });

  it.each([
    ['no object', 7, 'wrong-type'],
    ['another resource', report, 'wrong-type'],
    ['a history', { resourceType: 'Bundle', type: 'history' }, 'invalid-value'],
    ['nothing in it', { resourceType: 'Bundle', type: 'collection' }, 'missing-property'],
  ])('is refused when it is %s', (_, bundle, code) => {
    expect(fromBundle(bundle).issues.map((found) => found.code)).toEqual([code]);
  });

  it('is refused when it is a circle, or nested too deep', () => {
    const circle: Record<string, unknown> = { resourceType: 'Bundle', type: 'collection' };
    circle.entry = [circle];
    expect(fromBundle(circle).issues.map(({ code }) => code)).toEqual(['too-deep']);
  });
});
