import { describe, expect, it } from 'vitest';
import { resourceSplitter } from '../../../src/convert/fhir/group/resource-splitter.ts';
import { type ConvertResult, fromFhirBundles } from '../../../src/convert/fhir/index.ts';
import {
  all,
  bundleOf,
  linesOf,
  observation,
  patient,
  record,
  report,
  resourceMapping,
  told,
} from './resource-samples.ts';

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
