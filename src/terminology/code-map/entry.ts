import type { SourcePosition } from '../../issues/issue.ts';
import type { Path } from '../../issues/path.ts';
import type { Relation } from '../types.ts';

/** One line of a code map, as it was read. Nothing of it has been checked. */
export interface CodeMapEntry {
  /** A table of ours (`test-points`), our code system made from it, or another code system. */
  readonly source: string;
  /** A code as it is exported: a row, `row.value`, or `region.side`. */
  readonly code: string;
  /** System of the target. */
  readonly system: string;
  /** None: with `replace`, the row has no coding in that system any more. */
  readonly target?: string | undefined;
  /** Version of the target's system. */
  readonly version?: string | undefined;
  /** Name of the target, as its system has it. */
  readonly display?: string | undefined;
  /** How the target relates to the source; `wider`: the target means more. */
  readonly relation?: string | undefined;
  /** `replace` puts the target in place of what the row has in that system. Default `add`. */
  readonly action?: string | undefined;
  /** For a measure: the unit that the target stands for; it is sent beside values in that unit alone. */
  readonly unit?: string | undefined;
  /** Where it stands in the map; a property stands below it, or where `paths` says. */
  readonly path: Path;
  /** Places of single properties, where they do not stand below `path`. */
  readonly paths?: { readonly [Property in EntryProperty]?: Path };
  /** Line of a text that the entry was read from. */
  readonly position?: SourcePosition | undefined;
}

export type EntryProperty =
  | 'source'
  | 'code'
  | 'system'
  | 'target'
  | 'version'
  | 'display'
  | 'relation'
  | 'action'
  | 'unit';

/** Where a property of an entry stands. */
export function pathOf({ path, paths }: CodeMapEntry, property: EntryProperty): Path {
  return paths?.[property] ?? [...path, property];
}

/** A coding of the adopter beside a code of ours. */
export interface AdopterCoding {
  readonly system: string;
  readonly version?: string;
  readonly code: string;
  readonly display?: string;
  readonly relation: Relation;
  readonly unit?: string;
}

export interface AdopterEntry {
  /** Systems whose built-in codings are left out. */
  readonly replaces: ReadonlySet<string>;
  readonly codings: readonly AdopterCoding[];
}

/** A checked code map, by `table|code` with the table in camel case: `testPoints|v1`. */
export interface AdopterCodes {
  /** By row: `findings|naevus`. */
  readonly entries: ReadonlyMap<string, AdopterEntry>;
}
