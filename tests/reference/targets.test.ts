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
  // Our own codings stand beside HL7's: of a concept of several, FHIR asks that one be in the value set.
  validator = await startValidator({ load: [...pack, { version: 'R4', folder }], anyCoding: true });
});
afterAll(() => validator.stop());

const isError = ({ severity }: ReferenceIssue): boolean => /error|fatal/.test(severity);

/** Warns that a value set of the guide is not at hand, and says nothing of the exam. */
const lacksTerminology = (one: ReferenceIssue): boolean =>
  one.severity === 'warning' &&
  /^Terminology_(TX_ValueSet_NotFound|PassThrough_TX_Message)/.test(one.messageId);
const isWarning = (one: ReferenceIssue): boolean =>
  one.severity === 'warning' && !lacksTerminology(one);

/** What the validator says of an exam exported for a guide, or for none. */
interface Judged {
  readonly resources: number;
  readonly issues: readonly ReferenceIssue[];
}

async function judged(
  exam: ReturnType<typeof complete>,
  target?: (typeof targets)[number],
): Promise<Judged> {
  const bundle = toBundleOrThrow(exam, { ...(target && { target }), bundleType: 'document' });
  const id = `${exam.id} for ${target}`;
  const { issues } = await validator.validate({ id, version: 'R4', text: toJson(bundle) });
  return { resources: bundle.entry?.length ?? 0, issues };
}

/** Exported for no guide an exam is the same whatever the guide it is compared with. */
const withoutGuide = new Map<string, Promise<Judged>>();
function judgedWithoutGuide(exam: ReturnType<typeof complete>): Promise<Judged> {
  const asked = withoutGuide.get(exam.id) ?? judged(exam);
  withoutGuide.set(exam.id, asked);
  return asked;
}

/** How many resources of the bundle have such an issue; what is said of the bundle itself counts as one. */
function resourcesWith(issues: readonly ReferenceIssue[]): number {
  return new Set(issues.map(({ location }) => /^Bundle\.entry\[\d+\]/.exec(location)?.[0])).size;
}

const tally = (into: Record<string, number>, names: readonly string[]): void => {
  for (const name of names) into[name] = (into[name] ?? 0) + 1;
};

describe.each(targets)(
  "what is exported for %s has no error in the eyes of HL7's validator",
  (target) => {
    const fits = ({ status }: { readonly status: string }): boolean =>
      target !== 'ips' || status !== 'entered-in-error';

    it('examples and seeded exams', async () => {
      const counts = { exams: 0, resources: 0, warned: 0, warnedWithoutGuide: 0, noTerminology: 0 };
      const kinds: Record<string, number> = {};
      const errors: string[] = [];
      for (const { exam: given } of [...exampleExams(), ...seededExams()]) {
        const exam = complete(given);
        if (!fits(exam)) continue;
        const before = await judgedWithoutGuide(exam);
        const { resources, issues } = await judged(exam, target);
        counts.exams += 1;
        counts.resources += resources;
        counts.warned += resourcesWith(issues.filter(isWarning));
        counts.warnedWithoutGuide += resourcesWith(before.issues.filter(isWarning));
        counts.noTerminology += resourcesWith(issues.filter(lacksTerminology));
        tally(
          kinds,
          issues.filter(isWarning).map(({ messageId }) => messageId),
        );
        errors.push(
          ...issues
            .filter(isError)
            .map(({ location, message }) => `${exam.id} ${location}: ${message}`),
        );
      }
      console.info(target, { ...counts, errors: errors.length }, kinds);
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
