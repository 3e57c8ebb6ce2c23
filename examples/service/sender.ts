import { type AnyBundle, fromJson } from 'face-neck-fhir';
import {
  type DeliverOptions,
  type Delivery,
  type DeliveryState,
  deliver,
  type FhirServer,
  heldVersions,
} from 'face-neck-fhir/deliver';
import type { Store, Waiting } from './store.ts';

export interface Sender {
  /** Looks at the outbox at once instead of at the next time due. */
  wake(): void;
  /** Ends after the delivery that is under way. */
  stop(): Promise<void>;
}

export interface BackOff {
  /** Wait after the first failure, in milliseconds; doubles with each further one. */
  readonly first: number;
  readonly longest: number;
  /** After so many attempts an exam is given up, and kept. */
  readonly attempts: number;
  /** How long after a time-out the server may still be at work on the request, in milliseconds. */
  readonly settle: number;
}

/**
 * Works off the outbox, one exam at a time. A newer content never stays overtaken by an older one:
 * what is sent names the versions that it follows, and where a request got no answer the server is
 * asked again, once that request can no longer be under way.
 * @param most entries of one bundle, where the server has a limit
 * @param log takes one line for what a person should know; it never holds anything of an exam
 */
export function startSender(
  store: Store,
  server: FhirServer,
  most: number | undefined,
  backOff: BackOff,
  log: (line: string) => void,
): Sender {
  let stopped = false;
  let wakeUp = (): void => {};

  const sleep = (milliseconds: number): Promise<void> =>
    new Promise((resolve) => {
      const timer = setTimeout(resolve, milliseconds);
      wakeUp = () => {
        clearTimeout(timer);
        resolve();
      };
    });

  const giveUp = (task: Waiting, status: number): void => {
    store.refused(task, status);
    const reason = status === 0 ? 'tried too often' : `refused with ${status}`;
    log(`an exam was given up: ${reason}`);
  };

  const putOff = (task: Waiting, doubt: boolean, state: DeliveryState, asked?: number): void => {
    if (task.attempts + 1 >= backOff.attempts) giveUp(task, 0);
    else store.later(task, Date.now() + waitOf(task.attempts, asked, backOff), doubt, state);
  };

  const cut: DeliverOptions = most === undefined ? {} : { most };

  const delivered = async (task: Waiting, state: DeliveryState | undefined): Promise<Delivery> => {
    const { value } = await deliver(bundleOf(task), server, {
      ...cut,
      state,
      ...(most !== undefined && { onProgress: (reached) => store.progress(task, reached) }),
    });
    // Our own bundles have no circles of references, so each can be cut.
    if (value === undefined) throw new TypeError('a bundle cannot be cut to this size');
    return value;
  };

  const send = async (task: Waiting): Promise<void> => {
    const delivery = await delivered(task, task.state);
    const { state } = delivery;
    switch (delivery.result) {
      case 'stored': {
        const checkAt = task.doubt ? Date.now() + backOff.settle : undefined;
        store.sent(task, following(state.versions), checkAt);
        break;
      }
      case 'refused':
        giveUp(task, delivery.status ?? 0);
        break;
      case 'conflict': {
        // An attempt that seemed lost has arrived, or another sender wrote: follow what is there now.
        const held = await heldVersions(bundleOf(task), server, cut);
        putOff(task, true, held === undefined ? state : following(held));
        break;
      }
      case 'busy':
        putOff(task, false, state, delivery.waitMilliseconds);
        break;
      case 'unknown':
        putOff(task, true, state);
        break;
    }
  };

  /** What was stored still stands, or is sent again because something older came after it. */
  const check = async (task: Waiting): Promise<void> => {
    const known = task.state?.versions ?? {};
    const held = await heldVersions(bundleOf(task), server, cut);
    if (held === undefined) {
      store.sent(task, following(known), Date.now() + backOff.settle);
    } else if (Object.keys(known).length === 0) {
      // Without versions nothing tells what is there: the newest content is simply sent once more.
      const { result } = await delivered(task, following(held));
      if (result === 'stored') store.settled(task);
      else store.sent(task, following(known), Date.now() + backOff.settle);
    } else if (Object.entries(known).every(([place, version]) => held[place] === version)) {
      store.settled(task);
    } else {
      store.later(task, 0, true, following(held));
    }
  };

  const next = async (): Promise<void> => {
    const task = store.nextDue(Date.now(), Math.max(backOff.longest, backOff.settle));
    if (task !== undefined) return task.check ? check(task) : send(task);
    return sleep(Math.min(Math.max((store.nextTime() ?? Infinity) - Date.now(), 1), 60_000));
  };

  const run = async (): Promise<void> => {
    while (!stopped) {
      try {
        await next();
      } catch {
        // The store could not note the result; the row stands, and is sent again.
        log('the result of a delivery could not be stored');
        await sleep(backOff.longest);
      }
    }
  };

  const running = run();
  return {
    wake: () => wakeUp(),
    stop: () => {
      stopped = true;
      wakeUp();
      return running;
    },
  };
}

/** The bundle as it was stored: our own, and `fromJson` keeps its decimals. */
function bundleOf({ bundle }: Waiting): AnyBundle {
  return fromJson(bundle).value as AnyBundle;
}

/** To be sent from the start, over nothing but these versions. */
function following(versions: DeliveryState['versions']): DeliveryState {
  return { content: '', sent: 0, places: {}, versions };
}

/** What the server asks for counts, but never beyond the longest wait. */
function waitOf(attempts: number, asked = 0, { first, longest }: BackOff): number {
  return Math.min(Math.max(first * 2 ** Math.min(attempts, 20), asked), longest);
}
