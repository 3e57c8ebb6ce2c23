import { describe, expect, it } from 'vitest';
import {
  type BundleType,
  type ExportOptions,
  type FhirVersion,
  prepareExport,
  toBundle,
  toJson,
} from '../../src/index.ts';
import { sampleExam } from '../../src/testing/sample-exam.ts';

const exams = [3, 4].map((seed) => sampleExam(seed, { size: 'small' }));

describe('prepareExport', () => {
  it.each<{ fhirVersion: FhirVersion; bundleType: BundleType }>([
    { fhirVersion: 'R4', bundleType: 'transaction' },
    { fhirVersion: 'R5', bundleType: 'document' },
  ])('gives what toBundle gives, exam after exam: $fhirVersion $bundleType', (of) => {
    const options = { ...of, identity: 'https://clinic.example/records', allowDraft: true };
    const { value: exporter } = prepareExport(options);
    for (const exam of [...exams, ...exams.slice(0, 1)]) {
      const [made, single] = [exporter?.(exam), toBundle(exam, options)];
      expect(made?.issues).toEqual(single.issues);
      expect(toJson(made?.value)).toBe(toJson(single.value));
    }
  });

  it('gives each bundle its own codings', () => {
    const [exam] = exams;
    const { value: exporter } = prepareExport({ allowDraft: true });
    if (exam === undefined || exporter === undefined) throw new Error('no export');
    const before = toJson(exporter(exam).value);
    blankCodings(exporter(exam).value ?? {});
    expect(toJson(exporter(exam).value)).toBe(before);
  });

  it('holds to the options as they were', () => {
    const options: { fhirVersion: FhirVersion } & ExportOptions = { fhirVersion: 'R4' };
    const { value: exporter } = prepareExport(options);
    options.fhirVersion = 'R5';
    const [exam] = exams;
    if (exam === undefined || exporter === undefined) throw new Error('no export');
    const finished = { ...exam, status: 'final' as const };
    expect(toJson(exporter(finished).value)).toBe(toJson(toBundle(finished).value));
  });

  it('fails on options that are none', () => {
    const wrong = { fhirVersion: 'R3' } as unknown as ExportOptions; // as from a file
    expect(prepareExport(wrong).issues).toEqual([
      expect.objectContaining({ code: 'unknown-code', path: ['fhirVersion'] }),
    ]);
  });
});

/** Writes over what every coding in an object and below it says. */
function blankCodings(value: object): void {
  for (const [name, member] of Object.entries(value)) {
    if (typeof member !== 'object' || member === null) continue;
    if (name === 'coding')
      for (const coding of member) Object.assign(coding, { code: '', display: '' });
    else blankCodings(member);
  }
}
