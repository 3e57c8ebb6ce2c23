import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { targets } from '../../src/export/target/guides.ts';
import { toBundleOrThrow, toJson } from '../../src/index.ts';
import { complete } from '../export/targets/complete.ts';
import { type ReferenceIssue, startValidator, type Validator } from './corpus.ts';
import { extensionsPack } from './definitions.ts';
import { exampleExams, seededExams } from './exams.ts';

const folder = fileURLToPath(new URL('../../output/target-guides/', import.meta.url));

let validator: Validator;
beforeAll(async () => {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  for (const target of targets) {
    const text = readFileSync(new URL(`../export/targets/${target}.json`, import.meta.url), 'utf8');
    JSON.parse(text).definitions.forEach((one: object, at: number) => {
      writeFileSync(`${folder}${target}-${at}.json`, JSON.stringify(one));
    });
  }
  const pack = (await extensionsPack()).filter(({ version }) => version === 'R4');
  validator = await startValidator({ load: [...pack, { version: 'R4', folder }] });
});
afterAll(() => validator.stop());

const isError = ({ severity }: ReferenceIssue): boolean => /error|fatal/.test(severity);

/** Warns that a value set of the guide is not at hand, and says nothing of the exam. */
const lacksTerminology = (one: ReferenceIssue): boolean =>
  one.severity === 'warning' &&
  /^Terminology_(TX_ValueSet_NotFound|PassThrough_TX_Message)/.test(one.messageId);
const isWarning = (one: ReferenceIssue): boolean =>
  one.severity === 'warning' && !lacksTerminology(one);

/** Issues of an exam exported for a guide, and for none. */
async function issuesOf(
  exam: ReturnType<typeof complete>,
  target?: (typeof targets)[number],
): Promise<readonly ReferenceIssue[]> {
  const bundle = toBundleOrThrow(exam, { ...(target && { target }), bundleType: 'document' });
  const id = `${exam.id} for ${target}`;
  const { issues } = await validator.validate({ id, version: 'R4', text: toJson(bundle) });
  return issues;
}

describe.each(targets)(
  "what is exported for %s has no error in the eyes of HL7's validator",
  (target) => {
    const fits = ({ status }: { readonly status: string }): boolean =>
      target !== 'ips' || status !== 'entered-in-error';

    it('examples and seeded exams', async () => {
      const counts = { exams: 0, warningsBefore: 0, warningsAfter: 0, noTerminology: 0 };
      const errors: string[] = [];
      for (const { exam: given } of [...exampleExams(), ...seededExams()]) {
        const exam = complete(given);
        if (!fits(exam)) continue;
        const before = await issuesOf(exam);
        const after = await issuesOf(exam, target);
        counts.exams += 1;
        counts.warningsBefore += before.filter(isWarning).length;
        counts.warningsAfter += after.filter(isWarning).length;
        counts.noTerminology += after.filter(lacksTerminology).length;
        errors.push(
          ...after
            .filter(isError)
            .map(({ location, message }) => `${exam.id} ${location}: ${message}`),
        );
      }
      console.info(target, counts);
      expect(errors).toEqual([]);
      expect(counts.exams).toBeGreaterThan(5);
    }, 3_600_000);

    // Else no error could mean that the profiles were not looked at. UK Core asks for nothing that FHIR
    // does not ask for, of what an exam has.
    const broken = {
      'us-core': 'Encounter.type',
      ips: 'Patient.birthDate',
      'au-base': 'Observation.category',
    };
    it.runIf(target !== 'uk-core')('and what breaks a claim has one', async () => {
      const [type, property] = (broken[target as keyof typeof broken] ?? '').split('.'); // all but UK Core
      const example = exampleExams().find(({ name }) => name === 'skin-lesion.json');
      if (example === undefined || property === undefined) throw new Error('no example');
      const bundle = JSON.parse(toJson(toBundleOrThrow(complete(example.exam), { target })));
      for (const { resource } of bundle.entry) {
        if (resource.resourceType === type) delete resource[property];
      }
      const { issues } = await validator.validate({
        id: 'broken',
        version: 'R4',
        resource: bundle,
      });
      expect(
        issues
          .filter(isError)
          .map(({ message }) => message)
          .join('\n'),
      ).toContain(`${type}.${property}: minimum required = 1`);
    });
  },
);
