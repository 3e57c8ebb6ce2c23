import { isUnconfirmed } from '../kinds/facets/base.ts';
import { subjectOf } from '../kinds/registries/meanings.ts';
import type { Exam } from '../model/exam.ts';
import type { Key } from '../model/primitive.ts';
import type { Statement, StatementKind } from '../model/statement.ts';

type OfKind<K extends StatementKind> = Extract<Statement, { kind: K }>;

/**
 * The statements of an exam, found by key, by kind and by what they are about, without searching.
 * By kind and by what they are about only those known today are found: what was taken over from an
 * earlier exam and not looked at again is not among them, so that no rule rests on it.
 */
export interface ExamIndex {
  /** The first statement with this key: an exam with two is refused elsewhere. */
  readonly byKey: ReadonlyMap<Key, Statement>;
  /** Place of each statement in the exam, for paths. */
  readonly position: ReadonlyMap<Key, number>;
  /** Those known today, in the order of the exam. */
  readonly known: readonly Statement[];
  /** Whether statements were left out because they were taken over and not looked at again. */
  readonly leftOut: boolean;
  /** All of one kind, in the order of the exam. */
  all<K extends StatementKind>(kind: K): readonly OfKind<K>[];
  /** Those of one kind about one thing: a finding, region state, point, test, measure, scale, symptom. */
  about<K extends StatementKind>(kind: K, code: string): readonly OfKind<K>[];
}

const none: readonly never[] = [];

export function indexExam(exam: Exam): ExamIndex {
  return indexOf(exam, (statement) => !isUnconfirmed(statement));
}

/** As {@link indexExam}, with what was taken over and not looked at again: only to tell what is lacking. */
export function indexWithUnconfirmed(exam: Exam): ExamIndex {
  return indexOf(exam, () => true);
}

function indexOf(exam: Exam, isKnown: (statement: Statement) => boolean): ExamIndex {
  const byKey = new Map<Key, Statement>();
  const position = new Map<Key, number>();
  const kinds = new Map<StatementKind, Statement[]>();
  const codes = new Map<StatementKind, Map<string, Statement[]>>();
  const known: Statement[] = [];
  exam.statements.forEach((statement, at) => {
    if (!byKey.has(statement.key)) {
      byKey.set(statement.key, statement);
      position.set(statement.key, at);
    }
    if (!isKnown(statement)) return;
    known.push(statement);
    listIn(kinds, statement.kind).push(statement);
    listIn(mapIn(codes, statement.kind), subjectOf(statement).code).push(statement);
  });
  return {
    byKey,
    position,
    known,
    leftOut: known.length < exam.statements.length,
    // The lists were filed under the kind of their members, which the type of the map cannot say.
    all: <K extends StatementKind>(kind: K) =>
      (kinds.get(kind) ?? none) as readonly Statement[] as readonly OfKind<K>[],
    about: <K extends StatementKind>(kind: K, code: string) =>
      (codes.get(kind)?.get(code) ?? none) as readonly Statement[] as readonly OfKind<K>[],
  };
}

/** The list filed under a key, made where there is none. */
export function listIn<K, V>(map: Map<K, V[]>, key: K): V[] {
  const known = map.get(key);
  if (known !== undefined) return known;
  const made: V[] = [];
  map.set(key, made);
  return made;
}

function mapIn<K, L, V>(map: Map<K, Map<L, V>>, key: K): Map<L, V> {
  const known = map.get(key);
  if (known !== undefined) return known;
  const made = new Map<L, V>();
  map.set(key, made);
  return made;
}
