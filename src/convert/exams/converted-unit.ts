import type { SourcePosition } from '../../issues/issue.ts';
import type { ConvertedGroup } from './convert-group.ts';

/** What became of one unit, whatever its syntax. */
export interface ConvertedUnit extends ConvertedGroup {
  readonly at: SourcePosition;
  /** Text of each field of the ledger, for who compares the two. */
  readonly texts: () => readonly string[];
}
