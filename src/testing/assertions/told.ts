import { plainDataIssues } from '../../data/plain-data.ts';
import { type Issue, issue } from '../../issues/issue.ts';
import { type Path, pathText } from '../../issues/path.ts';
import type { Statement } from '../../model/statement.ts';
import type { Remainder } from '../../read/bundle/remainder.ts';
import { readOnce } from '../../read/exam/read-once.ts';
import type { ReadOptions } from '../../read/options.ts';
import { nothingRefused } from '../../read/refused.ts';

export interface ToldStatement {
  readonly statement: Statement;
  /** Where it stands in the bundle. */
  readonly where: string;
}

/** What a bundle tells, also where it lacks what a whole exam must have. */
export interface Told {
  readonly statements: readonly ToldStatement[];
  /** What could not be read as a statement. */
  readonly remainder: readonly Remainder[];
  /** Why nothing could be read; none where something could. */
  readonly unread: readonly Issue[];
}

/** As many levels and values as reading a bundle allows. */

export function toldIn(bundle: unknown, options: ReadOptions = {}): Told {
  const unsafe = plainDataIssues(bundle);
  if (unsafe.length > 0) return nothing(unsafe);
  if (!isBundle(bundle)) {
    return nothing([issue('wrong-type', ['resourceType'], { reason: 'not-a-bundle' })]);
  }
  const { rough, issues, remainder } = readOnce(bundle, options, nothingRefused);
  if (rough === undefined) return nothing(issues);
  const { exam, origins } = rough;
  return {
    statements: exam.statements.map((statement) => ({
      statement,
      where: placeOf(origins.get(statement.key)),
    })),
    remainder: remainder.filter(({ kind }) => kind === 'content'),
    unread: [],
  };
}

/** A note made from the words of the report has no place of its own. */
function placeOf(origin: Path | undefined): string {
  return origin === undefined ? 'DiagnosticReport' : pathText(origin);
}

function nothing(unread: readonly Issue[]): Told {
  return { statements: [], remainder: [], unread };
}

function isBundle(value: unknown): value is Readonly<Record<string, unknown>> {
  return (
    typeof value === 'object' &&
    value !== null &&
    Object.hasOwn(value, 'resourceType') &&
    (value as { resourceType: unknown }).resourceType === 'Bundle' // it has the property
  );
}
