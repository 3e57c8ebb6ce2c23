import { type Database, inTransaction, isFull, openDatabase } from './sqlite.ts';

/** A bundle that waits to be sent, or whose arrival is to be looked at again. */
export interface Waiting {
  readonly exam: string;
  /** Goes up each time the exam is received with other content. */
  readonly revision: number;
  readonly attempts: number;
  readonly bundle: string;
  /** Version of the report on the FHIR server as last answered, such as `W/"3"`. */
  readonly version: string | null;
  /** An attempt got no answer, so that it may still take effect there. */
  readonly doubt: 0 | 1;
  /** Stored by the server; to be looked at once more, because of that doubt. */
  readonly check: 0 | 1;
}

/** What an attempt showed. */
export interface Found {
  /** It may still take effect on the server. */
  readonly doubt: boolean;
  /** Version of the report there now, where it was read; null where there is none. */
  readonly version?: string | null;
}

export interface StoreCounts {
  readonly stored: number;
  readonly waiting: number;
  /** Given up: refused by the FHIR server, or tried too often; kept until it is queued again. */
  readonly refused: number;
}

/** What was given up, with the status of the last answer; 0 where there was none. */
export interface Refused {
  readonly exam: string;
  readonly status: number;
  readonly attempts: number;
}

export interface Store {
  /** Stores the bundle and the task to send it, or neither; `same` where it was stored before. */
  put(exam: string, bundle: string): 'new' | 'changed' | 'same';
  bundle(exam: string): string | undefined;
  /**
   * The one that has been due longest. A row that is due later than `longest` from now was put off
   * before the clock was set back, and is due as well.
   */
  nextDue(now: number, longest: number): Waiting | undefined;
  /** When the next one falls due; undefined where none waits. */
  nextTime(): number | undefined;
  /** The server has it all; `checkAt`: when to look again, where an earlier attempt is in doubt. */
  sent(task: Waiting, version: string | undefined, checkAt: number | undefined): void;
  /** Looked at again: nothing came after it. */
  settled(task: Waiting): void;
  /** To be tried again. */
  later(task: Waiting, nextTime: number, found: Found): void;
  refused(task: Waiting, status: number): void;
  givenUp(): readonly Refused[];
  /** Queues again what was given up; false where there is no such exam. */
  again(exam: string): boolean;
  counts(): StoreCounts;
  close(): void;
}

/** An outbox row is deleted only after the server said that it has stored the bundle. */
const schema = `
  CREATE TABLE IF NOT EXISTS exam (
    id TEXT PRIMARY KEY, bundle TEXT NOT NULL, version TEXT, doubt INTEGER NOT NULL DEFAULT 0
  ) STRICT;
  CREATE TABLE IF NOT EXISTS outbox (
    exam TEXT PRIMARY KEY REFERENCES exam (id),
    revision INTEGER NOT NULL DEFAULT 1,
    attempts INTEGER NOT NULL DEFAULT 0,
    due INTEGER NOT NULL DEFAULT 0,
    "check" INTEGER NOT NULL DEFAULT 0,
    refused INTEGER
  ) STRICT;
  CREATE INDEX IF NOT EXISTS outbox_due ON outbox (due) WHERE refused IS NULL;
`;

/** @param maxPages the size the database may have, in pages of 4096 bytes */
export function openStore(file: string, maxPages?: number): Store {
  const database = openDatabase(file);
  // What was acknowledged must survive a loss of power, so each commit waits for the disk.
  database.pragma('journal_mode = WAL');
  database.pragma('synchronous = FULL');
  if (maxPages !== undefined) database.pragma(`max_page_count = ${Math.trunc(maxPages)}`);
  database.exec(schema);
  return storeOf(database);
}

function storeOf(database: Database): Store {
  const find = database.prepare('SELECT bundle FROM exam WHERE id = ?');
  const write = database.prepare(
    'INSERT INTO exam (id, bundle) VALUES (?, ?) ON CONFLICT DO UPDATE SET bundle = excluded.bundle',
  );
  const queue = database.prepare(
    `INSERT INTO outbox (exam) VALUES (?) ON CONFLICT DO UPDATE
     SET revision = revision + 1, attempts = 0, due = 0, "check" = 0, refused = NULL`,
  );
  const due = database.prepare(
    `SELECT outbox.exam, revision, attempts, bundle, version, doubt, "check"
     FROM outbox JOIN exam ON exam.id = outbox.exam
     WHERE refused IS NULL AND (due <= ?1 OR due > ?1 + ?2) ORDER BY due, outbox.exam LIMIT 1`,
  );
  const soonest = database.prepare('SELECT min(due) AS due FROM outbox WHERE refused IS NULL');
  // The revision: what came in while the older content was on its way stays in the outbox.
  const remove = database.prepare('DELETE FROM outbox WHERE exam = ? AND revision = ?');
  const delay = database.prepare(
    `UPDATE outbox SET attempts = attempts + 1, due = ?, "check" = 0
     WHERE exam = ? AND revision = ?`,
  );
  const look = database.prepare(
    'UPDATE outbox SET due = ?, "check" = 1 WHERE exam = ? AND revision = ?',
  );
  const refuse = database.prepare('UPDATE outbox SET refused = ? WHERE exam = ? AND revision = ?');
  const setVersion = database.prepare('UPDATE exam SET version = ? WHERE id = ?');
  const setDoubt = database.prepare('UPDATE exam SET doubt = ? WHERE id = ?');
  const listRefused = database.prepare(
    'SELECT exam, refused AS status, attempts FROM outbox WHERE refused IS NOT NULL LIMIT 1000',
  );
  const requeue = database.prepare(
    'UPDATE outbox SET refused = NULL, attempts = 0, due = 0 WHERE exam = ? AND refused IS NOT NULL',
  );
  const count = database.prepare(
    `SELECT (SELECT count(*) FROM exam) AS stored, count(*) - count(refused) AS waiting,
     count(refused) AS refused FROM outbox`,
  );

  // The rows have the columns that their statement names.
  const bundleOf = (exam: string): string | undefined =>
    (find.get(exam) as { bundle: string } | undefined)?.bundle;

  return {
    put: (exam, bundle) =>
      inTransaction(database, () => {
        const before = bundleOf(exam);
        if (before === bundle) return 'same';
        write.run(exam, bundle);
        queue.run(exam);
        return before === undefined ? 'new' : 'changed';
      }),
    bundle: bundleOf,
    nextDue: (now, longest) => due.get(now, longest) as Waiting | undefined,
    nextTime: () => (soonest.get() as { due: number | null }).due ?? undefined,
    sent: ({ exam, revision }, version, checkAt) => {
      const note = (known: string | null): void =>
        inTransaction(database, () => {
          setVersion.run(known, exam);
          if (checkAt === undefined) remove.run(exam, revision);
          else look.run(checkAt, exam, revision);
        });
      try {
        note(version ?? null);
      } catch (error) {
        // A longer row may find no room; without the version it is sent unconditionally next time.
        if (!isFull(error)) throw error;
        note(null);
      }
    },
    settled: ({ exam, revision }) =>
      inTransaction(database, () => {
        setDoubt.run(0, exam);
        remove.run(exam, revision);
      }),
    later: ({ exam, revision }, nextTime, { doubt, version }) =>
      inTransaction(database, () => {
        if (doubt) setDoubt.run(1, exam);
        if (version !== undefined) setVersion.run(version, exam);
        delay.run(nextTime, exam, revision);
      }),
    refused: ({ exam, revision }, status) => refuse.run(status, exam, revision),
    givenUp: () =>
      (listRefused.all() as Refused[]).map(({ exam, status, attempts }) => ({
        exam,
        status,
        attempts,
      })),
    again: (exam) => requeue.run(exam).changes > 0,
    counts: () => {
      const { stored, waiting, refused } = count.get() as StoreCounts;
      return { stored, waiting, refused };
    },
    close: () => database.close(),
  };
}
