import { type Database, openDatabase } from './sqlite.ts';

/** A bundle that waits to be sent. */
export interface Waiting {
  readonly exam: string;
  /** Goes up each time the exam is received with other content. */
  readonly revision: number;
  readonly attempts: number;
  readonly bundle: string;
}

export interface StoreCounts {
  readonly stored: number;
  readonly waiting: number;
  /** Refused by the FHIR server for good; kept until the exam comes in with other content. */
  readonly refused: number;
}

export interface Store {
  /** Stores the bundle and the task to send it, or neither; `same` where it was stored before. */
  put(exam: string, bundle: string): 'new' | 'changed' | 'same';
  bundle(exam: string): string | undefined;
  /** The one that has been due longest. */
  nextDue(now: number): Waiting | undefined;
  /** When the next one falls due; undefined where none waits. */
  nextTime(): number | undefined;
  sent(task: Waiting): void;
  failed(task: Waiting, nextTime: number): void;
  refused(task: Waiting, status: number): void;
  counts(): StoreCounts;
  close(): void;
}

/** An outbox row is deleted only after the server said that it has stored the bundle. */
const schema = `
  CREATE TABLE IF NOT EXISTS exam (id TEXT PRIMARY KEY, bundle TEXT NOT NULL) STRICT;
  CREATE TABLE IF NOT EXISTS outbox (
    exam TEXT PRIMARY KEY REFERENCES exam (id),
    revision INTEGER NOT NULL DEFAULT 1,
    attempts INTEGER NOT NULL DEFAULT 0,
    due INTEGER NOT NULL DEFAULT 0,
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
     SET revision = revision + 1, attempts = 0, due = 0, refused = NULL`,
  );
  const due = database.prepare(
    `SELECT outbox.exam, revision, attempts, bundle FROM outbox JOIN exam ON exam.id = outbox.exam
     WHERE refused IS NULL AND due <= ? ORDER BY due, outbox.exam LIMIT 1`,
  );
  const soonest = database.prepare('SELECT min(due) AS due FROM outbox WHERE refused IS NULL');
  // The revision: what came in while the older content was on its way stays in the outbox.
  const remove = database.prepare('DELETE FROM outbox WHERE exam = ? AND revision = ?');
  const delay = database.prepare(
    'UPDATE outbox SET attempts = attempts + 1, due = ? WHERE exam = ? AND revision = ?',
  );
  const refuse = database.prepare('UPDATE outbox SET refused = ? WHERE exam = ? AND revision = ?');
  const count = database.prepare(
    `SELECT (SELECT count(*) FROM exam) AS stored, count(*) - count(refused) AS waiting,
     count(refused) AS refused FROM outbox`,
  );

  // The rows have the columns that their statement names.
  const bundleOf = (exam: string): string | undefined =>
    (find.get(exam) as { bundle: string } | undefined)?.bundle;
  const put = database.transaction((exam: string, bundle: string) => {
    const before = bundleOf(exam);
    if (before === bundle) return 'same';
    write.run(exam, bundle);
    queue.run(exam);
    return before === undefined ? 'new' : 'changed';
  });

  return {
    put: (exam, bundle) => put.immediate(exam, bundle),
    bundle: bundleOf,
    nextDue: (now) => due.get(now) as Waiting | undefined,
    nextTime: () => (soonest.get() as { due: number | null }).due ?? undefined,
    sent: ({ exam, revision }) => remove.run(exam, revision),
    failed: ({ exam, revision }, nextTime) => delay.run(nextTime, exam, revision),
    refused: ({ exam, revision }, status) => refuse.run(status, exam, revision),
    counts: () => count.get() as StoreCounts,
    close: () => database.close(),
  };
}
