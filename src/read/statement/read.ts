import type { Statement, StatementBase } from '../../model/statement.ts';

/** A statement of one kind without what all kinds have in common, which is read in one place. */
export type Read<S extends Statement> = S extends Statement
  ? Omit<S, Exclude<keyof StatementBase, 'codings'>>
  : never;
