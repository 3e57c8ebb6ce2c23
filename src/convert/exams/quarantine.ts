import type { Issue, IssueCode } from '../../issues/issue.ts';
import type { RawUnit } from '../record/record.ts';

/** Input text of one exam that could not be converted, with the reason; a line of a quarantine file. */
export interface QuarantineEntry extends RawUnit {
  /** Code of the first error. */
  readonly reason: IssueCode;
  /** Everything found in it. */
  readonly issues: readonly Issue[];
  /** Fields that went with it. */
  readonly fields: number;
}

export function quarantineEntry(
  unit: RawUnit,
  issues: readonly Issue[],
  fields: number,
): QuarantineEntry {
  const { raw, at, header, lines, filled, notes, declaredEncoding } = unit;
  const first = issues.find(({ severity }) => severity === 'error');
  return {
    reason: first?.code ?? 'malformed-record',
    at,
    issues,
    fields,
    raw,
    ...(header !== undefined && { header }),
    ...(lines !== undefined && { lines }),
    ...(filled !== undefined && { filled }),
    ...(notes !== undefined && { notes }),
    ...(declaredEncoding !== undefined && { declaredEncoding }),
  };
}

/**
 * The unit of a quarantine entry as it goes back into a run after its `raw` was mended. What was
 * wrong with it before is found again, or not.
 */
export function unitOfEntry(entry: QuarantineEntry): RawUnit {
  const { raw, at, header, lines, filled, notes, declaredEncoding } = entry;
  return {
    raw,
    at,
    ...(header !== undefined && { header }),
    ...(lines !== undefined && { lines }),
    ...(filled !== undefined && { filled }),
    ...(notes !== undefined && { notes }),
    ...(declaredEncoding !== undefined && { declaredEncoding }),
  };
}
