import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { hasErrors, issueText } from '../../src/index.ts';
import { startValidator, type Validator } from './corpus.ts';
import { extensionsPack, releases } from './definitions.ts';
import {
  bundlesOf,
  exampleExams,
  type NamedExam,
  reportAloneOf,
  seededCount,
  seededExams,
} from './exams.ts';
import { ourIssues } from './ours.ts';

/**
 * What the validator only warns of, or mentions, and an exported bundle must not have either:
 * references that lead nowhere, entries that nothing leads to, extensions that are not known.
 */
const unwanted =
  /^(Bundle_BUNDLE_Not_Local|Bundle_BUNDLE_Entry_Orphan|BUNDLE_BUNDLE_ENTRY_FOUND_MULTIPLE|Extension_EXT_Unknown)/;

let validator: Validator;
beforeAll(async () => {
  validator = await startValidator({ load: await extensionsPack() });
});
afterAll(() => validator.stop());

/** Errors, and what is unwanted, in the bundles of one exam, in the validator's eyes and in ours. */
async function faultsOf(exam: NamedExam): Promise<string[]> {
  const bundles = releases.flatMap((version) => [
    ...bundlesOf(exam, version),
    reportAloneOf(exam, version),
  ]);
  const results = await Promise.all(
    bundles.map(({ id, version, text }) => validator.validate({ id, version, text })),
  );
  return bundles.flatMap(({ id, version, text }, at) => [
    ...(results[at]?.issues ?? [])
      .filter(({ severity, messageId }) => /error|fatal/.test(severity) || unwanted.test(messageId))
      .map(({ location, message }) => `${id}: ${location}: ${message}`),
    ...ourIssues(text, version)
      .filter((found) => hasErrors([found]))
      .map((found) => `${id}: ours: ${issueText(found)}`),
  ]);
}

describe('exported bundles in three versions and of five kinds have no error', () => {
  it.each(exampleExams())(
    '$name',
    async (exam) => {
      expect(await faultsOf(exam)).toEqual([]);
    },
    600_000,
  );

  it(`${seededCount} seeded exams`, async () => {
    const found: string[] = [];
    let exams = 0;
    for (const exam of seededExams()) {
      exams += 1;
      found.push(...(await faultsOf(exam)));
      if (exams % 50 === 0) console.info(`${exams} exams, ${found.length} errors`);
    }
    expect(found).toEqual([]);
    expect(exams).toBe(seededCount);
    expect(exams).toBeGreaterThan(0);
  }, 3_600_000);
});
