import { describe, expect, it } from 'vitest';
import type { Exam } from '../../src/model/exam.ts';
import { builtInCatalogue } from '../../src/terminology/catalogue.ts';
import { type SampleSize, sampleExam, sampleExams } from '../../src/testing/sample-exam.ts';
import { toldByKind } from '../report/told-by-kind/told-by-kind.ts';
import { sampled } from '../sampled.ts';
import { expectAccepted } from './accepted.ts';

/** tests/slow/seeded.test.ts takes thousands. */
const amounts: readonly (readonly [SampleSize, number])[] = [
  ['small', 100],
  ['usual', 30],
  ['full', 4],
  ['edge', 80],
];

describe('sample exams', () => {
  it.each(amounts)('of size %s are accepted, without two opposites of one place', (size, count) => {
    for (const exam of sampleExams(1, count, { size })) expectAccepted(exam);
  });

  it('follow from the seed alone', () => {
    for (const [size] of amounts) {
      expect(JSON.stringify(sampleExam(7, { size }))).toBe(JSON.stringify(sampleExam(7, { size })));
    }
    expect(sampleExam(7)).not.toEqual(sampleExam(8));
    expect(sampleExam(3)).not.toEqual(sampleExam(3 + 2 ** 32));
  });

  it('hold every kind, state and side, and every optional property of a statement', () => {
    const edge = [...sampleExams(1, sampled(120, 300), { size: 'edge' })];
    const seen = new Set(edge.flatMap(properties));
    for (const wanted of [...kinds, ...states, ...sides, ...statuses, ...optional]) {
      expect(seen, wanted).toContain(wanted);
    }
  });

  it('of the full size speak of every region, test point, symptom and scale', () => {
    const exams = [...sampleExams(1, 3, { size: 'full' })];
    for (const { statements } of exams) {
      const named = new Set(statements.flatMap((statement) => Object.values(statement)));
      const regions = [...builtInCatalogue.regions.values()].filter(({ group }) => !group);
      for (const table of [
        builtInCatalogue.testPoints,
        builtInCatalogue.symptoms,
        builtInCatalogue.scales,
      ]) {
        for (const code of table.keys()) expect(named, code).toContain(code);
      }
      for (const { code } of regions) expect(named, code).toContain(code);
    }
  });
});

function properties(exam: Exam): string[] {
  return [
    `status=${exam.status}`,
    ...exam.statements.flatMap((statement) => [
      `kind=${statement.kind}`,
      ...('state' in statement ? [`state=${statement.state}`] : []),
      ...('side' in statement ? [`side=${statement.side}`] : []),
      ...Object.keys(statement).map((property) => `${statement.kind}.${property}`),
    ]),
  ];
}

const kinds = Object.keys(toldByKind).map((kind) => `kind=${kind}`);
const states = ['normal', 'abnormal', 'partial', 'not-examined', 'not-applicable'].map(
  (state) => `state=${state}`,
);
const sides = ['right', 'left', 'both', 'midline', 'right-of-midline', 'left-of-midline'].map(
  (side) => `side=${side}`,
);
const statuses = [
  'preliminary',
  'final',
  'amended',
  'corrected',
  'appended',
  'cancelled',
  'entered-in-error',
].map((status) => `status=${status}`);
const optional = [
  ...['at', 'examiner', 'instruments', 'note', 'codings', 'carried'].map(
    (name) => `finding.${name}`,
  ),
  ...['place', 'methods', 'certainty', 'attributes', 'tracking'].map((name) => `finding.${name}`),
  ...['eyesClosed'].map((name) => `sensation.${name}`),
  'sensation-comparison.reason',
  'movement.synkinesis',
  'movement.reason',
  'function-test.reason',
  ...[
    'comparator',
    'readings',
    'convention',
    'conditions',
    'unusable',
    'about',
    'estimated',
    'methods',
    'place',
  ].map((name) => `measurement.${name}`),
  ...['region', 'side', 'items', 'about'].map((name) => `scale-score.${name}`),
  ...[
    'toldBy',
    'region',
    'side',
    'onset',
    'durationText',
    'duration',
    'course',
    'severity',
    'trigger',
  ].map((name) => `symptom.${name}`),
  'note.region',
  'note.side',
  'image.side',
  'image.scaleBar',
  'image.purpose',
  'image.about',
];
