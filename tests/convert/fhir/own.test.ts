import { describe, expect, it } from 'vitest';
import { fromFhirBundles } from '../../../src/convert/fhir/index.ts';
import type { FhirMapping } from '../../../src/convert/mapping/fhir-mapping.ts';
import { toBundle } from '../../../src/export/to-bundle.ts';
import { toJson } from '../../../src/fhir/json/to-json.ts';
import { toXml } from '../../../src/fhir/xml/to-xml.ts';
import { orThrow } from '../../../src/issues/issue.ts';
import { sampleExams } from '../../../src/testing/sample-exam.ts';
import { sampled } from '../../sampled.ts';

const mapping: FhirMapping = { format: 'face-neck-mapping/1', source: { syntax: 'fhir' } };
const exams = [
  ...sampleExams(40, sampled(2, 60), { size: 'small' }),
  ...sampleExams(7, sampled(0, 20), { size: 'edge' }),
];
const bundles = exams.map((exam) => orThrow('export', toBundle(exam, { allowDraft: true })));

/** Texts of the same bundles, in each form that is taken. */
const forms: readonly (readonly [FhirMapping['source'], readonly string[]])[] = [
  [{ syntax: 'fhir' }, [bundles.map((one) => toJson(one, { pretty: true })).join('\n')]],
  [{ syntax: 'fhir' }, [`[${bundles.map((one) => toJson(one)).join(',')}]`]],
  [{ syntax: 'fhir', form: 'lines' }, [bundles.map((one) => `${toJson(one)}\n`).join('')]],
  [{ syntax: 'fhir', form: 'xml' }, bundles.map((one) => orThrow('write', toXml(one)))],
];

describe('bundles of this library, converted', () => {
  it.each(forms)('%j come back as the exams that they were made from', (source, texts) => {
    const results = texts.map((text) => fromFhirBundles(text, { ...mapping, source }));
    expect(results.flatMap(({ quarantine }) => quarantine)).toEqual([]);
    expect(results.flatMap((one) => one.exams.map(({ exam }) => exam))).toEqual(exams);
  });

  it('account for every value: the fates sum, and nothing is set aside', () => {
    for (const bundle of bundles) {
      const { ledger, exams: made } = fromFhirBundles(toJson(bundle), mapping);
      const { fields, ...fates } = ledger;
      expect(fields).toBe(leaves(JSON.parse(toJson(bundle))));
      expect(Object.values(fates).reduce((sum, one) => sum + one, 0)).toBe(fields);
      expect(ledger.quarantined).toBe(0);
      const keys = new Set(made[0]?.exam.statements.map(({ key }) => key));
      const told = made[0]?.ledger.flatMap(({ statement }) => statement ?? []) ?? [];
      expect(new Set(told)).toEqual(keys);
    }
  });

  it('keep their id, whatever prefix is stated for those of others', () => {
    const text = toJson(bundles[0] ?? {});
    const { exams: made } = fromFhirBundles(text, { ...mapping, exam: { prefix: 'harbour' } });
    expect(made.map(({ exam }) => exam.id)).toEqual([exams[0]?.id]);
  });

  it('set a second bundle of one exam aside, whole', () => {
    const text = toJson(bundles[0] ?? {});
    const { exams: made, quarantine } = fromFhirBundles(`${text}\n${text}`, mapping);
    expect(made.length).toBe(1);
    expect(quarantine.map(({ reason, raw }) => [reason, raw])).toEqual([['duplicate-exam', text]]);
  });
});

/** Values of JSON that are no object or list. */
function leaves(value: unknown): number {
  if (typeof value !== 'object' || value === null) return 1;
  return Object.values(value).reduce((sum: number, one) => sum + leaves(one), 0);
}
