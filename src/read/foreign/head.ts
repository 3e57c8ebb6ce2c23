import { dateTimeOf, instantOf } from '../bundle/element.ts';
import type { Entry } from '../bundle/entries.ts';
import type { ReportHead } from '../exam/report.ts';

/** Time of observations without a report, as far as they agree. Whether they are final is not told. */
export function headOfObservations(observations: readonly Entry[]): ReportHead {
  const times = said(observations, (entry) => dateTimeOf(entry.resource, 'effectiveDateTime'));
  const recorded = said(observations, (entry) => instantOf(entry.resource, 'issued'));
  return {
    status: undefined,
    performed: performedAt(times),
    recorded: recorded.length === 1 ? recorded[0] : undefined,
  };
}

/**
 * The one time that is said, or, of several on one day, from the first to the last. A day is that of the
 * zone in which it is written; where a time says the day alone, no more is known of the whole.
 */
function performedAt(times: readonly string[]): ReportHead['performed'] {
  const [only, other] = times;
  if (only === undefined) return undefined;
  if (other === undefined) return { start: only };
  const days = new Set(times.map((time) => time.slice(0, 10)));
  const [day = ''] = days;
  if (days.size > 1 || day.length < 10) return undefined;
  if (times.some((time) => !time.includes('T'))) return { start: day };
  const inOrder = [...times].sort((a, b) => Date.parse(a) - Date.parse(b));
  return { start: inOrder[0] ?? only, end: inOrder.at(-1) ?? other };
}

/** The values that are said, each once. */
function said(
  observations: readonly Entry[],
  read: (entry: Entry) => string | undefined,
): readonly string[] {
  const values = new Set<string>();
  for (const entry of observations) {
    // Looked at only: each observation claims its own time when it is read.
    entry.resource.claims.attempt(() => {
      const value = read(entry);
      if (value !== undefined) values.add(value);
      return undefined;
    });
  }
  return [...values];
}
