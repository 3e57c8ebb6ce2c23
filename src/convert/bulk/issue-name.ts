import type { Issue } from '../../issues/issue.ts';
import { pathText } from '../../issues/path.ts';

/** Names of fields longer than this are cut in counts. */
const LONGEST_NAME = 80;

/**
 * An issue as the name of a count: severity, code and field, without places. Indexes are left out,
 * so that the number of different names stays small however long the run.
 */
export function positionless({ severity, code, path }: Issue): string {
  const names = path.filter((step) => typeof step === 'string');
  const field = pathText(names).slice(0, LONGEST_NAME);
  return field === '' ? `${severity} ${code}` : `${severity} ${code} ${field}`;
}
