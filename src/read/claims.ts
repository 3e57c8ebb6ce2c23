type Step = string | number;
/** `part`: what lies below is claimed by itself; `all`: everything below belongs to it. */
type Claim = 'part' | 'all';

/**
 * Which parts of a bundle have found their place in the exam, or follow from what has. What nobody
 * claims is the remainder, so that nothing can be dropped by being forgotten.
 */
export interface Claims {
  /** Claims a property or list entry; what it holds is claimed by itself. */
  claim(holder: object, step: Step): void;
  /** Claims a property or list entry with everything below it. */
  claimAll(holder: object, step: Step): void;
  claimOf(holder: object, step: Step): Claim | undefined;
  /** The result of `read`; when it is undefined, the claims made by it are taken back. */
  attempt<T>(read: () => T | undefined): T | undefined;
}

export function createClaims(): Claims {
  const claims = new Map<object, Map<Step, Claim>>();
  const made: (readonly [holder: object, step: Step, before: Claim | undefined])[] = [];

  const set = (holder: object, step: Step, claim: Claim): void => {
    let steps = claims.get(holder);
    if (steps === undefined) {
      steps = new Map();
      claims.set(holder, steps);
    }
    made.push([holder, step, steps.get(step)]);
    steps.set(step, claim);
  };

  return {
    claim: (holder, step) => {
      if (claims.get(holder)?.get(step) === undefined) set(holder, step, 'part');
    },
    claimAll: (holder, step) => set(holder, step, 'all'),
    claimOf: (holder, step) => claims.get(holder)?.get(step),
    attempt: (read) => {
      const start = made.length;
      const result = read();
      if (result !== undefined) return result;
      for (const [holder, step, before] of made.splice(start).reverse()) {
        if (before === undefined) claims.get(holder)?.delete(step);
        else claims.get(holder)?.set(step, before);
      }
      return undefined;
    },
  };
}
