import { describe, expect, test } from 'vitest';
import { examples } from '../../examples/all-exams.ts';
import { type Exam, finishExamOrThrow, startExam, state, toBundle } from '../../src/index.ts';
import { builtInCatalogue } from '../../src/terminology/catalogue.ts';
import { lateralitySides } from '../../src/terminology/sides.ts';
import { sampleExam, sampleExams } from '../../src/testing/index.ts';
import { sampled } from '../sampled.ts';
import { observationsOf, overread, wider } from './overread.ts';

const exams = [
  ...examples.values(),
  ...sampleExams(1, sampled(6, 60)),
  sampleExam(1, { size: 'full' }),
];

describe('what was not found', () => {
  test.each(['R4', 'R5'] as const)('bears no code of a wider sign or place, %s', (fhirVersion) => {
    expect(exams.flatMap((exam) => overread(exam, { fhirVersion }))).toEqual([]);
  });

  test.each(Object.entries(denied()))('%s, of every row that there is', (_, statements) => {
    const exam = examOf(statements);
    expect(statements.length).toBeGreaterThan(30);
    for (const fhirVersion of ['R4', 'R4B', 'R5'] as const)
      expect(overread(exam, { fhirVersion })).toEqual([]);
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
    statements: base.statements.map(({ at: _, ...one }) => ({
      ...one,
      carried: { exam: 'before', statement: one.key, at, confirmed },
    })),
  });

  test('is preliminary and has the time at which it was seen', () => {
    const observations = observationsOf(carriedExam(false), {});
    for (const { key } of base.statements) {
      const observation = observations.get(key);
      expect(observation?.status, key).toBe('preliminary');
      expect(observation?.effectiveDateTime, key).toBe(at);
      expect(observation?.effectivePeriod, key).toBeUndefined();
    }
  });

  test.each([
    ['of today', base.performed.start, false],
    ['after it', '2021', false],
    ['before it', '2020-05-03', true],
    ['of the same year, which may be before it', '2020', true],
  ])('has no time of its own %s', (_, own, ok) => {
    const [first, ...rest] = carriedExam(false).statements;
    const statements = first === undefined ? rest : [{ ...first, at: own }, ...rest];
    const { issues } = toBundle({ ...carriedExam(false), statements });
    const told = issues.filter(({ severity }) => severity === 'error');
    expect(told.map(({ code, path }) => `${code} ${path.join('.')}`)).toEqual(
      ok ? [] : ['reversed-dates statements.0.at'],
    );
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

/** Statements without their keys. */
type Stated = Parameters<typeof state>[1];

function examOf(statements: readonly Stated[]): Exam {
  const draft = startExam({
    id: 'denied',
    subject: { reference: 'Patient/417' },
    examiners: [{ key: 'nurse' }],
    performed: { start: '2025-05-06T08:00:00+02:00' },
    recorded: '2025-05-06T08:10:00+02:00',
    protocol: { id: 'skin-lesion', version: '1.0.0' },
  });
  return finishExamOrThrow(statements.reduce(state, draft), 'final');
}

/** Each row of the tables, stated as not there, not known, not usable or not examined. */
function denied(): { readonly [what: string]: readonly Stated[] } {
  const { findings, regions, measures, symptoms } = builtInCatalogue;
  const reason = { code: 'time' };
  const placed = (region: string, divided = regions.get(region)?.laterality): object => {
    const { sides, required } = lateralitySides[divided ?? 'midline'];
    return { region, ...(required && { side: sides[0] }) };
  };
  // Rows of a table, whose names the types of a statement do not narrow.
  const of = (rows: Iterable<string>, made: (code: string) => object): readonly Stated[] =>
    Array.from(rows, (code) => made(code) as Stated);
  const sign = (said: object) => (finding: string) => ({
    kind: 'finding',
    finding,
    ...placed(findings.get(finding)?.regions[0] ?? 'neck'),
    ...said,
  });
  const region = (said: object) => (code: string) => ({
    kind: 'region-state',
    ...placed(code),
    ...said,
  });
  return {
    'signs not found': of(findings.keys(), sign({ presence: 'absent' })),
    'signs not decided': of(findings.keys(), sign({ presence: 'indeterminate' })),
    'signs suspected': of(findings.keys(), sign({ presence: 'present', certainty: 'suspected' })),
    'regions normal': of(regions.keys(), region({ state: 'normal', methods: ['inspection'] })),
    'regions not examined': of(regions.keys(), region({ state: 'not-examined', reason })),
    'measurements without a usable value': [...measures.values()]
      .filter(({ rangeOf, scale, test: of }) => (rangeOf ?? scale ?? of) === undefined)
      .map(
        ({ code, unit, region: at, laterality }) =>
          ({
            kind: 'measurement',
            measure: code,
            unit,
            unusable: reason,
            ...placed(at, laterality),
          }) as Stated,
      ),
    'complaints denied': of(symptoms.keys(), (symptom) => ({
      kind: 'symptom',
      symptom,
      answer: 'no',
    })),
    'complaints not asked for': of(symptoms.keys(), (symptom) => ({
      kind: 'symptom',
      symptom,
      answer: 'not-asked',
    })),
  };
}
