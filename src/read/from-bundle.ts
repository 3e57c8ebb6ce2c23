import { append } from '../data/append.ts';
import { plainDataIssues } from '../data/plain-data.ts';
import { spend, within } from '../issues/budget.ts';
import { failure, type Issue, issue, orThrow } from '../issues/issue.ts';
import { cutIssues, endedIssue } from '../issues/issue-list.ts';
import { withShownPaths } from '../issues/shown-path.ts';
import type { Exam } from '../model/exam.ts';
import { parseExam } from '../model/parse-exam.ts';
import { isObject, ownProperty } from './bundle/element.ts';
import type { Remainder } from './bundle/remainder.ts';
import { type RoughExam, readOnce } from './exam/read-once.ts';
import type { ReadOptions, ReadOutcome } from './options.ts';
import { nothingRefused, originOf, refusedBy } from './refused.ts';

export type { Remainder } from './bundle/remainder.ts';
export type { ReadOptions, ReadOutcome, Supplied } from './options.ts';

/** A bundle of ten thousand entries has some million values; generated text is not nested here. */

/**
 * Reads the exam that a bundle holds. A bundle of this library, of any version and type, gives back
 * the exam it was made from; what it says explicitly although it holds by default (the first
 * examiner, the time of the exam, words equal to a display) comes back left out. A search set of a
 * server can be read too, and so can a bundle of others as far as it can be understood: an
 * observation becomes a sign or a measurement only where its codes mean exactly one of ours, and
 * otherwise a note.
 *
 * Decimals keep their precision where the bundle was parsed with `fromJson`.
 *
 * @param bundle The bundle as plain data.
 * @param options Names and codes as at the export, and facts that the bundle lacks; see
 *   {@link ReadOptions}.
 * @returns The exam, and in `remainder` everything of the bundle that is not in it. It fails where
 *   the bundle lacks what an exam must have; `supplied` can state it. An issue about the exam has
 *   its path in the exam, and one about what could not be read has it in the bundle.
 * @example
 * const { value, remainder } = fromBundle(bundle, { supplied: { status: 'final' } });
 */
export function fromBundle(bundle: unknown, options: ReadOptions = {}): ReadOutcome {
  return within(
    'bundle',
    options.budget,
    () => {
      const outcome = readBundle(bundle, options);
      return { ...outcome, issues: withShownPaths(cutIssues(outcome.issues), bundle) };
    },
    (why) => nothing([endedIssue(why)]),
  );
}

function readBundle(bundle: unknown, options: ReadOptions): ReadOutcome {
  const unsafe = plainDataIssues(bundle);
  if (unsafe.some(({ code }) => code === 'too-deep' || code === 'too-large')) {
    return nothing(unsafe);
  }
  if (!isObject(bundle) || ownProperty(bundle, 'resourceType') !== 'Bundle') {
    return nothing([...unsafe, issue('wrong-type', ['resourceType'], { reason: 'not-a-bundle' })]);
  }
  if (ownProperty(bundle, 'type') === 'history') {
    return nothing([...unsafe, issue('invalid-value', ['type'], { reason: 'history-bundle' })]);
  }
  const result = readUntilSound(bundle, options);
  return { ...result, issues: [...unsafe, ...result.issues] };
}

/**
 * Reads an exam like {@link fromBundle} and throws where that fails.
 *
 * @param bundle The bundle as plain data.
 * @param options As for `fromBundle`.
 * @returns The exam. Warnings and the remainder are not returned; `fromBundle` gives them.
 * @throws {IssueError} Where there is no exam; it holds all issues.
 * @example
 * const same = fromBundleOrThrow(toBundleOrThrow(exam));
 */
export function fromBundleOrThrow(bundle: unknown, options?: ReadOptions): Exam {
  return orThrow('read the exam of the bundle', fromBundle(bundle, options));
}

function nothing(issues: readonly Issue[]): ReadOutcome {
  const remainder: Remainder[] = [{ path: [], what: 'Bundle', kind: 'content' }];
  return { ...failure(issues), remainder, signatures: [] };
}

/** A measure of the work of reading the bundle once. */
function entriesOf({ entry }: Readonly<Record<string, unknown>>): number {
  return Array.isArray(entry) ? entry.length : 1;
}

/** A statement that the rules refuse is read again as a note, another part that they refuse not at all. */
function readUntilSound(
  bundle: Readonly<Record<string, unknown>>,
  options: ReadOptions,
): ReadOutcome {
  const { catalogue, includeValues = false } = options;
  const told: Issue[] = [];
  let refused = nothingRefused;
  for (;;) {
    spend(entriesOf(bundle));
    const { rough, issues, remainder, signatures } = readOnce(bundle, options, refused);
    const lacking = rough === undefined ? [] : missingParts(rough.exam);
    if (rough === undefined || lacking.length > 0) return nothing([...told, ...issues, ...lacking]);
    const parsed = parseExam(rough.exam, { ...(catalogue && { catalogue }), includeValues });
    if (parsed.ok) {
      return { ...parsed, issues: [...told, ...issues, ...parsed.issues], remainder, signatures };
    }
    const errors = parsed.issues.filter((found) => found.severity === 'error');
    const more = refusedBy(rough, errors, refused);
    if (more === undefined) return nothing([...told, ...issues, ...errors]);
    append(
      told,
      errors.map((found) => ({ ...found, path: originOf(rough, found.path) })),
    );
    refused = more;
  }
}

const needed = ['status', 'subject', 'examiners', 'performed', 'recorded', 'protocol'] as const;

function missingParts(exam: RoughExam['exam']): Issue[] {
  return needed
    .filter((name) => exam[name] === undefined)
    .map((name) => issue('missing-property', [], { reason: 'exam-part', property: name }));
}
