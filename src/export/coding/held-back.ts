import { type SnomedPolicy, snomedMayLeave } from '../../fhir/licence/snomed-policy.ts';
import { snomedCodesOf, systemNames } from '../../fhir/licence/snomed-uses.ts';
import type { FreeSet } from '../../terminology/published/snomed.ts';

interface Rules {
  readonly policy: SnomedPolicy;
  readonly freeSet?: FreeSet | undefined;
}

/**
 * A copy of data of FHIR without the codings that the policy does not let out, and how many those
 * were. Lists and properties that hold nothing else go with them; the text of decimals is kept.
 */
export function withoutHeldBack<T extends object>(
  data: T,
  { policy, freeSet }: Rules,
): { value: T; held: number } {
  const isSnomed = systemNames();
  let held = 0;

  const leaves = (value: unknown): boolean => {
    if (typeof value !== 'object' || value === null) return true;
    const fine = snomedCodesOf(value, isSnomed).every(
      ({ code }) => code !== undefined && snomedMayLeave(policy, code, freeSet),
    );
    if (!fine) held += 1;
    return fine;
  };
  const member = (value: unknown): unknown => {
    if (typeof value !== 'object' || value === null) return value;
    const kept = leaves(value) ? copy(value) : undefined;
    return kept === undefined || (saysNothing(kept) && !saysNothing(value)) ? undefined : kept;
  };
  const copy = (holder: object): object => {
    if (Array.isArray(holder)) return holder.map(member).filter((one) => one !== undefined);
    // Spread keeps the symbol under which decimals carry their text.
    const made: Record<string, unknown> = { ...holder };
    for (const [name, value] of Object.entries(made)) {
      const kept = member(value);
      if (kept === undefined) delete made[name];
      else made[name] = kept;
    }
    return made;
  };
  return { value: copy(data) as T, held }; // the same structure with less in it
}

/** Empty, or an extension without a value. */
function saysNothing(value: object): boolean {
  return Object.keys(value).every((name) => name === 'url' || name === 'id');
}
