import { describe, expect, it } from 'vitest';
import { ndjsonParts, toNdjson } from '../../src/export/to-ndjson.ts';
import { type Exam, toBundleOrThrow, toJson } from '../../src/index.ts';
import { sampleExams } from '../../src/testing/sample-exam.ts';
import { clinic } from '../clinic.ts';

const exams: readonly Exam[] = [...sampleExams(1, 5, { size: 'edge' })];

function references(value: unknown): string[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, member]) =>
    name === 'reference' && typeof member === 'string' ? [member] : references(member),
  );
}

describe('NDJSON by type of resource', () => {
  it.each(['R4', 'R4B', 'R5'] as const)('holds every resource once in %s', (fhirVersion) => {
    const { lines, issues } = toNdjson(exams, { ...clinic, fhirVersion });
    expect(issues.filter(({ severity }) => severity === 'error')).toEqual([]);
    const read = [...lines].flatMap(([type, list]) =>
      list.map((line) => {
        expect(line).not.toContain('\n');
        const resource = JSON.parse(line);
        expect(resource.resourceType).toBe(type);
        return `${type}/${resource.id}`;
      }),
    );
    const bundled = exams.flatMap((exam) =>
      (toBundleOrThrow(exam, { ...clinic, fhirVersion }).entry ?? []).map(
        ({ resource }) => `${resource?.resourceType}/${resource?.id}`,
      ),
    );
    // What several exams share, such as a type of instrument, is written once.
    expect(read.sort()).toEqual([...new Set(bundled)].sort());
  });

  it('refers by type and id to lines that are there', () => {
    const { lines } = toNdjson(exams, clinic);
    const resources = [...lines.values()].flat().map((line) => JSON.parse(line));
    const ids = new Set(resources.map(({ resourceType, id }) => `${resourceType}/${id}`));
    const named = resources.flatMap(references);
    expect(named.length).toBeGreaterThan(100);
    expect(named.filter((reference) => reference.startsWith('urn:'))).toEqual([]);
    const own = named.filter((reference) => /\/[0-9a-f]{8}-[0-9a-f-]{27}$/.test(reference));
    expect(own.filter((reference) => !ids.has(reference))).toEqual([]);
  });

  it('keeps the digits of decimals', () => {
    const stated = (text: string) => (text.match(/"value":-?\d+\.\d*0\b/g) ?? []).sort();
    const bundles = exams.map((exam) => toJson(toBundleOrThrow(exam, clinic))).join('\n');
    const { lines } = toNdjson(exams, clinic);
    expect(stated(bundles).length).toBeGreaterThan(0);
    expect(stated([...lines.values()].flat().join('\n'))).toEqual(stated(bundles));
  });

  it('leaves out an exam with an error and says which', () => {
    const [first, second] = exams;
    if (first === undefined || second === undefined) return expect.fail();
    const { lines, issues } = toNdjson([first, { ...second, status: 'draft' }], clinic);
    expect(lines.get('DiagnosticReport')?.length).toBe(1);
    expect(issues.find(({ code }) => code === 'draft-exam')?.path).toEqual([1, 'status']);
    expect(toNdjson(first, clinic).lines).toEqual(lines);
  });

  it('reads no further than it is asked to', () => {
    let taken = 0;
    function* counted(): Generator<Exam> {
      for (const exam of exams) {
        taken += 1;
        yield exam;
      }
    }
    expect(ndjsonParts(counted(), clinic).next().value?.exam).toBe(exams[0]?.id);
    expect(taken).toBe(1);
  });
});
