import { issue } from '../issue.ts';
import { fromObservation } from '../kinds/from-observation.ts';
import type { Key } from '../model/primitive.ts';
import type { Statement } from '../model/statement.ts';
import type { Path } from '../path.ts';
import { lookAt, peek } from './element.ts';
import type { Entry } from './entries.ts';
import type { Meanings } from './foreign/mapped.ts';
import { readForeign, readWords } from './foreign/statement.ts';
import { type ExamReading, partNameOf } from './reading.ts';
import type { Refused } from './refused.ts';

export interface Statements {
  readonly list: readonly Statement[];
  readonly origins: ReadonlyMap<Key, Path>;
}

export interface StatementSources {
  readonly meanings: Meanings;
  readonly observations: ReadonlyMap<Key, Entry>;
  readonly refused: Refused;
}

/**
 * The statements that observations make, in the order given. One that can not be read as what it
 * names is kept as a note, and said so.
 */
export function readStatements(
  reading: ExamReading,
  { meanings, observations, refused }: StatementSources,
): Statements {
  const list: Statement[] = [];
  const origins = new Map<Key, Path>();
  for (const [key, entry] of observations) {
    origins.set(key, entry.path);
    if (!speaksOfSubject(reading, entry)) continue;
    const statement = refused.statements.has(key)
      ? readWords(reading, entry, key)
      : statementOf(reading, meanings, entry, key);
    if (statement !== undefined) list.push(statement);
  }
  return { list, origins };
}

function statementOf(
  reading: ExamReading,
  meanings: Meanings,
  entry: Entry,
  key: Key,
): Statement | undefined {
  const name = partNameOf(reading, entry.resource);
  const own = fromObservation(reading, entry, { key, name });
  if (own !== undefined) return own;
  if (name !== undefined) {
    reading.issues.push(
      issue('unread-statement', entry.path, 'this observation lacks what its kind must have'),
    );
  }
  return readForeign(reading, meanings, entry, key);
}

/** An observation of someone else must never become a statement about this patient. */
function speaksOfSubject(reading: ExamReading, entry: Entry): boolean {
  const subject = lookAt(entry.resource, 'subject');
  if (subject === undefined || reading.people.isSubject(subject, entry)) return true;
  if (peek(subject, 'reference') === undefined && reading.people.subject === undefined) return true;
  reading.issues.push(
    issue('several-patients', [...entry.path, 'subject'], 'this observation is of another patient'),
  );
  reading.reasons.set(entry.resource.json, 'it is of another patient');
  return false;
}
