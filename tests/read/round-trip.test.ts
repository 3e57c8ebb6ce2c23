import { describe, expect, it } from 'vitest';
import { toBundleOrThrow } from '../../src/export/to-bundle.ts';
import { fromJson } from '../../src/fhir/json/from-json.ts';
import { toJson } from '../../src/fhir/json/to-json.ts';
import { fromBundle } from '../../src/read/from-bundle.ts';
import { german } from '../../src/terminology/languages/de.ts';
import { type SampleSize, sampleExam, sampleExams } from '../../src/testing/sample-exam.ts';
import { clinic } from '../clinic.ts';
import { everyExport } from './round-trip.ts';

const amounts: readonly (readonly [SampleSize, number])[] = [
  ['small', 40],
  ['edge', 40],
  ['usual', 8],
  ['full', 2],
];

describe('an exam that was exported', () => {
  it.each(amounts)('comes back equal from every version and type, size %s', (size, count) => {
    let at = 0;
    for (const exam of sampleExams(1, count, { size })) {
      // Three of the twelve ways for each exam, so that all meet all over the seeds.
      for (const turn of [0, 1, 2]) {
        const options = everyExport[(at + turn * 5) % everyExport.length] ?? {};
        const { value, remainder } = fromBundle(toBundleOrThrow(exam, options), clinic);
        const told = `${exam.id} ${JSON.stringify(options)}`;
        expect(value, told).toEqual(exam);
        expect(remainder, told).toEqual([]);
      }
      at += 1;
    }
  });

  it('comes back equal from its text, decimals as they were stated', () => {
    for (const exam of sampleExams(900, 20, { size: 'edge' })) {
      const parsed = fromJson(toJson(toBundleOrThrow(exam), { pretty: true }));
      expect(parsed.issues).toEqual([]);
      expect(fromBundle(parsed.value).value, exam.id).toEqual(exam);
    }
  });

  it('comes back equal without narrative, without SNOMED CT and with all of it', () => {
    const edition = 'http://snomed.info/sct/900000000000207008/version/20240101';
    const licensed = { licensed: { holder: 'Harbour clinic', edition } };
    for (const exam of sampleExams(40, 8)) {
      for (const options of [
        { narrative: false },
        { snomed: 'none' as const },
        { snomed: licensed },
        { laterality: 'text' as const },
      ]) {
        const { value, remainder } = fromBundle(toBundleOrThrow(exam, options));
        expect(value, exam.id).toEqual(exam);
        expect(remainder, exam.id).toEqual([]);
      }
    }
  });

  it('comes back equal when its sides stand in BodyStructure resources', () => {
    for (const exam of sampleExams(60, 8)) {
      for (const fhirVersion of ['R4', 'R5'] as const) {
        const bundle = toBundleOrThrow(exam, { fhirVersion, laterality: 'body-structure' });
        const { value, remainder } = fromBundle(bundle);
        expect(value, exam.id).toEqual(exam);
        expect(remainder, exam.id).toEqual([]);
      }
    }
  });

  it('comes back equal from German displays', () => {
    for (const exam of sampleExams(80, 6)) {
      for (const bundleType of ['collection', 'document'] as const) {
        const bundle = toBundleOrThrow(exam, { language: german, bundleType });
        const { value, remainder } = fromBundle(bundle, { language: german });
        expect(value, exam.id).toEqual(exam);
        expect(remainder, exam.id).toEqual([]);
      }
    }
  });

  it('comes back equal under identifiers and a canonical base of the clinic', () => {
    const own = {
      canonicalBase: 'https://clinic.example/fhir',
      identity: {
        exam: 'https://clinic.example/checks',
        statement: 'https://clinic.example/statements',
        tracking: 'https://clinic.example/lesions',
      },
    };
    for (const exam of sampleExams(100, 8, { size: 'edge' })) {
      const { value, remainder } = fromBundle(toBundleOrThrow(exam, own), own);
      expect(value, exam.id).toEqual(exam);
      expect(remainder, exam.id).toEqual([]);
    }
  });

  it('is one of several in a bundle, and is chosen by its id', () => {
    const [one, other] = [sampleExam(1, { size: 'small' }), sampleExam(2, { size: 'small' })];
    const entry = [...(toBundleOrThrow(one).entry ?? []), ...(toBundleOrThrow(other).entry ?? [])];
    const both = { resourceType: 'Bundle', type: 'collection', entry };
    expect(fromBundle(both).issues.map(({ code }) => code)).toContain('several-exams');
    expect(fromBundle(both, { exam: other.id }).value).toEqual(other);
    expect(fromBundle(both, { exam: one.id }).value).toEqual(one);
  });
});
