import { describe, expect, it } from 'vitest';
import { type ConvertedExam, fromFhirBundles } from '../../../src/convert/fhir/index.ts';
import type { FhirMapping } from '../../../src/convert/mapping/fhir-mapping.ts';
import { testMapping } from '../../../src/convert/mapping-tests/test-mapping.ts';
import type { Statement } from '../../../src/model/statement.ts';
import { toDryRun } from '../../../src/report/dry-run/to-dry-run.ts';
import { told } from '../../read/shapes/findings.ts';
import type { Shape, Told } from '../../read/shapes/shape.ts';
import { shapes } from '../../read/shapes.ts';

const mapping: FhirMapping = {
  format: 'face-neck-mapping/1',
  source: { syntax: 'fhir' },
  exam: {
    prefix: 'harbour',
    status: 'final',
    protocol: { id: 'full', version: '1.0.0' },
    recorded: '2024-03-02T09:00:00Z',
    examiner: { reference: 'Practitioner/7' },
  },
};

/** One that is none of ours, after the published example Observation-vomiting, so that an exam comes out. */
const beside = {
  resourceType: 'Observation',
  id: 'beside',
  status: 'final',
  subject: { reference: 'Patient/3' },
  code: { text: 'Weather' },
  valueString: 'dry',
  effectiveDateTime: '2024-03-01',
};

function bundleText(resources: readonly object[]): string {
  const entry = [...resources, beside].map((resource) => ({ resource }));
  return JSON.stringify({ resourceType: 'Bundle', type: 'collection', entry });
}

function holdsSide(statement: Statement, side: string): boolean {
  if ('side' in statement && statement.side === side) return true;
  return statement.kind === 'note' && statement.text.toLowerCase().includes(side);
}

/** No side is lost without an issue, nothing denied is present, and what is a sign is the right one. */
function expectSafe({ exam, issues }: ConvertedExam, shape: Shape, one: Told): void {
  const statements = exam.statements.filter(({ key }) => key !== 'Observation/beside');
  const signs = statements.filter(({ kind }) => kind === 'finding');
  if (shape.negated === true) {
    for (const sign of signs) expect(sign).not.toMatchObject({ presence: 'present' });
  }
  const isHeld = statements.some((statement) => holdsSide(statement, one.side));
  if (shape.unsided !== true && !isHeld) expect(issues.length).toBeGreaterThan(0);
  if (typeof shape.becomes === 'object' && signs.length > 0) {
    expect(signs).toMatchObject([{ finding: one.finding, ...shape.becomes, side: one.side }]);
  }
}

const some = told.slice(0, 4);

describe(`findings of others in ${shapes.length} published shapes, converted`, () => {
  it.each(shapes)('$name', (shape) => {
    for (const one of some) {
      const text = bundleText(shape.resources(one));
      const { exams, quarantine, ledger } = fromFhirBundles(text, mapping);
      expect(exams.length + quarantine.length).toBe(1);
      for (const { raw } of quarantine) expect(raw).toBe(text);
      const { fields, ...fates } = ledger;
      expect(Object.values(fates).reduce((sum, count) => sum + count, 0)).toBe(fields);
      const [made] = exams;
      if (made !== undefined) expectSafe(made, shape, one);
    }
  });

  it('are exams where all was understood, and most of the rest are kept as notes', () => {
    const results = shapes.map(
      (shape) => fromFhirBundles(bundleText(shape.resources(some[0] as never)), mapping), // there are 24
    );
    const made = results.filter(({ exams }) => exams.length > 0).length;
    console.log(`${made} of ${results.length} shapes became an exam`);
    expect(made).toBeGreaterThan(0.8 * results.length);
  });
});

describe('what an exam needs and a bundle of others does not say', () => {
  const source = bundleText([]);

  it('is stated by the mapping, and the id begins with the name of the system', () => {
    const [made] = fromFhirBundles(source, mapping).exams;
    expect(made?.exam).toMatchObject({
      id: 'harbour.Observation/beside',
      status: 'final',
      protocol: { id: 'full' },
      statements: [{ kind: 'note', text: 'Weather: dry' }],
    });
    expect(made?.ledger.filter(({ fate }) => fate === 'verbatim').map(({ name }) => name)).toEqual(
      expect.arrayContaining(['Observation.code.text', 'Observation.valueString']),
    );
  });

  it.each(['status', 'protocol', 'recorded', 'examiner'] as const)(
    'is never guessed: without %s the bundle is set aside, whole and with the reason',
    (part) => {
      const { [part]: _, ...exam } = mapping.exam ?? {};
      const { exams, quarantine } = fromFhirBundles(source, { ...mapping, exam });
      expect(exams).toEqual([]);
      const [entry] = quarantine;
      expect(entry?.raw).toBe(source);
      expect(entry?.reason).toBe('missing-property');
      const property = part === 'examiner' ? 'examiners' : part;
      expect(entry?.issues.map(({ facts }) => facts)).toContainEqual({
        reason: 'exam-part',
        property,
      });
    },
  );
});

describe('the id of an exam of another system', () => {
  const reasonOf = (text: string, exam = mapping.exam): unknown => {
    const { exams, quarantine } = fromFhirBundles(text, { ...mapping, ...(exam && { exam }) });
    if (exams.length > 0) return exams.map(({ exam: { id } }) => id);
    return quarantine.map(({ issues }) => issues.map(({ facts }) => facts));
  };
  const nameless = { ...beside, id: undefined };
  const entryOf = (fullUrl: string): string =>
    JSON.stringify({
      resourceType: 'Bundle',
      type: 'collection',
      entry: [{ fullUrl, resource: nameless }],
    });

  it('needs the name of the system: without it the bundle is set aside', () => {
    const { prefix: _, ...rest } = mapping.exam ?? {};
    expect(reasonOf(bundleText([]), rest)).toEqual([[{ reason: 'system-name' }]]);
  });

  it('is never the place in the bundle, where another person can stand the next time', () => {
    const text = JSON.stringify({
      resourceType: 'Bundle',
      type: 'collection',
      entry: [{ resource: nameless }],
    });
    expect(reasonOf(text)).toEqual([[{ reason: 'resource-id' }]]);
    const bad = { ...beside, id: 'not an id' };
    const spaced = JSON.stringify({ ...JSON.parse(text), entry: [{ resource: bad }] });
    expect(reasonOf(spaced)).toEqual([[{ reason: 'resource-id' }]]);
    const like = { ...beside, id: 'entry.0.resource' };
    const same = JSON.stringify({ ...JSON.parse(text), entry: [{ resource: like }] });
    expect(reasonOf(same)).toEqual(['harbour.Observation/entry.0.resource']);
  });

  it.each([
    ['urn:uuid:0d1c6a5e-0000-4000-8000-000000000001', '0d1c6a5e-0000-4000-8000-000000000001'],
    ['https://server.example/fhir/Observation/17', '17'],
  ])('is taken from the end of %s where the resource has none', (fullUrl, id) => {
    expect(reasonOf(entryOf(fullUrl))).toEqual([`harbour.Observation/${id}`]);
  });

  it('has at most 200 characters with the name', () => {
    const exam = { ...mapping.exam, prefix: 'h'.repeat(200 - '.Observation/beside'.length) };
    expect(reasonOf(bundleText([]), exam)).toEqual([`${exam.prefix}.Observation/beside`]);
    const long = { ...exam, prefix: `${exam.prefix}h` };
    expect(reasonOf(bundleText([]), long)).toEqual([[{ reason: 'exam-id' }]]);
  });
});

describe('an observation of another person', () => {
  it('sets the bundle aside and becomes no statement', () => {
    const other = { ...beside, id: 'other', subject: { reference: 'Patient/4' } };
    const { exams, quarantine } = fromFhirBundles(bundleText([other]), mapping);
    expect(exams).toEqual([]);
    expect(quarantine.map(({ reason }) => reason)).toEqual(['several-patients']);
  });
});

describe('what was withdrawn', () => {
  it('is in no exam, and ledger and issue say so', () => {
    const withdrawn = { ...beside, id: 'gone', status: 'entered-in-error' };
    const [made] = fromFhirBundles(bundleText([withdrawn]), mapping).exams;
    expect(made?.exam.statements.map(({ key }) => key)).toEqual(['Observation/beside']);
    expect(made?.issues.map(({ code }) => code)).toContain('not-in-exam');
    expect(made?.ledger.filter(({ fate }) => fate === 'quarantined').length).toBe(7);
  });
});

describe('the other ways of a conversion', () => {
  const tests = [
    { source: bundleText([]), expect: { exams: 1, statements: [{ text: 'Weather: dry' }] } },
    { source: '{"resourceType": "Patient"}', expect: { quarantine: ['wrong-type'] } },
    { source: bundleText([]), expect: { exams: 2 } },
  ];

  it('run the tests of a mapping', () => {
    const { results, issues } = testMapping({ ...mapping, tests });
    expect(issues).toEqual([]);
    expect(results.map(({ failures }) => failures.length)).toEqual([0, 0, 1]);
  });

  it('show source beside result before anything is written', () => {
    const { html, run } = toDryRun(bundleText([]), mapping);
    expect(run.exams.map(({ exam }) => exam?.id)).toEqual(['harbour.Observation/beside']);
    expect(html).toContain('Observation.valueString');
    expect(run.leftovers).toContainEqual({
      name: 'Observation.valueString',
      text: 'dry',
      count: 1,
    });
  });
});
