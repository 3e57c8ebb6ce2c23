import { createRequire } from 'node:module';

/** What this example uses of SQLite, so that the types hold before its package is installed. */
export interface Database {
  exec(sql: string): unknown;
  pragma(setting: string): unknown;
  prepare(sql: string): Statement;
  close(): void;
}

interface Statement {
  run(...values: readonly (string | number | null)[]): { readonly changes: number };
  get(...values: readonly (string | number | null)[]): unknown;
  all(...values: readonly (string | number | null)[]): unknown[];
}

/**
 * Opens the file for this process alone. The package brings its binary with it from the registry:
 * nothing is downloaded or compiled on installation.
 * @throws Error where another process has it open, or it cannot be written
 */
export function openDatabase(file: string): Database {
  const Sqlite: new (file: string) => Database = createRequire(import.meta.url)('libsql');
  const database = new Sqlite(file);
  // Two senders on one outbox would send in two orders, so the second process must not start.
  database.pragma('locking_mode = EXCLUSIVE');
  return database;
}

/** Runs all of `work` or nothing of it. */
export function inTransaction<Result>(database: Database, work: () => Result): Result {
  database.exec('BEGIN IMMEDIATE');
  try {
    const result = work();
    database.exec('COMMIT');
    return result;
  } catch (error) {
    try {
      database.exec('ROLLBACK');
    } catch {
      // SQLite has rolled back by itself, as it does when the disk is full.
    }
    throw error;
  }
}

/** Whether writing failed because the disk, or the size that the database may have, is full. */
export function isFull(error: unknown): boolean {
  if (!(error instanceof Error)) return false;
  const code = 'code' in error ? error.code : undefined;
  return code === 'SQLITE_FULL' || /database or disk is full/.test(error.message);
}
