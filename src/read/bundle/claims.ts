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
  const parts: Store = new Map();
  const wholes: Store = new Map();
  // What was claimed, in order, so that it can be taken back.
  const stores: Store[] = [];
  const holders: object[] = [];
  const taken: Step[] = [];

  const claimIn = (store: Store, holder: object, step: Step): void => {
    const steps = store.get(holder);
    if (steps === undefined) store.set(holder, Array.isArray(holder) ? new Set([step]) : [step]);
    else if (has(steps, step)) return;
    else if (Array.isArray(steps)) steps.push(step);
    else steps.add(step);
    stores.push(store);
    holders.push(holder);
    taken.push(step);
  };

  return {
    claim: (holder, step) => claimIn(parts, holder, step),
    claimAll: (holder, step) => claimIn(wholes, holder, step),
    claimOf: (holder, step) => {
      if (has(wholes.get(holder), step)) return 'all';
      return has(parts.get(holder), step) ? 'part' : undefined;
    },
    attempt: (read) => {
      const start = holders.length;
      const result = read();
      if (result !== undefined) return result;
      while (holders.length > start) {
        const steps = stores.pop()?.get(holders.pop() ?? parts);
        const step = taken.pop() ?? '';
        if (Array.isArray(steps)) steps.pop();
        else steps?.delete(step);
      }
      return undefined;
    },
  };
}

/**
 * The claimed properties of an object or entries of a list, in the order claimed. An object has a
 * dozen properties at most, for which an array is quickest; a list can have any length.
 */
type Store = Map<object, Step[] | Set<Step>>;

function has(steps: Step[] | Set<Step> | undefined, step: Step): boolean {
  if (steps === undefined) return false;
  return Array.isArray(steps) ? steps.includes(step) : steps.has(step);
}
