import type { BodyStructure, Bundle, Observation } from 'fhir/r4.js';
import type * as r5 from 'fhir/r5.js';
import { describe, expect, test } from 'vitest';
import { toBundle } from '../../src/export/to-bundle.ts';
import { sampleExam } from '../../src/testing/sample-exam.ts';

const LATERALITY = 'http://hl7.org/fhir/StructureDefinition/observation-structureLaterality';
const BODY_SITE = 'http://hl7.org/fhir/StructureDefinition/bodySite';
// Value set of the extension observation-structureLaterality, extensions pack 5.3.0-ballot-tc1.
const sides = ['51440002', '399488007', '24028007', '7771000'];

const exam = sampleExam(1);
const sided = exam.statements.filter((statement) => 'side' in statement && statement.side);

type Of<T extends string> = Extract<
  NonNullable<NonNullable<Bundle['entry']>[0]['resource']>,
  { resourceType: T }
>;

function ofType<T extends string>(bundle: Bundle | undefined, type: T): Of<T>[] {
  return (bundle?.entry ?? []).flatMap(({ resource }) =>
    resource?.resourceType === type ? [resource as Of<T>] : [],
  );
}

const observations = (bundle: Bundle | undefined): Observation[] => ofType(bundle, 'Observation');

describe('the side of a place', () => {
  test('as extension: right, left, both and midline by codes of its value set', () => {
    const { value } = toBundle(exam);
    const used = observations(value).flatMap(({ bodySite }) => bodySite?.extension ?? []);
    expect(used.length).toBeGreaterThan(sided.length / 2);
    expect(used.filter(({ url }) => url !== LATERALITY)).toEqual([]);
    const codes = used.map(({ valueCodeableConcept: side }) => side?.coding?.[0]?.code ?? '');
    expect(codes.filter((code) => !sides.includes(code))).toEqual([]);
    expect(ofType(value, 'BodyStructure')).toEqual([]);
  });

  test('in text: no extension and no resource, our code and the words say it', () => {
    const { value } = toBundle(exam, { laterality: 'text' });
    const sites = observations(value).flatMap(({ bodySite }) => bodySite ?? []);
    expect(sites.filter(({ extension }) => extension !== undefined)).toEqual([]);
    expect(sites.some(({ text }) => text?.endsWith(', left'))).toBe(true);
    expect(sites.some(({ coding }) => coding?.[0]?.code?.endsWith('.left'))).toBe(true);
    expect(ofType(value, 'BodyStructure')).toEqual([]);
  });

  describe('as BodyStructure', () => {
    const r4 = toBundle(exam, { laterality: 'body-structure' }).value;
    const structures: BodyStructure[] = ofType(r4, 'BodyStructure');

    test('every observation with a side leads to one that has its place, its side and its patient', () => {
      const byUrl = new Map(structures.map((one) => [`urn:uuid:${one.id}`, one]));
      // A place with exceptions is no place that others share.
      const led = observations(r4).filter(
        ({ bodySite, component = [] }) =>
          bodySite?.extension && !component.some(({ code }) => code.coding?.[0]?.code === 'except'),
      );
      expect(led.length).toBeGreaterThan(sided.length / 2);
      for (const { bodySite, subject } of led) {
        const [extension] = bodySite?.extension ?? [];
        expect(extension?.url).toBe(BODY_SITE);
        const structure = byUrl.get(extension?.valueReference?.reference ?? '');
        // The place is shared with negatives, so that it has no code of a wider place.
        for (const coding of structure?.location?.coding ?? []) {
          expect(bodySite?.coding).toContainEqual(coding);
        }
        expect(structure?.patient).toEqual(subject);
        const side = structure?.locationQualifier?.[0]?.coding?.[0]?.code;
        expect(bodySite?.coding?.[0]?.code?.endsWith(`.${side?.slice('side.'.length)}`)).toBe(true);
      }
    });

    test('one place and side has one resource, with an identifier of its own', () => {
      const names = structures.map(({ identifier }) => identifier?.[0]?.value);
      expect(new Set(names).size).toBe(structures.length);
      expect(new Set(structures.map(({ id }) => id)).size).toBe(structures.length);
    });

    test('R5 has the element in place of the body site, as obs-8 asks', () => {
      const r5bundle = toBundle(exam, { laterality: 'body-structure', fhirVersion: 'R5' }).value;
      const all = (r5bundle?.entry ?? []).flatMap(({ resource }) => resource ?? []);
      const seen = all.filter((one): one is r5.Observation => one.resourceType === 'Observation');
      const placed = seen.filter(({ bodyStructure }) => bodyStructure !== undefined);
      expect(placed.length).toBeGreaterThan(sided.length / 2);
      expect(placed.filter(({ bodySite }) => bodySite !== undefined)).toEqual([]);
      const bodies = all.filter(
        (one): one is r5.BodyStructure => one.resourceType === 'BodyStructure',
      );
      expect(bodies).toHaveLength(structures.length);
      for (const { includedStructure } of bodies) {
        expect(includedStructure[0]?.structure.coding?.length).toBeGreaterThan(0);
        expect(includedStructure[0]?.laterality?.coding?.[0]?.code).toMatch(/^side\./);
      }
    });
  });
});
