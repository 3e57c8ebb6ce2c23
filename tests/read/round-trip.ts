import { expect } from 'vitest';
import type { BundleType, ExportOptions } from '../../src/export/options.ts';
import { toBundleOrThrow } from '../../src/export/to-bundle.ts';
import { fromJson } from '../../src/fhir/json/from-json.ts';
import { toJson } from '../../src/fhir/json/to-json.ts';
import type { FhirVersion } from '../../src/fhir/version.ts';
import type { Exam } from '../../src/model/exam.ts';
import { fromBundle } from '../../src/read/from-bundle.ts';
import type { ReadOptions } from '../../src/read/options.ts';
import { german } from '../../src/terminology/languages/de.ts';
import { clinic } from '../clinic.ts';

export const versions: readonly FhirVersion[] = ['R4', 'R4B', 'R5'];

/** Every way in which a bundle can be written. */
export const types: readonly (Pick<ExportOptions, 'transaction'> & { bundleType: BundleType })[] = [
  { bundleType: 'collection' },
  { bundleType: 'document' },
  { bundleType: 'transaction' },
  { bundleType: 'transaction', transaction: 'conditional' },
];

export const everyExport: readonly ExportOptions[] = versions.flatMap((fhirVersion) =>
  types.map((type) => ({ ...clinic, fhirVersion, ...type })),
);

const edition = 'http://snomed.info/sct/900000000000207008/version/20240101';

const own = {
  canonicalBase: 'https://clinic.example/fhir',
  identity: {
    exam: 'https://clinic.example/checks',
    statement: 'https://clinic.example/statements',
    tracking: 'https://clinic.example/lesions',
  },
};

/** What else can be asked of an export, and how it is read. */
export const otherExports: readonly (readonly [string, readonly ExportOptions[], ReadOptions])[] = [
  ['without narrative', [{ narrative: false }], {}],
  [
    'without SNOMED CT and with all of it',
    [{ snomed: 'none' }, { snomed: { licensed: { holder: 'Harbour clinic', edition } } }],
    {},
  ],
  ['with sides as text', [{ laterality: 'text' }], {}],
  [
    'when its sides stand in BodyStructure resources',
    (['R4', 'R5'] as const).map((fhirVersion) => ({ fhirVersion, laterality: 'body-structure' })),
    {},
  ],
  [
    'from German displays',
    (['collection', 'document'] as const).map((bundleType) => ({ language: german, bundleType })),
    { language: german },
  ],
  ['under identifiers and a canonical base of the clinic', [own], own],
];

/** The exam comes back as it was, and nothing is left over. */
export function expectSame(exam: Exam, options: ExportOptions, reading: ReadOptions): void {
  const { value, remainder } = fromBundle(toBundleOrThrow(exam, options), reading);
  const { language: _, ...told } = options;
  expect(value, `${exam.id} ${JSON.stringify(told)}`).toEqual(exam);
  expect(remainder, `${exam.id} ${JSON.stringify(told)}`).toEqual([]);
}

/** The same by way of the text of the bundle. */
export function expectSameFromText(exam: Exam): void {
  const parsed = fromJson(toJson(toBundleOrThrow(exam), { pretty: true }));
  expect(parsed.issues).toEqual([]);
  expect(fromBundle(parsed.value).value, exam.id).toEqual(exam);
}
