import type { TableName } from './built-in.ts';
import type { ItemCode, TableCodes, ValueCode } from './tables/code-types.ts';

/** Tables whose codes only the library itself uses: no exam names a row of them. */
type OwnTable = 'items' | 'values';

/**
 * A code of a table. Those of our own tables are literals that the compiler checks; those of the
 * others come from an exam, may be rows that an adopter added, and are checked by `parseExam`.
 */
export type CodeIn<T extends TableName> = T extends OwnTable ? TableCodes[T] : string;

/** A list of the table of values: `convention` of `convention.mean`. */
export type ValueList = ValueCode extends `${infer List}.${string}` ? List : never;

/** An item whose answers are the list of values of the same name. */
export type ListedItem = ItemCode & ValueList;
