import type { Bundle, FhirResource } from 'fhir/r4.js';
import { describe, expect, test } from 'vitest';
import { placeCode } from '../../src/fhir/place.ts';
import { builtInCatalogue, type Exam, type Statement, toBundleOrThrow } from '../../src/index.ts';
import { sayingsOf, standingOf, subjectOf } from '../../src/kinds/registries/meanings.ts';
import { sampleExam } from '../../src/testing/index.ts';
import { sampled } from '../sampled.ts';

const catalogue = builtInCatalogue;
const reason = { code: 'time' };
const cheek = { region: 'cheek-malar', side: 'left' } as const;
const methods = ['inspection'] as const;

/** Statements without their keys, and what each is to say: by definition of the exam's words. */
const cases: readonly [string, object, readonly string[]][] = [
  [
    'a sign found',
    { kind: 'finding', finding: 'naevus', presence: 'present', ...cheek },
    ['states'],
  ],
  [
    'a sign not found',
    { kind: 'finding', finding: 'naevus', presence: 'absent', ...cheek },
    ['denies'],
  ],
  [
    'a sign not decided',
    { kind: 'finding', finding: 'naevus', presence: 'indeterminate', ...cheek },
    ['open'],
  ],
  [
    'a sign suspected',
    { kind: 'finding', finding: 'naevus', presence: 'present', certainty: 'suspected', ...cheek },
    ['open'],
  ],
  ['a region normal', { kind: 'region-state', state: 'normal', methods, ...cheek }, ['denies']],
  ['a region abnormal', { kind: 'region-state', state: 'abnormal', methods, ...cheek }, ['states']],
  [
    'a region seen in part',
    { kind: 'region-state', state: 'partial', limit: reason, methods, ...cheek },
    ['open'],
  ],
  [
    'a region not examined',
    { kind: 'region-state', state: 'not-examined', reason, ...cheek },
    ['none'],
  ],
  [
    'a region not there',
    { kind: 'region-state', state: 'not-applicable', reason, ...cheek },
    ['none'],
  ],
  [
    'a sensation by two modalities',
    {
      kind: 'sensation',
      point: 'v2',
      side: 'left',
      results: [
        { modality: 'light-touch', result: 'normal' },
        { modality: 'pinprick', result: 'not-tested', reason },
      ],
    },
    ['denies', 'none'],
  ],
  [
    'a sensation lost',
    {
      kind: 'sensation',
      point: 'v2',
      side: 'left',
      results: [{ modality: 'pinprick', result: 'absent' }],
    },
    ['states'],
  ],
  [
    'sides alike',
    { kind: 'sensation-comparison', point: 'v2', modality: 'pinprick', result: 'equal' },
    ['denies'],
  ],
  [
    'one side less',
    { kind: 'sensation-comparison', point: 'v2', modality: 'pinprick', result: 'left-less' },
    ['states'],
  ],
  [
    'sides not compared',
    {
      kind: 'sensation-comparison',
      point: 'v2',
      modality: 'pinprick',
      result: 'not-compared',
      reason,
    },
    ['none'],
  ],
  [
    'a movement in full',
    { kind: 'movement', test: 'frontalis', side: 'left', grade: 'normal' },
    ['denies'],
  ],
  [
    'a movement weak',
    { kind: 'movement', test: 'frontalis', side: 'left', grade: 'trace' },
    ['states'],
  ],
  [
    'a movement not asked for',
    { kind: 'movement', test: 'frontalis', side: 'left', grade: 'not-tested', reason },
    ['none'],
  ],
  [
    'a test passed',
    { kind: 'function-test', test: 'cn8-whisper', side: 'left', result: 'pass' },
    ['denies'],
  ],
  [
    'a test failed',
    { kind: 'function-test', test: 'cn8-whisper', side: 'left', result: 'fail' },
    ['states'],
  ],
  [
    'a test not possible',
    { kind: 'function-test', test: 'cn8-whisper', side: 'left', result: 'unable', reason },
    ['none'],
  ],
  [
    'a value',
    {
      kind: 'measurement',
      measure: 'mrd1',
      region: 'lid-upper',
      side: 'left',
      value: '3.5',
      unit: 'mm',
    },
    ['states'],
  ],
  [
    'no usable value',
    {
      kind: 'measurement',
      measure: 'mrd1',
      region: 'lid-upper',
      side: 'left',
      unit: 'mm',
      unusable: reason,
    },
    ['none'],
  ],
  ['a score', { kind: 'scale-score', scale: 'hb', version: '1985', score: 'hb-1' }, ['states']],
  ['a complaint', { kind: 'symptom', symptom: 'hoarse', answer: 'yes' }, ['states']],
  ['no complaint', { kind: 'symptom', symptom: 'hoarse', answer: 'no' }, ['denies']],
  ['a complaint not sure', { kind: 'symptom', symptom: 'hoarse', answer: 'unsure' }, ['open']],
  ['no answer', { kind: 'symptom', symptom: 'hoarse', answer: 'declined' }, ['none']],
  ['no question', { kind: 'symptom', symptom: 'hoarse', answer: 'not-asked' }, ['none']],
  ['words', { kind: 'note', text: 'Scar of a fish hook' }, ['none']],
  [
    'a picture',
    {
      kind: 'image',
      title: 'Left cheek',
      url: 'https://clinic.example/1',
      contentType: 'image/jpeg',
      consent: 'given',
      ...cheek,
    },
    ['none'],
  ],
];

function statement(given: object): Statement {
  return { key: 'one', ...given } as Statement; // complete in the list above
}

describe('what a statement states or denies', () => {
  test.each(cases)('%s', (_, given, polarities) => {
    const said = sayingsOf(statement(given), catalogue);
    expect(said.map(({ polarity }) => polarity)).toEqual(polarities);
  });

  test('only what was examined in part is partial, and what says nothing has examined nothing', () => {
    for (const [, given] of cases) {
      for (const { polarity, completeness } of sayingsOf(statement(given), catalogue)) {
        const partial = 'state' in given && given.state === 'partial';
        expect(completeness).toBe(partial ? 'part' : polarity === 'none' ? 'none' : 'whole');
      }
    }
  });

  test('what was taken over and not looked at again keeps the time when it was seen', () => {
    const carried = { exam: 'before', statement: 'one', at: '2025-05-06' };
    for (const [, given] of cases) {
      const old = statement({ ...given, carried: { ...carried, confirmed: false } });
      const seen = statement({ ...given, carried: { ...carried, confirmed: true } });
      for (const said of sayingsOf(old, catalogue)) {
        expect(said).toMatchObject({ unconfirmed: true, carried: true, seen: '2025-05-06' });
      }
      for (const said of sayingsOf(seen, catalogue)) {
        expect(said).toMatchObject({ unconfirmed: false, carried: true, seen: undefined });
      }
    }
  });
});

const exams: readonly Exam[] = Array.from({ length: sampled(12, 40) }, (_, seed) =>
  sampleExam(seed + 1, { size: seed === 0 ? 'full' : 'usual' }),
);

/** Code of the body site of each observation, by its identifier. */
function sitesOf(exam: Exam): Map<string | undefined, string | undefined> {
  const bundle = toBundleOrThrow(exam) as Bundle<FhirResource>; // R4 is the default
  const observations = (bundle.entry ?? []).flatMap(({ resource }) =>
    resource?.resourceType === 'Observation' ? [resource] : [],
  );
  return new Map(
    observations.map(({ identifier, bodySite }) => [
      identifier?.[0]?.value,
      bodySite?.coding?.[0]?.code,
    ]),
  );
}

describe('where a statement stands', () => {
  test('every kind has a region or the exam as a whole, and a part of the body that there is', () => {
    const kinds = new Set<string>();
    for (const one of exams.flatMap(({ statements }) => statements)) {
      const { region, section } = standingOf(one, catalogue);
      kinds.add(one.kind);
      if (region !== undefined) expect(catalogue.regions.has(region)).toBe(true);
      if (section !== undefined) expect(catalogue.sections.has(section)).toBe(true);
      const { table, code } = subjectOf(one);
      expect(catalogue[table].has(code)).toBe(true);
    }
    expect(kinds.size).toBe(new Set(cases.map(([, given]) => statement(given).kind)).size);
  });

  test('it leaves as the body site and comes as what is said of it', () => {
    for (const exam of exams) {
      const sites = sitesOf(exam);
      for (const one of exam.statements) {
        const { region, side } = standingOf(one, catalogue);
        const site = region === undefined ? undefined : placeCode(region, side);
        expect(sites.get(`${exam.id}|${one.key}`)).toBe(site);
        const places = region === undefined ? [] : [{ region, side }];
        const told = sayingsOf(one, catalogue).map(({ at }) => at);
        expect(told).toEqual(told.map(() => places));
      }
    }
  });
});
