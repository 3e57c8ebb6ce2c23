import { append } from '../../data/append.ts';
import { issue } from '../../issues/issue.ts';
import type { Path } from '../../issues/path.ts';
import { fromObservation } from '../../kinds/registries/from-observation.ts';
import { sayingsOf } from '../../kinds/registries/meanings.ts';
import type { Key } from '../../model/primitive.ts';
import type { Statement } from '../../model/statement.ts';
import { lookAt, peek } from '../bundle/element.ts';
import type { Entry } from '../bundle/entries.ts';
import { contradictionIn } from '../foreign/answers.ts';
import { frameOf, isUnsaid } from '../foreign/frame.ts';
import type { Meanings } from '../foreign/mapped.ts';
import { readCondition, readForeign } from '../foreign/statement.ts';
import { type ExamReading, partNameOf } from '../reading.ts';
import type { Refused } from '../refused.ts';

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
 * The statements that observations make, in the order given. One that cannot be read as what it
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
    const read = statementsIn(reading, { meanings, refused }, entry, key);
    for (const statement of read) origins.set(statement.key, entry.path);
    append(list, read);
  }
  return { list, origins };
}

function statementsIn(
  reading: ExamReading,
  { meanings, refused: { statements: refused } }: Pick<StatementSources, 'meanings' | 'refused'>,
  entry: Entry,
  key: Key,
): readonly Statement[] {
  if (entry.type === 'Condition') return readCondition(reading, meanings, entry, { key, refused });
  const frame = frameOf(reading, entry);
  if (frame.unsaid) return [];
  const name = partNameOf(reading, entry.resource);
  const sound = frame.doubt === undefined && !refused.has(key);
  const own = sound ? ownStatement(reading, entry, { key, name }) : undefined;
  if (own !== undefined) return [own];
  if (isUnsaid(reading, entry)) return [];
  if (name !== undefined && !refused.has(key)) {
    const facts =
      frame.doubt === undefined
        ? ({ reason: 'incomplete' } as const)
        : ({ reason: 'doubt', says: frame.doubt } as const);
    reading.issues.push(issue('unread-statement', entry.path, facts));
  }
  return readForeign(reading, meanings, entry, { key, frame, refused });
}

/** A statement with our codes; none where text or interpretation beside them says the opposite. */
function ownStatement(
  reading: ExamReading,
  entry: Entry,
  names: { readonly key: Key; readonly name: string | undefined },
): Statement | undefined {
  const { resource } = entry;
  return resource.claims.attempt(() => {
    const own = fromObservation(reading, entry, names);
    if (own === undefined) return undefined;
    const said = sayingsOf(own, reading.catalogue);
    const against = said.some((one) => contradictionIn(reading.catalogue, resource, one));
    return against ? undefined : own;
  });
}

/** An observation of someone else must never become a statement about this patient. */
function speaksOfSubject(reading: ExamReading, entry: Entry): boolean {
  const subject = lookAt(entry.resource, 'subject');
  if (subject === undefined || reading.people.isSubject(subject, entry)) return true;
  if (peek(subject, 'reference') === undefined && reading.people.subject === undefined) return true;
  reading.issues.push(
    issue('several-patients', [...entry.path, 'subject'], { reason: 'observation' }),
  );
  reading.reasons.set(entry.resource.json, 'it is of another patient');
  return false;
}
