import { describe, expect, test } from 'vitest';
import type { ExportOptions } from '../../src/export/options.ts';
import { toBundle } from '../../src/export/to-bundle.ts';
import { licenceIssues } from '../../src/fhir/licence/licence-gate.ts';
import { freeSet } from '../../src/terminology/published/free-set.ts';
import { createRandom } from '../../src/testing/random.ts';
import { sampleExam } from '../../src/testing/sample-exam.ts';
import adversarial from '../cases/terminology/caller-codings.json' with { type: 'json' };
import { clinic } from '../clinic.ts';
import { attempt, forms, leaving, planted } from '../export/codings/licence-channels.ts';

const EXAMS = 10_000;
const BLOCK = 1_000;
const sizes = ['small', 'usual', 'edge'] as const;
const versions = ['R4', 'R4B', 'R5'] as const;
const types = ['collection', 'transaction', 'document'] as const;
const lateralities = ['extension', 'body-structure', 'text'] as const;

/** A seeded exam with codings of an adversarial caller on a third of its statements. */
function hostileExam(seed: number) {
  const random = createRandom(seed);
  const size = seed % 100 === 0 ? 'full' : (sizes[seed % 3] ?? 'small');
  const exam = sampleExam(seed, { size });
  const codings = () => [random.pick(adversarial).coding, random.pick(adversarial).coding];
  const statements = exam.statements.map((statement) =>
    random.chance(0.3) ? { ...statement, codings: codings() } : statement,
  );
  const conclusion = exam.conclusion && { ...exam.conclusion, codings: codings() };
  return { ...exam, statements, ...(conclusion && { conclusion }) } as typeof exam;
}

function optionsOf(seed: number): ExportOptions {
  return {
    ...clinic,
    fhirVersion: versions[seed % 3] ?? 'R4',
    bundleType: types[Math.floor(seed / 3) % 3] ?? 'collection',
    laterality: lateralities[Math.floor(seed / 9) % 3] ?? 'extension',
  };
}

/** `ADVERSARIAL_EXPORTS=100000` for all; a tenth of that takes some three minutes on an idle core. */
const ATTEMPTS = Number(process.env.ADVERSARIAL_EXPORTS ?? 3_000);

test(`of ${ATTEMPTS} adversarial exports none holds the planted id`, () => {
  const seen = { whole: 0, refused: 0, leaks: 0 };
  for (let seed = 0; seed < ATTEMPTS; seed++) {
    const text = leaving(attempt(seed), forms[seed % 3] ?? 'json');
    seen[text === undefined ? 'refused' : 'whole'] += 1;
    if (text?.includes(planted)) seen.leaks += 1;
  }
  console.info(JSON.stringify(seen));
  expect(seen.leaks).toBe(0);
  expect(seen.whole).toBeGreaterThan(ATTEMPTS / 5);
}, 7_200_000);

describe(`${EXAMS} seeded exams with adversarial codings of the caller`, () => {
  const blocks = Array.from({ length: EXAMS / BLOCK }, (_, block) => block * BLOCK);

  test.each(blocks)(
    'from %i: no id outside the free set under free-set, none under none',
    (first) => {
      const figures = { bundles: 0, 'codes let out': 0, 'outside the set': 0, 'under none': 0 };
      for (let seed = first; seed < first + BLOCK; seed++) {
        const exam = hostileExam(seed);
        const options = optionsOf(seed);
        const look = seed % 2 === 0 ? { freeSet } : {};
        const free = toBundle(exam, { ...options, ...look }).value;
        const none = toBundle(exam, { ...options, snomed: 'none' }).value;
        if (free === undefined || none === undefined)
          throw new Error(`seed ${seed} gave no bundle`);
        figures.bundles += 2;
        figures['outside the set'] += licenceIssues(free, 'free-set', { freeSet }).length;
        figures['under none'] += licenceIssues(none, 'none').length;
        if (seed % 50 === 0) figures['codes let out'] += licenceIssues(free, 'none').length;
      }
      console.info(JSON.stringify(figures));
      expect(figures['outside the set']).toBe(0);
      expect(figures['under none']).toBe(0);
      expect(figures['codes let out']).toBeGreaterThan(BLOCK / 50);
    },
  );

  test('the same gate catches one planted id in each of 500 bundles', () => {
    for (let seed = 0; seed < 500; seed++) {
      const { value } = toBundle(sampleExam(seed, { size: 'small' }), optionsOf(seed));
      const text = JSON.stringify(value);
      const places = [...text.matchAll(/"resourceType":"Observation",/g)];
      const at = createRandom(seed).pick(places).index;
      const coding = { system: 'http://snomed.info/sct', code: '68426009' };
      const planted = `${text.slice(0, at)}"extension":[{"valueCoding":${JSON.stringify(coding)}}],${text.slice(at)}`;
      expect(licenceIssues(JSON.parse(planted), 'free-set', { freeSet })).toHaveLength(1);
    }
  });
});
