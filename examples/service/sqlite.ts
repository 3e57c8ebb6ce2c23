import { createRequire } from 'node:module';

/** What this example uses of SQLite, so that the types hold before its package is installed. */
export interface Database {
  exec(sql: string): unknown;
  pragma(setting: string): unknown;
  prepare(sql: string): Statement;
  /** The same function as one transaction: all of it happens, or nothing. */
  transaction<Args extends readonly unknown[], Result>(
    run: (...args: Args) => Result,
  ): { immediate(...args: Args): Result };
  close(): void;
}

interface Statement {
  run(...values: readonly (string | number | null)[]): { readonly changes: number };
  get(...values: readonly (string | number | null)[]): unknown;
  all(...values: readonly (string | number | null)[]): unknown[];
}

export function openDatabase(file: string): Database {
  const Sqlite: new (file: string) => Database = createRequire(import.meta.url)('better-sqlite3');
  return new Sqlite(file);
}

/** Whether writing failed because the disk, or the size that the database may have, is full. */
export function isFull(error: unknown): boolean {
  return error instanceof Error && 'code' in error && error.code === 'SQLITE_FULL';
}
