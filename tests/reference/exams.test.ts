import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { hasErrors, issueText } from '../../src/index.ts';
import { startValidator, type Validator } from './corpus.ts';
import { extensionsPack, releases } from './definitions.ts';
import { bundlesOf, exampleExams, type NamedExam, refersElsewhere, seededExams } from './exams.ts';
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

interface Told {
  readonly id: string;
  readonly by: 'validator' | 'us';
  /** The validator's name of the message, or our code. */
  readonly code: string;
  readonly text: string;
}

/** Errors, and what is unwanted, in the bundles of one exam, in the validator's eyes and in ours. */
async function faultsOf(exam: NamedExam): Promise<Told[]> {
  const bundles = releases.flatMap((version) => bundlesOf(exam, version));
  const results = await Promise.all(
    bundles.map(({ id, version, text }) => validator.validate({ id, version, text })),
  );
  return bundles.flatMap(({ id, version, text }, at) => [
    ...(results[at]?.issues ?? [])
      .filter(({ severity, messageId }) => /error|fatal/.test(severity) || unwanted.test(messageId))
      .map(({ location, message, messageId }): Told => {
        return { id, by: 'validator', code: messageId, text: `${location}: ${message}` };
      }),
    ...ourIssues(text, version)
      .filter((found) => hasErrors([found]))
      .map((found): Told => ({ id, by: 'us', code: found.code, text: issueText(found) })),
  ]);
}

/** What both say of a document whose people are records of the receiver, and of no other bundle. */
function isOfPeopleElsewhere({ id, code }: Told): boolean {
  return (
    id.endsWith('/document') && /^(Bundle_BUNDLE_Entry_NotFound|unresolved-reference)$/.test(code)
  );
}

describe('exported bundles in three versions and of four kinds have no error', () => {
  it.each(exampleExams())(
    '$name',
    async (exam) => {
      expect(await faultsOf(exam)).toEqual([]);
    },
    600_000,
  );

  it('300 seeded exams', async () => {
    const found: Told[] = [];
    let exams = 0;
    for (const exam of seededExams()) {
      const told = await faultsOf(exam);
      const elsewhere = refersElsewhere(exam.exam);
      exams += 1;
      found.push(...told.filter((one) => !elsewhere || !isOfPeopleElsewhere(one)));
      if (elsewhere) {
        // Both refuse the document in each version, and for nothing else.
        const refused = told.filter(isOfPeopleElsewhere).map(({ id, by }) => `${id} ${by}`);
        expect(new Set(refused).size, exam.name).toBe(2 * releases.length);
      }
    }
    expect(found).toEqual([]);
    expect(exams).toBeGreaterThanOrEqual(300);
  }, 3_600_000);
});
