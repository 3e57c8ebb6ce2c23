import type { Step } from '../context.ts';
import { capability } from './capability.ts';
import { faults } from './faults.ts';
import { amend, read, resend, retract, store, update } from './life.ts';
import { matching } from './matching.ts';
import { negotiation } from './negotiation.ts';
import { search } from './search.ts';
import { size } from './size.ts';
import { validation } from './validation.ts';

/** What a probe tries, in this order. Cleaning comes after, whatever happens. */
export const probeSteps: readonly Step[] = [
  capability,
  negotiation,
  store,
  read,
  search,
  update,
  resend,
  amend,
  retract,
  faults,
  matching,
  size,
  validation,
];
