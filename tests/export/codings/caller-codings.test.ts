import type { Bundle, Coding } from 'fhir/r4.js';
import { describe, expect, test } from 'vitest';
import type { ExportOptions } from '../../../src/export/options.ts';
import { toBundle } from '../../../src/export/to-bundle.ts';
import { licenceIssues } from '../../../src/fhir/licence/licence-gate.ts';
import { pathText } from '../../../src/issues/path.ts';
import { freeSet } from '../../../src/terminology/published/free-set.ts';
import { sampleExam } from '../../../src/testing/sample-exam.ts';
import adversarial from '../../cases/terminology/caller-codings.json' with { type: 'json' };
import { sampled } from '../../sampled.ts';

const SCT = 'http://snomed.info/sct';
const plain = sampleExam(3, { size: 'small' });
const licensed: ExportOptions['snomed'] = {
  licensed: {
    holder: 'Harbour clinic',
    edition: 'http://snomed.info/sct/900000000000207008/version/20240101',
  },
};

/** The exam with codings of the caller on its first statement, and no others. */
function withCodings(codings: readonly object[]) {
  const [first, ...rest] = plain.statements.map(({ codings: _, ...statement }) => statement);
  const { conclusion, ...exam } = plain;
  const { codings: _, ...judged } = conclusion ?? { text: 'Nothing of note.', concern: 'none' };
  return { ...exam, conclusion: judged, statements: [{ ...first, codings }, ...rest] } as never;
}

function exported(codings: readonly object[], options: ExportOptions = {}) {
  const outcome = toBundle(withCodings(codings), options);
  const text = JSON.stringify(outcome.value);
  const issues = outcome.issues
    .filter(({ path }) => path.includes('codings'))
    .map(({ code, severity, path }) => [code, severity, pathText(path.slice(4))]);
  const sent = codings.map((coding) => text.includes(JSON.stringify(coding)));
  return { issues, sent, bundle: outcome.value as Bundle };
}

describe('a coding of the caller', () => {
  test.each(adversarial)('$description', ({ coding, issues, sent }) => {
    const policies = {
      'free-set': { freeSet },
      'free-set without look-up': {},
      none: { snomed: 'none' },
      licensed: { snomed: licensed },
    } as const;
    for (const [name, options] of Object.entries(policies)) {
      const told = (issues as Record<string, unknown>)[name] ?? issues.any;
      const left = (sent as Record<string, unknown>)[name] ?? sent.any;
      const outcome = exported([coding], options);
      expect([name, outcome.issues]).toEqual([name, told]);
      expect([name, outcome.sent]).toEqual([name, [left]]);
    }
  });

  // 73211009 has the check digit of an identifier (SNOMED International, Verhoeff) and no row in our tables.
  test.each([
    { options: { snomed: 'none' }, reason: 'policy-none', severity: 'information' },
    { options: {}, reason: 'not-looked-up', severity: 'warning' },
    { options: { freeSet: new Set<string>() }, reason: 'outside-free-set', severity: 'warning' },
  ] as { options: ExportOptions; reason: string; severity: string }[])(
    'is held back with the reason: $reason',
    ({ options, reason, severity }) => {
      const { issues } = toBundle(withCodings([{ system: SCT, code: '73211009' }]), options);
      const told = issues.filter(({ code }) => code === 'withheld-code');
      expect(told.map((one) => [one.facts.reason, one.severity])).toEqual([[reason, severity]]);
    },
  );

  test('is told with its place in the exam, in statements and in the conclusion', () => {
    const wrong = { system: SCT, code: '11934001' };
    const exam: Record<string, unknown> = withCodings([{ system: SCT, code: '11934000' }, wrong]);
    exam.conclusion = { text: 'Drooping lid.', concern: 'watch', codings: [wrong] };
    const paths = toBundle(exam as never).issues.map(({ path }) => pathText(path));
    expect(paths).toContain('statements[0].codings[1].code');
    expect(paths).toContain('conclusion.codings[0].code');
  });

  test('is kept out of messages, and out of received unless asked for', () => {
    const codings = [{ system: SCT, code: '11934001' }];
    const { issues } = toBundle(withCodings(codings));
    expect(JSON.stringify(issues)).not.toContain('11934001');
    const asked = toBundle(withCodings(codings), { includeValues: true });
    expect(asked.issues.some(({ received }) => received === '11934001')).toBe(true);
  });
});

test('a policy that is not understood lets nothing out: there is no bundle', () => {
  for (const snomed of ['licensed', 'freeset', { licensed: { holder: 'x' } }] as never[]) {
    const { value, issues } = toBundle(plain, { snomed });
    expect(value).toBeUndefined();
    expect(issues.at(-1)?.path[0]).toBe('snomed');
  }
});

test('under a licence the edition stands at every SNOMED CT code of ours', () => {
  const codings: Coding[] = [];
  JSON.stringify(toBundle(plain, { snomed: licensed }).value, (_, value) => {
    if (value?.system === SCT) codings.push(value);
    return value;
  });
  const own = codings.filter(({ version }) => version?.endsWith('/version/20240101'));
  expect(own.length).toBeGreaterThan(10);
});

describe('seeded exams', () => {
  // 10,000 in tests/slow/licence.test.ts.
  const seeds = Array.from({ length: sampled(24, 200) }, (_, seed) => seed);
  const examOf = (seed: number) =>
    sampleExam(seed, { size: (['small', 'usual', 'edge'] as const)[seed % 3] ?? 'small' });
  const versionOf = (seed: number) => (seed % 2 === 0 ? 'R4' : 'R5');

  test('no code outside the free set under free-set; nearly all hold free ones', () => {
    const bundles = seeds.map(
      (seed) => toBundle(examOf(seed), { fhirVersion: versionOf(seed), freeSet }).value,
    );
    const found = bundles.flatMap((bundle) => licenceIssues(bundle, 'free-set', { freeSet }));
    expect(found).toEqual([]);
    const held = bundles.filter((bundle) => licenceIssues(bundle, 'none').length > 0);
    expect(held.length).toBeGreaterThan(0.9 * seeds.length);
  });

  test('no code at all under none', () => {
    const found = seeds.flatMap((seed) => {
      const options = { fhirVersion: versionOf(seed), snomed: 'none' } as const;
      return licenceIssues(toBundle(examOf(seed), options).value, 'none');
    });
    expect(found).toEqual([]);
  });
});
