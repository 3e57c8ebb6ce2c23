import type { CodeableConcept, Observation } from 'fhir/r4.js';
import { describe, expect, test } from 'vitest';
import { examples } from '../../examples/all-exams.ts';
import { type Exam, type ExportOptions, type Statement, toBundleOrThrow } from '../../src/index.ts';
import { builtInCatalogue } from '../../src/terminology/catalogue.ts';
import { sampleExams } from '../../src/testing/index.ts';

/**
 * A code of a wider thing says less of what was found, and more of what was not. So nothing that was
 * not found, is not known or was not examined may bear one: the relations of ConceptMap,
 * https://hl7.org/fhir/R4/valueset-concept-map-equivalence.html
 */
const wider = codesBy((relation) => relation !== 'equivalent');
const equal = codesBy((relation) => relation === 'equivalent');

function codesBy(wanted: (relation: string) => boolean): ReadonlySet<string> {
  const tables: readonly ReadonlyMap<string, object>[] = Object.values(builtInCatalogue);
  const mappings = tables
    .flatMap((table) => [...table.values()])
    .flatMap((row) => ('maps' in row && Array.isArray(row.maps) ? row.maps : []));
  return new Set(mappings.flatMap(({ relation, code }) => (wanted(relation) ? [code] : [])));
}

/** Whether the statement, read by its own fields alone, says that something is there. */
const found: { readonly [K in Statement['kind']]: (of: never) => boolean } = {
  finding: (of: Extract<Statement, { kind: 'finding' }>) =>
    of.presence === 'present' && of.certainty !== 'suspected',
  'region-state': (of: Extract<Statement, { kind: 'region-state' }>) => of.state === 'abnormal',
  sensation: (of: Extract<Statement, { kind: 'sensation' }>) =>
    of.results.some(({ result }) => !usualOrUntested('sensationResults', result)),
  'sensation-comparison': (of: Extract<Statement, { kind: 'sensation-comparison' }>) =>
    of.result === 'right-less' || of.result === 'left-less',
  movement: (of: Extract<Statement, { kind: 'movement' }>) =>
    !usualOrUntested('testResults', of.grade),
  'function-test': (of: Extract<Statement, { kind: 'function-test' }>) =>
    !usualOrUntested('testResults', of.result),
  measurement: () => true,
  'scale-score': () => true,
  symptom: (of: Extract<Statement, { kind: 'symptom' }>) => of.answer === 'yes',
  note: () => true,
  image: () => true,
};

function usualOrUntested(table: 'sensationResults' | 'testResults', code: string): boolean {
  const row = builtInCatalogue[table].get(code);
  return row?.usual === true || row?.untested === true;
}

function observationsOf(exam: Exam, options: ExportOptions): ReadonlyMap<string, Observation> {
  const { entry = [] } = toBundleOrThrow(exam, { allowDraft: true, ...options });
  const observations = entry.flatMap(({ resource }) =>
    resource?.resourceType === 'Observation' ? [resource as Observation] : [],
  );
  return new Map(observations.map((one) => [one.identifier?.[0]?.value?.split('|')[1] ?? '', one]));
}

/** Codes of wider things that stand in the code or site of what was not found. */
function overread(exam: Exam, options: ExportOptions = {}): string[] {
  const observations = observationsOf(exam, options);
  return exam.statements.flatMap((statement) => {
    if (found[statement.kind](statement as never)) return []; // each takes its own kind
    const observation = observations.get(statement.key);
    const concepts: (CodeableConcept | undefined)[] = [observation?.code, observation?.bodySite];
    return concepts
      .flatMap((concept) => concept?.coding ?? [])
      .filter(({ code = '' }) => wider.has(code) && !equal.has(code))
      .map(({ code }) => `${exam.id} ${statement.key} ${code}`);
  });
}

const exams = [...examples.values(), ...sampleExams(1, 60), ...sampleExams(1, 2, { size: 'full' })];

describe('what was not found', () => {
  test.each(['R4', 'R5'] as const)('bears no code of a wider sign or place, %s', (fhirVersion) => {
    expect(exams.flatMap((exam) => overread(exam, { fhirVersion }))).toEqual([]);
  });

  test('and what was found keeps it: the wider place is true of it', () => {
    const codings = exams
      .flatMap((exam) => [...observationsOf(exam, {}).values()])
      .flatMap(({ bodySite, code }) => [...(bodySite?.coding ?? []), ...(code.coding ?? [])]);
    expect(codings.filter(({ code = '' }) => wider.has(code)).length).toBeGreaterThan(50);
  });
});

describe('what was taken over and not looked at again', () => {
  const [base] = exams;
  if (base === undefined) throw new TypeError('no exam');
  const at = '2020-05-04T09:00:00Z';
  const carriedExam = (confirmed: boolean): Exam => ({
    ...base,
    status: 'final',
    statements: base.statements.map((one) => ({
      ...one,
      carried: { exam: 'before', statement: one.key, at, confirmed },
    })),
  });

  test('is preliminary and has the time at which it was seen', () => {
    const observations = observationsOf(carriedExam(false), {});
    for (const { key, at: own, ...rest } of base.statements) {
      const observation = observations.get(key);
      const undone = 'state' in rest && rest.state === 'not-examined';
      expect(observation?.status, key).toBe(undone ? 'cancelled' : 'preliminary');
      expect(observation?.effectiveDateTime, key).toBe(own ?? at);
      expect(observation?.effectivePeriod, key).toBeUndefined();
    }
  });

  test('is of today once it was confirmed', () => {
    const observations = observationsOf(carriedExam(true), {});
    const today = observationsOf({ ...base, status: 'final' }, {});
    for (const { key } of base.statements) {
      expect(observations.get(key)?.status, key).toBe(today.get(key)?.status);
      expect(observations.get(key)?.effectiveDateTime, key).toBe(today.get(key)?.effectiveDateTime);
    }
  });
});
