import { partName } from '../../fhir/names/part-names.ts';
import { partNameOf, type Reading } from '../reading.ts';
import { peek } from './element.ts';
import type { Entry } from './entries.ts';
import { reachedFrom } from './members.ts';

/**
 * The entries without those that an earlier version of the exam had: entered in error although the
 * exam is not, and no longer among its results. An instrument goes with the observation that it was
 * used.
 */
export function withoutWithdrawn(
  reading: Reading,
  report: Entry | undefined,
  all: readonly Entry[],
): readonly Entry[] {
  if (report === undefined || isInError(report)) return all;
  if (!all.some(isInError)) return all;
  const reached = new Set(reachedFrom(reading, report));
  const gone = new Set(all.filter((entry) => isInError(entry) && !reached.has(entry)));
  const names = new Set([...gone].map(({ resource }) => partNameOf(reading, resource)));
  return all.filter((entry) => {
    const name = partNameOf(reading, entry.resource);
    const key =
      name?.startsWith(partName.instrument('')) && name.slice(partName.instrument('').length);
    const tool = entry.type === 'Device' && key ? names.has(partName.used(key)) : false;
    if (!gone.has(entry) && !tool) return true;
    if (name !== undefined) {
      reading.reasons.set(entry.resource.json, 'taken back by the exam, which no longer holds it');
    }
    return false;
  });
}

function isInError({ resource }: Entry): boolean {
  return peek(resource, 'status') === 'entered-in-error';
}
