import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type ConvertResult, fromFhirBundles } from '../../../src/convert/fhir/index.ts';
import type { FhirMapping } from '../../../src/convert/mapping/fhir-mapping.ts';
import { toNdjson } from '../../../src/export/to-ndjson.ts';
import { toXml } from '../../../src/fhir/xml/to-xml.ts';
import { orThrow } from '../../../src/issues/issue.ts';
import type { Exam } from '../../../src/model/exam.ts';
import { sampleExams } from '../../../src/testing/sample-exam.ts';
import { sampled } from '../../sampled.ts';
import {
  all,
  bundleOf,
  linesOf,
  patient,
  persons,
  type Resource,
  resourceMapping,
  told,
} from './resource-samples.ts';

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
