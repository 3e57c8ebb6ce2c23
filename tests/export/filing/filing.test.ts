import { describe, expect, it } from 'vitest';
import { examples } from '../../../examples/all-exams.ts';
import { type AnyBundle, type ExportOptions, toBundleOrThrow } from '../../../src/index.ts';
import { fromBundle } from '../../../src/read/from-bundle.ts';
import { htmlForm, toHtml } from '../../../src/report/index.ts';
import { sampleExams } from '../../../src/testing/sample-exam.ts';
import { validateBundle } from '../../../src/validate/versions/r4.ts';
import { clinic } from '../../clinic.ts';
import { sampled } from '../../sampled.ts';

const exams = [
  ...[...examples.values()].slice(0, sampled(3, 6)),
  ...sampleExams(700, sampled(2, 6), { size: 'edge' }),
];

type Json = Readonly<Record<string, unknown>>;

function resourcesOf(bundle: AnyBundle, type: string): Json[] {
  return (bundle.entry ?? []).flatMap(({ resource }) =>
    resource?.resourceType === type ? [{ ...resource }] : [],
  );
}

describe('a store that keeps decimals as floating point', () => {
  it.each(['R4', 'R5'] as const)('gives back an equal exam, %s', (fhirVersion) => {
    // What has more digits than a double holds cannot come back from one.
    const fitting = exams.filter((exam) => !/"-?[\d.]{17,}"/.test(JSON.stringify(exam)));
    expect(fitting.length).toBeGreaterThan(sampled(2, 6));
    for (const exam of fitting) {
      // JSON.parse makes 5 of 5.0.
      const stored: unknown = JSON.parse(JSON.stringify(toBundleOrThrow(exam, { fhirVersion })));
      const { value, remainder } = fromBundle(stored);
      expect(value, exam.id).toEqual(exam);
      expect(remainder, exam.id).toEqual([]);
    }
  });
});

describe('what a receiver files by', () => {
  const exam = examples.get('drooping-lid');
  if (exam === undefined) throw new Error('no example');

  it('stands in every report, place and visit', () => {
    for (const one of exams) {
      const bundle = toBundleOrThrow(one);
      for (const report of resourcesOf(bundle, 'DiagnosticReport')) {
        expect(report['category']).toMatchObject([{ coding: [{ code: 'OTH' }] }]);
      }
      for (const place of resourcesOf(bundle, 'Organization')) expect(place['active']).toBe(true);
      for (const visit of resourcesOf(bundle, 'Encounter')) expect(visit['type']).toHaveLength(1);
      for (const observation of resourcesOf(bundle, 'Observation')) {
        const times = ['effectiveDateTime', 'effectivePeriod', '_effectiveDateTime'];
        expect(times.filter((name) => name in observation)).toHaveLength(1);
      }
    }
  });

  it('names each side that it codes', () => {
    const text = JSON.stringify(toBundleOrThrow(exam));
    const sides = [
      ...text.matchAll(
        /"code":"(24028007|7771000|51440002)"(,"display":"[^"]+ \(qualifier value\)")?/g,
      ),
    ];
    expect(sides.length).toBeGreaterThan(20);
    const inExtension = [
      ...text.matchAll(/structureLaterality","valueCodeableConcept":\{"coding":\[\{[^}]*\}/g),
    ];
    expect(inExtension.every(([found]) => found.includes('(qualifier value)'))).toBe(true);
  });

  it.each(['R4', 'R4B', 'R5'] as const)(
    'can be given, and is no part of the exam, %s',
    (fhirVersion) => {
      const filing = {
        reportCategory: { system: 'http://loinc.org', code: 'LP29684-5', display: 'Radiology' },
        encounterStatus: 'finished',
        security: [
          { system: 'http://terminology.hl7.org/CodeSystem/v3-Confidentiality', code: 'R' },
        ],
        tags: [{ system: 'https://clinic.example/tags', code: 'harbour' }],
      } as const;
      for (const bundleType of ['collection', 'document', 'transaction'] as const) {
        const options: ExportOptions = { ...clinic, fhirVersion, bundleType, filing };
        const bundle = toBundleOrThrow(exam, options);
        const { value, remainder } = fromBundle(bundle, { ...clinic, filing });
        expect(value).toEqual(exam);
        expect(remainder).toEqual([]);
        const labelled = resourcesOf(bundle, 'Observation').every(({ meta }) =>
          JSON.stringify(meta).includes('"code":"R"'),
        );
        expect({ labelled, bundle: bundle.meta?.security }).toEqual({
          labelled: true,
          bundle: filing.security,
        });
        for (const patient of resourcesOf(bundle, 'Patient')) {
          expect(JSON.stringify(patient['meta'] ?? {})).not.toContain('"code":"R"');
        }
        // Read without it, it is told and not dropped.
        const left = fromBundle(bundle, clinic).remainder.filter(({ kind }) => kind === 'content');
        expect(left.map(({ what }) => what)).toContain('Observation.meta.security');
      }
    },
  );

  it('holds the page for people where that is asked for', () => {
    for (const one of exams.slice(0, sampled(2, 6))) {
      const bundle = toBundleOrThrow(one, { presentedForms: htmlForm() });
      const [report] = resourcesOf(bundle, 'DiagnosticReport');
      const [form] = (report?.['presentedForm'] ?? []) as { data: string; contentType: string }[]; // as exported
      expect(form?.contentType).toBe('text/html');
      expect(Buffer.from(form?.data ?? '', 'base64').toString('utf8')).toBe(toHtml(one));
      expect(validateBundle(bundle).issues.filter(({ severity }) => severity === 'error')).toEqual(
        [],
      );
      const { value, remainder } = fromBundle(bundle);
      expect(value).toEqual(one);
      expect(remainder).toEqual([]);
    }
  });
});
