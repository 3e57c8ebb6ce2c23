import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { resourceSplitter } from '../../../src/convert/fhir/group/resource-splitter.ts';
import { type ConvertResult, fromFhirBundles } from '../../../src/convert/fhir/index.ts';
import type { FhirMapping } from '../../../src/convert/mapping/fhir-mapping.ts';
import { toNdjson } from '../../../src/export/to-ndjson.ts';
import { toXml } from '../../../src/fhir/xml/to-xml.ts';
import { orThrow } from '../../../src/issues/issue.ts';
import type { Exam } from '../../../src/model/exam.ts';
import { sampleExams } from '../../../src/testing/sample-exam.ts';
import { sampled } from '../../sampled.ts';
import {
  bundleOf,
  linesOf,
  observation,
  patient,
  type Resource,
  record,
  report,
  resourceMapping,
} from './resource-samples.ts';

const persons = ['anna', 'bert', 'cleo'] as const;
const all = persons.flatMap((person, at) => record(person, at, 2));

/** Of each exam its id, its person, and whom its statements name. */
function told({ exams }: ConvertResult): readonly (readonly [string, unknown, unknown])[] {
  return exams
    .map(({ exam }) => {
      const named = exam.statements.map((one) => (one.kind === 'note' ? one.text : one.kind));
      return [exam.id, exam.subject.name?.text, named] as const;
    })
    .sort(([a], [b]) => (a < b ? -1 : 1));
}

const expected = persons
  .flatMap((person, reports) => {
    const said = `Weather: dry for ${person}`;
    return [
      ...Array.from({ length: reports }, (_, at) => [
        ...[`harbour.DiagnosticReport/${person}-${at}`, person, [said, said]],
      ]),
      ...[0, 1].map((at) => [`harbour.Observation/${person}-loose-${at}`, person, [said]]),
    ];
  })
  .sort(([a = ''], [b = '']) => (a < b ? -1 : 1));

const mixed = fc.shuffledSubarray([...all], { minLength: all.length });
const runs = { numRuns: sampled(6, 300), seed: 7 };

describe('lines of resources, in any order', () => {
  it('become an exam for each report, and for each day without one, each of its own person', () => {
    fc.assert(
      fc.property(mixed, (resources) => {
        const result = fromFhirBundles(linesOf(resources), resourceMapping);
        expect(result.quarantine).toEqual([]);
        expect(told(result)).toEqual(expected);
      }),
      runs,
    );
  });

  it('never give a statement to another person, whatever lines are missing', () => {
    fc.assert(
      fc.property(fc.shuffledSubarray([...all]), (resources) => {
        const text = linesOf(resources);
        const result = fromFhirBundles(text, resourceMapping);
        for (const { exam } of result.exams) {
          const [, person = ''] = /^harbour\.[A-Za-z]+\/([a-z]+)-/.exec(exam.id) ?? [];
          for (const one of exam.statements) expect(JSON.stringify(one)).toContain(`for ${person}`);
        }
        // A report whose results are not all there is set aside, whole.
        const ids = new Set(resources.map(({ id }) => id));
        const sound = resources.filter(
          ({ resourceType, id }) =>
            resourceType === 'DiagnosticReport' && ids.has(`${id}-a`) && ids.has(`${id}-b`),
        );
        const reported = result.exams.filter(({ exam }) => exam.id.includes('DiagnosticReport'));
        expect(reported.map(({ exam }) => exam.id).sort()).toEqual(
          sound.map(({ id }) => `harbour.DiagnosticReport/${id}`).sort(),
        );
        expectWhole(resources, result);
      }),
      runs,
    );
  });
});

/** Every resource is in an exam or set aside, and the fates of all values sum. */
function expectWhole(resources: readonly Resource[], result: ConvertResult): void {
  const { fields, ...fates } = result.ledger;
  expect(Object.values(fates).reduce((sum, one) => sum + one, 0)).toBe(fields);
  const values = resources.reduce((sum, one) => sum + leaves(one), 0);
  expect(fields).toBeGreaterThanOrEqual(values);
  const held = [
    ...result.exams.flatMap(({ exam }) => exam.statements.map(({ key }) => key.split('/')[1])),
    ...result.quarantine.map(({ raw }) => raw),
  ].join(' ');
  for (const { resourceType, id } of resources) {
    if (resourceType === 'Observation') expect(held).toContain(id);
  }
}

function leaves(value: unknown): number {
  if (typeof value !== 'object' || value === null) return 1;
  return Object.values(value).reduce((sum: number, one) => sum + leaves(one), 0);
}

const identity = 'https://harbour.example/records';
const own: FhirMapping = {
  format: 'face-neck-mapping/1',
  source: {
    syntax: 'fhir',
    form: 'resources',
    identity: {
      exam: `${identity}/exam`,
      statement: `${identity}/statement`,
      tracking: `${identity}/tracking`,
    },
  },
};

/** With its lists of keyed parts in the order of their keys: lines have none. */
function inOrder(exam: Exam): unknown {
  const sorted = (_: string, value: unknown): unknown =>
    Array.isArray(value) && value.every((one) => typeof one?.key === 'string')
      ? [...value].sort((a, b) => (a.key < b.key ? -1 : 1))
      : value;
  return JSON.parse(JSON.stringify(exam, sorted));
}

describe('lines that this library wrote', () => {
  const exams = [...sampleExams(40, sampled(3, 40), { size: 'small' })];
  const { lines } = toNdjson(exams, { identity });
  const written = [...lines.values()].flat();

  it('come back as the same exams, in whatever order they stand', () => {
    fc.assert(
      fc.property(fc.shuffledSubarray(written, { minLength: written.length }), (shuffled) => {
        const { exams: made, quarantine } = fromFhirBundles(shuffled.join('\n'), own);
        expect(quarantine.map(({ issues }) => issues)).toEqual([]);
        const byId = new Map(made.map(({ exam }) => [exam.id, inOrder(exam)]));
        expect(byId).toEqual(new Map(exams.map((exam) => [exam.id, inOrder(exam)])));
      }),
      { numRuns: sampled(2, 10), seed: 3 },
    );
  });
});

describe('what lines of resources leave open', () => {
  const convert = (resources: readonly object[], more: object = {}): ConvertResult =>
    fromFhirBundles(linesOf(resources), {
      ...resourceMapping,
      source: { syntax: 'fhir', form: 'resources', ...more },
    });
  const reasons = ({ quarantine }: ConvertResult): unknown =>
    quarantine.map(({ reason, at, issues }) => [reason, at, issues.map(({ facts }) => facts)]);

  it('a resource in two versions sets its exam aside, at the line of the second', () => {
    const result = convert([
      report('anna', 'r', ['a']),
      observation('anna', 'a'),
      observation('anna', 'a', { valueString: 'wet for anna' }),
    ]);
    expect(result.exams).toEqual([]);
    expect(result.quarantine).toMatchObject([
      { reason: 'duplicate-key', issues: [{ source: { line: 3 } }] },
    ]);
  });

  it('a line that repeats another one to the letter is read once', () => {
    const twice = [...record('anna', 1, 0), ...record('anna', 1, 0)];
    expect(convert(twice).exams.map(({ exam }) => exam.statements.length)).toEqual([2]);
    expect(convert(twice).quarantine).toEqual([]);
  });

  it.each([
    [
      ['2024-03-01T10:05:00Z', '2024-03-01T10:00:00Z'],
      ['2024-03-01T10:00:00Z', '2024-03-01T10:05:00Z'],
    ],
    [
      ['2024-03-01T10:05:00Z', '2024-03-01T12:01:00+02:00'],
      ['2024-03-01T12:01:00+02:00', '2024-03-01T10:05:00Z'],
    ],
    [
      ['2024-03-01', '2024-03-01T10:05:00Z'],
      ['2024-03-01', undefined],
    ],
  ] as const)(
    'observations without a report at %j are an exam from the first to the last',
    (times, [start, end]) => {
      const made = times.map((effectiveDateTime, at) =>
        observation('anna', `o${at}`, { effectiveDateTime }),
      );
      const { exams, quarantine } = convert(made);
      expect(quarantine).toEqual([]);
      expect(exams.map(({ exam }) => exam.performed)).toEqual([{ start, ...(end && { end }) }]);
      expect(exams[0]?.exam.statements.length).toBe(2);
    },
  );

  it('observations of one visit on several days are an exam for each day', () => {
    const visit = { encounter: { reference: 'Encounter/v' } };
    const { exams } = convert([
      observation('anna', 'a', visit),
      observation('anna', 'b', { ...visit, effectiveDateTime: '2024-02-28' }),
    ]);
    expect(exams.map(({ exam }) => exam.performed.start).sort()).toEqual([
      '2024-02-28',
      '2024-03-01',
    ]);
  });

  it('a report with an observation of another person is set aside, and theirs is no exam', () => {
    const resources = [report('anna', 'r', ['a', 'b']), observation('anna', 'a')];
    const result = convert([...resources, observation('bert', 'b'), patient('bert')]);
    expect(result.exams).toEqual([]);
    expect(result.quarantine.map(({ reason }) => reason)).toEqual(['several-patients']);
    expect(result.quarantine[0]?.raw).toContain('dry for bert');
  });

  it('observations that name nobody are never put together', () => {
    const nobody = { subject: undefined };
    const result = convert([observation('', 'a', nobody), observation('', 'b', nobody)]);
    expect(result.exams).toEqual([]);
    expect(result.quarantine.map(({ reason }) => reason)).toEqual([
      'missing-property',
      'missing-property',
    ]);
  });

  it('a condition belongs to the one report of its visit, and to none of two', () => {
    const visit = { encounter: { reference: 'Encounter/v' } };
    const condition = {
      resourceType: 'Condition',
      id: 'c',
      subject: { reference: 'Patient/anna' },
      code: { text: 'Hay fever' },
      ...visit,
    };
    const one = [report('anna', 'r', ['a'], visit), observation('anna', 'a', visit), condition];
    expect(convert(one).exams.map(({ exam }) => exam.statements.length)).toEqual([2]);
    const two = convert([
      ...one,
      report('anna', 'q', ['b'], visit),
      observation('anna', 'b', visit),
    ]);
    expect(two.exams.map(({ exam }) => exam.statements.length)).toEqual([1, 1]);
    expect(two.quarantine.map(({ raw }) => raw.includes('Hay fever'))).toEqual([true]);
  });

  it('a broken line is told alone, and its report with it', () => {
    const text = `${linesOf([report('anna', 'r', ['a', 'b']), observation('anna', 'a')])}{"resourceType":"Obs\n${linesOf(record('bert', 1, 0))}`;
    const result = fromFhirBundles(text, resourceMapping);
    expect(told(result).map(([id]) => id)).toEqual(['harbour.DiagnosticReport/bert-0']);
    expect(reasons(result)).toEqual([
      ['malformed-record', { line: 3 }, [{ reason: 'json' }]],
      ['unresolved-reference', { line: 1 }, [{ reason: 'result' }]],
    ]);
  });

  it.each(['[]', '{}', '"text"', bundleOf([])])(
    'a line %s is no resource to put together',
    (line) => {
      const result = fromFhirBundles(`${line}\n`, resourceMapping);
      expect(reasons(result)).toEqual([
        ['malformed-record', { line: 1 }, [{ reason: 'resource-line' }]],
      ]);
    },
  );

  it('references that begin with the address of the server are those of its resources alone', () => {
    const base = 'https://server.example/fhir';
    const away = [
      report('anna', 'r', [], { result: [{ reference: `${base}/Observation/a` }] }),
      observation('anna', 'a'),
      patient('anna'),
    ];
    expect(convert(away).exams.map(({ exam }) => exam.id)).toEqual(['harbour.Observation/a']);
    expect(convert(away).quarantine.map(({ reason }) => reason)).toEqual(['unresolved-reference']);
    const { exams } = convert(away, { serverBase: `${base}/` });
    expect(exams.map(({ exam }) => [exam.subject.name?.text, exam.statements.length])).toEqual([
      ['anna', 1],
    ]);
  });

  it('more than may be held sets each line aside alone, and none is lost', () => {
    const systems = { exam: 'urn:exam', statement: 'urn:statement' };
    const splitter = resourceSplitter({ systems, most: 4000 });
    const units = [...splitter.push(linesOf(all)), ...splitter.end()];
    expect(units.length).toBe(all.length);
    expect(units.every(({ issues }) => issues?.[0]?.code === 'too-large')).toBe(true);
    expect(units.map(({ raw }) => JSON.parse(raw).entry[0].resource)).toEqual(
      all.map((one) => JSON.parse(JSON.stringify(one))),
    );
    expect(units.map(({ at }) => at)).toEqual(all.map((_, at) => ({ line: at + 1 })));
  });
});

describe('resources that share so much that their exams would be far larger than they are', () => {
  const members = Array.from({ length: 400 }, (_, at) => observation('anna', `m${at}`));
  const hasMember = members.map(({ id }) => ({ reference: `Observation/${id}` }));
  const reports = Array.from({ length: 400 }, (_, at) => report('anna', `r${at}`, ['panel']));
  const many = [...members, observation('anna', 'panel', { hasMember }), ...reports];

  it('are set aside, each alone', () => {
    const splitter = resourceSplitter({ systems: { exam: 'urn:exam', statement: 'urn:part' } });
    const units = [...splitter.push(linesOf(many)), ...splitter.end()];
    expect(units.length).toBe(many.length);
    expect(units.every(({ issues }) => issues?.[0]?.code === 'too-large')).toBe(true);
  });

  it('are set aside as one, where they stand in a bundle', () => {
    const source = { syntax: 'fhir' } as const;
    const { exams, quarantine } = fromFhirBundles(bundleOf(many), { ...resourceMapping, source });
    expect(exams).toEqual([]);
    expect(quarantine.map(({ reason }) => reason)).toEqual(['several-exams']);
  });
});

describe('a bundle with several reports', () => {
  const bundled: FhirMapping = { ...resourceMapping, source: { syntax: 'fhir' } };

  it.each(['bundles', 'lines'] as const)('becomes an exam for each, as %s', (form) => {
    fc.assert(
      fc.property(mixed, (resources) => {
        const source = { syntax: 'fhir', form } as const;
        const result = fromFhirBundles(bundleOf(resources), { ...resourceMapping, source });
        expect(result.quarantine).toEqual([]);
        expect(told(result)).toEqual(expected);
        expectWhole(resources, result);
      }),
      runs,
    );
  });

  it('keeps entries with their address, and tells the line of each', () => {
    const entry = all.map((resource, at) => ({
      fullUrl: `urn:uuid:00000000-0000-4000-8000-${String(at).padStart(12, '0')}`,
      resource,
    }));
    const text = JSON.stringify(
      { resourceType: 'Bundle', type: 'collection', entry },
      undefined,
      1,
    );
    const result = fromFhirBundles(text, bundled);
    expect(told(result)).toEqual(expected);
    const rows = text.split('\n');
    for (const { ledger } of result.exams) {
      for (const { name, at } of ledger.filter((one) => one.name === 'Observation.id')) {
        expect(name && 'line' in at && rows[at.line - 1]).toContain('"id"');
      }
    }
  });

  it('with what belongs to no exam sets that aside, whole and by person', () => {
    const other = { resourceType: 'Claim', id: 'c', patient: { reference: 'Patient/anna' } };
    const result = fromFhirBundles(bundleOf([...all, other, patient('dora')]), bundled);
    expect(told(result)).toEqual(expected);
    expect(result.quarantine.map(({ raw }) => JSON.parse(raw).entry.length)).toEqual([1, 1]);
    expect(result.quarantine.map(({ reason }) => reason)).toEqual([
      'missing-property',
      'missing-property',
    ]);
  });

  it('is set aside whole in XML, and told how it can be had', () => {
    const xml = orThrow('write', toXml(JSON.parse(bundleOf(all))));
    const source = { syntax: 'fhir', form: 'xml' } as const;
    const { exams, quarantine } = fromFhirBundles(xml, { ...resourceMapping, source });
    expect(exams).toEqual([]);
    expect(quarantine.map(({ issues }) => issues)).toMatchObject([
      [{ code: 'several-exams', facts: { reason: 'reports' } }],
    ]);
  });
});
