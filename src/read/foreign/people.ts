import type { Examiner } from '../../model/people.ts';
import { lookAtList, peek, textOf } from '../bundle/element.ts';
import type { Entry } from '../bundle/entries.ts';
import { claimReference, targetName, targetOf } from '../bundle/reference.ts';
import type { People, Reading } from '../reading.ts';

/**
 * The people of a bundle of others: besides those whom its report names, the clinicians who performed
 * its observations, in their order, each by the reference to them.
 */
export function withPerformers(
  reading: Reading,
  people: People,
  observations: readonly Entry[],
): People {
  const examiners: Examiner[] = [...people.examiners];
  const keys = new Map<string, string>();
  for (const entry of observations) {
    for (const [at, reference] of lookAtList(entry.resource, 'performer').entries()) {
      const literal = peek(reference, 'reference');
      const target = targetOf(reading, reference, entry);
      if (target === undefined || typeof literal !== 'string' || !isClinician(literal)) continue;
      if (people.examinerOf(reference, entry) !== undefined || keys.has(targetName(target)))
        continue;
      const key = `examiner-${examiners.length + 1}`;
      keys.set(targetName(target), key);
      claimReference(reading, entry.resource, 'performer', at);
      const text = textOf(reference, 'display');
      examiners.push({ key, reference: literal, ...(text !== undefined && { name: { text } }) });
    }
  }
  return {
    ...people,
    examiners,
    examinerOf: (reference, from) => {
      const known = people.examinerOf(reference, from);
      if (known !== undefined) return known;
      const target = targetOf(reading, reference, from);
      return target === undefined ? undefined : keys.get(targetName(target));
    },
  };
}

function isClinician(literal: string): boolean {
  return /(^|\/)Practitioner(Role)?\/[^/]+$/.test(literal);
}
