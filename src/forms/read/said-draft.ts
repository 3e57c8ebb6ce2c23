import { isPlainObject } from '../../data/plain-data.ts';
import type { Issue } from '../../issues/issue.ts';
import type { Path } from '../../issues/path.ts';
import {
  type ExamDraft,
  type ExamStart,
  startExam,
  state,
  type WithoutKey,
} from '../../model/builder/draft.ts';
import { conclude } from '../../model/builder/finish-exam.ts';
import type { Conclusion } from '../../model/conclusion.ts';
import type { Statement } from '../../model/statement.ts';
import type { GivenMember, Said } from './take.ts';

/** A draft of what was answered, and where each part of it was. */
export interface SaidDraft {
  readonly draft: ExamDraft;
  /** In the order of the statements. */
  readonly origins: readonly Said[];
  readonly conclusion: Said | undefined;
}

/** The statements that the answers make. Nothing is checked yet: `finishExam` does it. */
export function draftOf(start: ExamStart, said: readonly Said[]): SaidDraft {
  const origins = said.filter(({ beginning }) => beginning !== undefined);
  const conclusion = said.find(({ beginning }) => beginning === undefined);
  let draft = startExam(start);
  // Their form is looked at when the exam is finished, and no sooner.
  for (const one of origins) {
    draft = state(draft, statementOf(one) as unknown as WithoutKey<Statement>);
  }
  if (conclusion !== undefined) {
    draft = conclude(draft, statementOf(conclusion) as unknown as Conclusion);
  }
  return { draft, origins, conclusion };
}

type Members = Record<string, unknown>;

function statementOf({ beginning, given }: Said): Readonly<Members> {
  const statement: Members = { ...beginning };
  for (const { member, value } of given) put(statement, member, value);
  const { results } = statement;
  if (!isPlainObject(results)) return statement;
  // By modality here, a list in the exam.
  const listed = Object.entries(results).map(([modality, answer]) => ({
    modality,
    ...(answer as Members), // put together above
  }));
  return { ...statement, results: listed };
}

function put(holder: Members, [first = '', ...rest]: readonly string[], value: unknown): void {
  if (rest.length === 0) {
    holder[first] = value;
    return;
  }
  // What stands on the way was put there by an answer before.
  const inner = (holder[first] ?? {}) as Members;
  holder[first] = inner;
  put(inner, rest, value);
}

/** The same issue with the linkIds of the answer that it is about; one about the head with `exam` in front. */
export function atAnswer({ draft, origins, conclusion }: SaidDraft, found: Issue): Issue {
  const [part, at, ...below] = found.path;
  if (part === 'conclusion' && conclusion !== undefined) {
    return { ...found, path: pathIn(conclusion, [String(at ?? '')]) };
  }
  const said = part === 'statements' && typeof at === 'number' ? origins[at] : undefined;
  if (said === undefined || typeof at !== 'number') {
    return { ...found, path: ['exam', ...found.path] };
  }
  const statement: unknown = draft.exam.statements[at];
  return { ...found, path: pathIn(said, memberOf(statement, below)) };
}

/** A path below a statement as the form names its members. */
function memberOf(statement: unknown, [name = '', at, ...rest]: Path): readonly string[] {
  const results = (statement as { readonly results?: readonly { readonly modality: string }[] })
    .results; // only sensation has them
  if (name !== 'results' || typeof at !== 'number') return [name, at ?? ''].map(String);
  return [name, results?.[at]?.modality ?? '', ...rest.map(String)];
}

function pathIn({ given, path }: Said, member: readonly string[]): Path {
  const likeness = ({ member: of }: GivenMember): number => {
    const length = of.findIndex((step, at) => member[at] !== step);
    return length === -1 ? of.length : length;
  };
  let best: GivenMember | undefined;
  for (const one of given) {
    if (likeness(one) > (best === undefined ? 0 : likeness(best))) best = one;
  }
  return best?.path ?? path;
}
