import { append } from '../data/append.ts';
import { endsLook, plainDataIssues } from '../data/plain-data.ts';
import { spend, within } from '../issues/budget.ts';
import { failure, type Issue, issue } from '../issues/issue.ts';
import { cutIssues, endedIssue } from '../issues/issue-list.ts';
import { withShownPaths } from '../issues/shown-path.ts';
import { parseExam } from '../model/parse-exam.ts';
import { isObject, ownProperty } from './bundle/element.ts';
import type { Remainder } from './bundle/remainder.ts';
import { type RoughExam, readOnce } from './exam/read-once.ts';
import type { ReadOptions, ReadOutcome } from './options.ts';
import { nothingRefused, originOf, refusedBy } from './refused.ts';

/** What was read, with where in the bundle it stood. */
export interface ReadBundle {
  readonly outcome: ReadOutcome;
  /** None where no exam was read. */
  readonly places?: Pick<RoughExam, 'origins' | 'home' | 'own'>;
}

/** The exam of a bundle, within its budget. */
export function readBundle(bundle: unknown, options: ReadOptions): ReadBundle {
  return within(
    'bundle',
    options.budget,
    () => {
      const { outcome, places } = readSafely(bundle, options);
      const issues = withShownPaths(cutIssues(outcome.issues), bundle);
      return { outcome: { ...outcome, issues }, ...(places && { places }) };
    },
    (why) => nothing([endedIssue(why)]),
  );
}

function readSafely(bundle: unknown, options: ReadOptions): ReadBundle {
  const unsafe = plainDataIssues(bundle);
  if (unsafe.some(endsLook)) return nothing(unsafe);
  if (!isObject(bundle) || ownProperty(bundle, 'resourceType') !== 'Bundle') {
    return nothing([...unsafe, issue('wrong-type', ['resourceType'], { reason: 'not-a-bundle' })]);
  }
  if (ownProperty(bundle, 'type') === 'history') {
    return nothing([...unsafe, issue('invalid-value', ['type'], { reason: 'history-bundle' })]);
  }
  const { outcome, places } = readUntilSound(bundle, options);
  const issues = [...unsafe, ...outcome.issues];
  return { outcome: { ...outcome, issues }, ...(places && { places }) };
}

function nothing(issues: readonly Issue[]): ReadBundle {
  const remainder: Remainder[] = [{ path: [], what: 'Bundle', kind: 'content' }];
  return { outcome: { ...failure(issues), remainder, signatures: [] } };
}

/** A measure of the work of reading the bundle once. */
function entriesOf({ entry }: Readonly<Record<string, unknown>>): number {
  return Array.isArray(entry) ? entry.length : 1;
}

/** A statement that the rules refuse is read again as a note, another part that they refuse not at all. */
function readUntilSound(
  bundle: Readonly<Record<string, unknown>>,
  options: ReadOptions,
): ReadBundle {
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
      const all = [...told, ...issues, ...parsed.issues];
      return { outcome: { ...parsed, issues: all, remainder, signatures }, places: rough };
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
