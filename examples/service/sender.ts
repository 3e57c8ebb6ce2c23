import { deliver, type FhirServer, heldReport } from './deliver.ts';
import type { Found, Store, Waiting } from './store.ts';

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
 * Works off the outbox, one bundle at a time. A newer content never stays overtaken by an older one:
 * what is sent names the version it follows, and where a request got no answer the server is asked
 * again, once that request can no longer be under way.
 * @param log takes one line for what a person should know; it never holds anything of an exam
 */
export function startSender(
  store: Store,
  server: FhirServer,
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

  const putOff = (task: Waiting, found: Found, asked?: number): void => {
    if (task.attempts + 1 >= backOff.attempts) giveUp(task, 0);
    else store.later(task, Date.now() + waitOf(task.attempts, asked, backOff), found);
  };

  const send = async (task: Waiting): Promise<void> => {
    const delivery = await deliver(server, task.bundle, task.version);
    switch (delivery.result) {
      case 'stored': {
        const checkAt = task.doubt === 1 ? Date.now() + backOff.settle : undefined;
        store.sent(task, delivery.version, checkAt);
        break;
      }
      case 'refused':
        giveUp(task, delivery.status);
        break;
      case 'conflict': {
        // An attempt that seemed lost has arrived, or another sender wrote: follow what is there now.
        const held = await heldReport(server, task.bundle);
        if (held === 'unknown') putOff(task, { doubt: true });
        else putOff(task, { doubt: true, version: held === 'gone' ? null : held.version });
        break;
      }
      case 'busy':
        putOff(task, { doubt: false }, delivery.waitSeconds);
        break;
      case 'unknown':
        putOff(task, { doubt: true });
        break;
    }
  };

  /** What was stored still stands, or is sent again because something older came after it. */
  const check = async (task: Waiting): Promise<void> => {
    const held = await heldReport(server, task.bundle);
    if (held === 'unknown') {
      store.sent(task, task.version ?? undefined, Date.now() + backOff.settle);
    } else if (held === 'gone') {
      store.later(task, 0, { doubt: true, version: null });
    } else if (held.version !== task.version) {
      store.later(task, 0, { doubt: true, version: held.version });
    } else if (held.version !== null) {
      store.settled(task);
    } else {
      // Without versions nothing tells what is there: the newest content is simply sent once more.
      const delivery = await deliver(server, task.bundle, null);
      if (delivery.result === 'stored') store.settled(task);
      else store.sent(task, undefined, Date.now() + backOff.settle);
    }
  };

  const next = async (): Promise<void> => {
    const task = store.nextDue(Date.now(), Math.max(backOff.longest, backOff.settle));
    if (task !== undefined) return task.check === 1 ? check(task) : send(task);
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

/** What the server asks for counts, but never beyond the longest wait. */
function waitOf(attempts: number, asked: number | undefined, { first, longest }: BackOff): number {
  const doubled = first * 2 ** Math.min(attempts, 20);
  return Math.min(Math.max(doubled, (asked ?? 0) * 1000), longest);
}
