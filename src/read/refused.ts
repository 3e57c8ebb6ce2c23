import type { Issue } from '../issues/issue.ts';
import type { Path } from '../issues/path.ts';
import { type OptionalPart, optionalParts } from '../model/optional-parts.ts';
import type { Key } from '../model/primitive.ts';
import type { RoughExam } from './exam/read-once.ts';

/** What the rules of the exam refused in an earlier round of reading. */
export interface Refused {
  /** Statements to be kept as notes. */
  readonly statements: ReadonlySet<Key>;
  readonly parts: ReadonlySet<OptionalPart>;
}

export const nothingRefused: Refused = { statements: new Set(), parts: new Set() };

/**
 * What is refused when these errors are taken into account. Undefined where that would not mend
 * them: an error in what an exam must have, or in a part that was refused already.
 */
export function refusedBy(
  { exam }: RoughExam,
  errors: readonly Issue[],
  before: Refused,
): Refused | undefined {
  const statements = new Set(before.statements);
  const parts = new Set(before.parts);
  for (const { path } of errors) {
    const [name, at] = path;
    const key =
      name === 'statements' && typeof at === 'number' ? exam.statements[at]?.key : undefined;
    const part = optionalParts.find((known) => known === name);
    if (key !== undefined) statements.add(key);
    else if (part !== undefined) parts.add(part);
    else return undefined;
  }
  const more = statements.size > before.statements.size || parts.size > before.parts.size;
  return more ? { statements, parts } : undefined;
}

/** Where in the bundle the statement stands that a path in the exam leads to, or else the report. */
export function originOf({ exam, origins, home }: RoughExam, path: Path): Path {
  const [name, at] = path;
  if (name !== 'statements' || typeof at !== 'number') return home;
  return origins.get(exam.statements[at]?.key ?? '') ?? home;
}
