import type { CodeableConcept, Observation, ObservationComponent } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { type Statement, toBundleOrThrow } from '../../src/index.ts';
import { builtInCatalogue } from '../../src/terminology/catalogue.ts';
import { lateralitySides } from '../../src/terminology/sides.ts';
import type { Laterality, Lean, ResultConcept } from '../../src/terminology/types.ts';
import { emptyExam } from '../report/empty-exam.ts';

/** Any statement without its key; which members go together the export checks. */
type Said = { readonly kind: Statement['kind'] } & Readonly<Record<string, unknown>>;

const { testPoints, testResults, sensationResults, scales } = builtInCatalogue;

function observationOf(said: Said): Observation {
  const statements = [{ key: 'said', ...said }] as unknown as readonly Statement[]; // checked by the export
  const bundle = toBundleOrThrow({ ...emptyExam('full'), statements });
  // Kept apart by their type below.
  const resources = (bundle.entry ?? []).map(({ resource }) => resource as Observation);
  const own = resources.filter(
    ({ resourceType, identifier = [] }) =>
      resourceType === 'Observation' && identifier.some(({ value }) => value === 'quay-1|said'),
  );
  expect(own).toHaveLength(1);
  return own[0] as Observation; // counted just now
}

type Answered = Pick<
  ObservationComponent,
  'valueCodeableConcept' | 'interpretation' | 'dataAbsentReason'
>;

function codesOf(concept: CodeableConcept | undefined): string[] {
  return (concept?.coding ?? []).map(
    ({ system = '', code }) => `${system.split('/').at(-1)} ${code}`,
  );
}

/**
 * What a receiver reads of an answer: its code, and whether it is usual, by the codes N and A of HL7's
 * v3-ObservationInterpretation. What was not tested has a reason of HL7's data-absent-reason in the place
 * of a value, and no interpretation: a value and a reason may not stand together (invariant obs-6, and
 * obs-3 for both empty).
 * @see https://hl7.org/fhir/R4/observation.html#invs
 */
function readsAs(
  answered: Answered,
  table: string,
  { code, usual, untested }: Lean<ResultConcept>,
): void {
  const interpretation = (answered.interpretation ?? []).flatMap(codesOf);
  if (untested) {
    expect(answered.valueCodeableConcept).toBeUndefined();
    expect(codesOf(answered.dataAbsentReason)[0]).toMatch(/^data-absent-reason /);
    expect(codesOf(answered.dataAbsentReason)).toContain(`${table} ${code}`);
    expect(interpretation).toEqual([]);
    return;
  }
  expect(answered.dataAbsentReason).toBeUndefined();
  expect(codesOf(answered.valueCodeableConcept)[0]).toBe(`${table} ${code}`);
  expect(interpretation).toEqual([`v3-ObservationInterpretation ${usual ? 'N' : 'A'}`]);
}

const reason = { code: 'time' };

function sideOf(laterality: Laterality): { readonly side?: string | undefined } {
  const { sides, required } = lateralitySides[laterality];
  return required ? { side: sides[0] } : {};
}

const points = [...testPoints.values()];
const tests = points.filter(({ group }) => group !== 'sensation');
const felt = points.filter(({ group }) => group === 'sensation').slice(0, 3);

describe('answers as a receiver reads them', () => {
  it.each(tests)('each result of the test $code', ({ code: test, group, results, laterality }) => {
    for (const result of testResults.values()) {
      if (!results?.includes(result.code)) continue;
      const answer =
        group === 'function'
          ? { kind: 'function-test' as const, result: result.code }
          : { kind: 'movement' as const, grade: result.code };
      const said = { ...answer, test, ...sideOf(laterality), ...(result.untested && { reason }) };
      readsAs(observationOf(said), 'test-results', result);
    }
  });

  it.each(felt)(
    'each result of each modality at the point $code',
    ({ code: point, modalities }) => {
      for (const modality of modalities ?? []) {
        for (const result of sensationResults.values()) {
          if (result.modalities !== undefined && !result.modalities.includes(modality)) continue;
          const results = [{ modality, result: result.code, ...(result.untested && { reason }) }];
          const { component = [] } = observationOf({
            kind: 'sensation',
            point,
            side: 'left',
            results,
          });
          const [only, ...more] = component;
          expect(more).toEqual([]);
          expect(codesOf(only?.code)).toContain(`modalities ${modality}`);
          readsAs(only ?? {}, 'sensation-results', result);
        }
      }
    },
  );

  it.each([...scales.values()])('each score of the scale $code', (scale) => {
    const scores = scale.grades?.map(({ code }) => code) ?? [1];
    for (const score of scores) {
      const version = scale.versions[0] ?? '';
      const said = { kind: 'scale-score' as const, scale: scale.code, version, score };
      const { valueCodeableConcept, valueInteger, method } = observationOf({
        ...said,
        ...sideOf(scale.laterality),
      });
      if (typeof score === 'number') expect(valueInteger).toBe(score);
      else expect(codesOf(valueCodeableConcept)[0]).toBe(`scales ${scale.code}.${score}`);
      expect(method?.text).toContain(version);
    }
  });
});
