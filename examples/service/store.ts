import type { DeliveryState } from 'face-neck-fhir/deliver';
import { type Database, inTransaction, isFull, openDatabase } from './sqlite.ts';

/** A bundle that waits to be sent, or whose arrival is to be looked at again. */
export interface Waiting {
  readonly exam: string;
  /** Goes up each time the exam is received with other content. */
  readonly revision: number;
  readonly attempts: number;
  readonly bundle: string;
  /** How far the delivery has come, and the versions on the FHIR server as last answered. */
  readonly state: DeliveryState | undefined;
  /** An attempt got no answer, so that it may still take effect there. */
  readonly doubt: boolean;
  /** Stored by the server; to be looked at once more, because of that doubt. */
  readonly check: boolean;
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
  sent(task: Waiting, state: DeliveryState, checkAt: number | undefined): void;
  /** A part of it is there. */
  progress(task: Waiting, state: DeliveryState): void;
  /** Looked at again: nothing came after it. */
  settled(task: Waiting): void;
  /** To be tried again; with `doubt` where this attempt may still take effect. */
  later(task: Waiting, nextTime: number, doubt: boolean, state: DeliveryState): void;
  refused(task: Waiting, status: number): void;
  givenUp(): readonly Refused[];
  /** Queues again what was given up; false where there is no such exam. */
  again(exam: string): boolean;
  counts(): StoreCounts;
  close(): void;
}

/** What `Waiting` is in the database. */
interface Row extends Omit<Waiting, 'state' | 'doubt' | 'check'> {
  readonly state: string | null;
  readonly doubt: 0 | 1;
  readonly check: 0 | 1;
}

/** An outbox row is deleted only after the server said that it has stored the bundle. */
const schema = `
  CREATE TABLE IF NOT EXISTS exam (
    id TEXT PRIMARY KEY, bundle TEXT NOT NULL, state TEXT, doubt INTEGER NOT NULL DEFAULT 0
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
    `SELECT outbox.exam, revision, attempts, bundle, state, doubt, "check"
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
  const setState = database.prepare('UPDATE exam SET state = ? WHERE id = ?');
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

  const noted = (exam: string, state: DeliveryState, further: () => void): void => {
    const note = (text: string | null): void =>
      inTransaction(database, () => {
        setState.run(text, exam);
        further();
      });
    try {
      note(JSON.stringify(state));
    } catch (error) {
      // A longer row may find no room; without the state all is sent unconditionally next time.
      if (!isFull(error)) throw error;
      note(null);
    }
  };

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
    nextDue: (now, longest) => {
      const row = due.get(now, longest) as Row | undefined;
      if (row === undefined) return undefined;
      const { state, doubt, check, ...task } = row;
      // As `DeliveryState` was written.
      const reached = state === null ? undefined : (JSON.parse(state) as DeliveryState);
      return { ...task, state: reached, doubt: doubt === 1, check: check === 1 };
    },
    nextTime: () => (soonest.get() as { due: number | null }).due ?? undefined,
    sent: ({ exam, revision }, state, checkAt) =>
      noted(exam, state, () => {
        if (checkAt === undefined) remove.run(exam, revision);
        else look.run(checkAt, exam, revision);
      }),
    progress: ({ exam }, state) => noted(exam, state, () => {}),
    settled: ({ exam, revision }) =>
      inTransaction(database, () => {
        setDoubt.run(0, exam);
        remove.run(exam, revision);
      }),
    later: ({ exam, revision }, nextTime, doubt, state) =>
      noted(exam, state, () => {
        if (doubt) setDoubt.run(1, exam);
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
