import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { examples } from '../../../examples/all-exams.ts';
import { type Target, targets } from '../../../src/export/target/guides.ts';
import {
  type Exam,
  type ExportOptions,
  hasErrors,
  type Issue,
  toBundle,
} from '../../../src/index.ts';
import { fromBundle } from '../../../src/read/from-bundle.ts';
import { sampleExams } from '../../../src/testing/sample-exam.ts';
import {
  compileProfiles,
  type Profiles,
  validateBundle,
} from '../../../src/validate/versions/r4.ts';
import { sampled } from '../../sampled.ts';
import { complete } from './complete.ts';

/** What the profiles of a guide ask for, as published: written by src/generate/guide-profiles.ts. */
function profilesOf(target: Target): Profiles {
  const text = readFileSync(new URL(`${target}.json`, import.meta.url), 'utf8');
  return compileProfiles(JSON.parse(text).definitions);
}

/** Rules of the guides about value sets and slices that only a terminology server could judge. */
const unjudged: Readonly<Record<Target, RegExp>> = {
  'us-core': /#(DiagnosticReport\.code|Encounter\.type)$/,
  ips: /#DiagnosticReport\.(status|result:observation-results)$/,
  'au-base': /#Encounter\.class$/,
  'uk-core': /#Composition\.section\.code$/,
};

const exams = [
  ...[...examples.values()].slice(0, sampled(1, 99)),
  ...sampleExams(1, sampled(1, 20), { size: 'small' }),
];
const whole = exams.map(complete);

function errorsOf(issues: readonly Issue[]): readonly Issue[] {
  return issues.filter((one) => hasErrors([one]));
}

function lines(issues: readonly Issue[]): string[] {
  return errorsOf(issues).map(({ code, path }) => `${code} ${path.join('.')}`);
}

describe.each(targets)('an export for %s', (target) => {
  const profiles = profilesOf(target);

  it('conforms to the profiles that it claims', () => {
    expect(profiles.issues).toEqual([]);
    let claims = 0;
    for (const exam of whole) {
      if (target === 'ips' && exam.status === 'entered-in-error') continue;
      for (const bundleType of ['collection', 'document'] as const) {
        const { value, issues } = toBundle(exam, { target, bundleType });
        expect({ exam: exam.id, issues: errorsOf(issues) }).toEqual({ exam: exam.id, issues: [] });
        const validation = validateBundle(value, { profiles });
        expect({ exam: exam.id, found: errorsOf(validation.issues) }).toEqual({
          exam: exam.id,
          found: [],
        });
        const open = validation.unchecked.map(({ rule }) => String(rule));
        expect(open.filter((rule) => !unjudged[target].test(rule))).toEqual([]);
        claims += JSON.stringify(value).split('"profile":[').length - 1;
      }
    }
    expect(claims).toBeGreaterThan(whole.length);
  });

  it('is read back as the exam that was sent', () => {
    for (const exam of whole) {
      const { value: bundle, issues } = toBundle(exam, { target });
      if (target === 'ips' && exam.status === 'entered-in-error') continue;
      const told = issues.filter(({ code }) => code === 'not-exported').map(({ path }) => path);
      const examiners = exam.examiners.map((examiner, at) => {
        const { role: _, ...others } = examiner;
        return told.some(
          ([list, index, part]) => list === 'examiners' && index === at && part === 'role',
        )
          ? others
          : examiner;
      });
      const others = told.filter(([, , part]) => part !== 'role');
      if (others.length > 0) continue; // a record of the receiver holds the rest
      expect(fromBundle(bundle).value, exam.id).toEqual({ ...exam, examiners });
    }
  });
});

describe('what a guide asks for and the exam does not state', () => {
  const [, example] = examples;
  const exam = example?.[1];
  if (exam === undefined) throw new Error('no example');
  const bare: Exam = {
    ...exam,
    subject: {},
    organization: { identifiers: [{ system: 'https://vineyard.example/places', value: '1' }] },
    examiners: [{ key: exam.examiners[0].key, name: { text: 'A. Press' } }],
  };

  const cases: readonly (readonly [ExportOptions, readonly string[]])[] = [
    [
      { target: 'us-core' },
      [
        'subject.identifiers',
        'subject.name.family',
        'organization.name',
        'examiners.0.name.family',
      ],
    ],
    [{ target: 'ips' }, ['subject.name', 'subject.birthDate', 'organization.name']],
    [{ target: 'au-base' }, []],
    [{ target: 'uk-core' }, []],
  ];
  it.each(cases)('%o is told before sending, and nothing is sent', (options, paths) => {
    const { ok, issues } = toBundle(bare, options);
    expect(lines(issues)).toEqual(paths.map((path) => `missing-property ${path}`));
    expect(ok).toBe(paths.length === 0);
  });

  it('is not asked of records that the receiver holds', () => {
    const held: Exam = {
      ...bare,
      subject: { reference: 'Patient/1' },
      organization: { reference: 'Organization/1' },
      examiners: [{ key: exam.examiners[0].key, reference: 'Practitioner/1' }],
    };
    expect(lines(toBundle(held, { target: 'us-core' }).issues)).toEqual([]);
  });

  it('is told of versions other than R4, records in error and unknown guides', () => {
    const known = complete(exam);
    const refused = (of: Exam, options: object): string[] =>
      lines(toBundle(of, { ...options } as ExportOptions).issues); // as from plain JavaScript
    expect(refused(known, { target: 'ips', fhirVersion: 'R5' })).toEqual(['invalid-value target']);
    const error = [...sampleExams(1, 40, { size: 'small' })].find(
      ({ status }) => status === 'entered-in-error',
    );
    if (error === undefined) throw new Error('no seeded exam is entered in error');
    expect(refused(complete(error), { target: 'ips' })).toEqual(['invalid-value status']);
    expect(refused(known, { target: 'us-cor' })).toEqual(['unknown-code target']);
  });
});
