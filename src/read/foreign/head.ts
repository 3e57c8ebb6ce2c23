import { dateTimeOf, instantOf } from '../bundle/element.ts';
import type { Entry } from '../bundle/entries.ts';
import type { ReportHead } from '../exam/report.ts';

/** Time of observations without a report, where all of them agree. Whether they are final is not told. */
export function headOfObservations(observations: readonly Entry[]): ReportHead {
  const start = agreed(observations, (entry) => dateTimeOf(entry.resource, 'effectiveDateTime'));
  return {
    status: undefined,
    performed: start === undefined ? undefined : { start },
    recorded: agreed(observations, (entry) => instantOf(entry.resource, 'issued')),
  };
}

function agreed(
  observations: readonly Entry[],
  read: (entry: Entry) => string | undefined,
): string | undefined {
  const values = new Set<string>();
  for (const entry of observations) {
    // Looked at only: each observation claims its own time when it is read.
    entry.resource.claims.attempt(() => {
      const value = read(entry);
      if (value !== undefined) values.add(value);
      return undefined;
    });
  }
  const [value] = values;
  return values.size === 1 ? value : undefined;
}
