import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { examples } from '../../../examples/all-exams.ts';
import { guides, type Target, targets } from '../../../src/export/target/guides.ts';
import { type Exam, fromJson, hasErrors, toBundle, toBundleOrThrow } from '../../../src/index.ts';
import { sampleExams } from '../../../src/testing/sample-exam.ts';
import { compileProfiles, type Profiles, validateBundle } from '../../../src/validate/versions/r4.ts';

/** What the profiles of a guide ask for, as published: written by src/generate/guide-profiles.ts. */
function profilesOf(target: Target): Profiles {
  const text = readFileSync(new URL(`${target}.json`, import.meta.url), 'utf8');
  return compileProfiles(JSON.parse(text).definitions);
}

/** An exam with everything that any guide asks for. */
export function complete(exam: Exam): Exam {
  const name = { family: 'Picker', given: ['Ann'] };
  const { organization } = exam;
  const identifiers = [{ system: 'https://vineyard.example/people', value: exam.id }];
  return {
    ...exam,
    subject: { identifiers, name, birthDate: '1984', ...exam.subject },
    examiners: exam.examiners.map((one) => ({ ...one, name: { family: 'Press', ...one.name } })) as
      unknown as Exam['examiners'], // as many as before
    ...(organization && { organization: { name: 'Harbour clinic', ...organization } }),
  };
}

const exams = [...examples.values(), ...sampleExams(1, 20, { size: 'small' })];

describe.each(targets)('an export for %s', (target) => {
  const profiles = profilesOf(target);

  it('conforms to the profiles that it claims', () => {
    for (const exam of exams.map(complete)) {
      for (const bundleType of ['collection', 'document'] as const) {
        const { value, issues } = toBundle(exam, { target, bundleType });
        expect(issues.filter((one) => hasErrors([one]))).toEqual([]);
        const { issues: found, unchecked } = validateBundle(value, { profiles });
        expect({ exam: exam.id, found: found.filter((one) => hasErrors([one])) }).toEqual({
          exam: exam.id,
          found: [],
        });
        expect(unchecked).toEqual([]);
      }
    }
  });
});
