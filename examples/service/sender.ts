import { deliver, type FhirServer } from './deliver.ts';
import type { Store } from './store.ts';

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
}

/** Works off the outbox, one bundle at a time, so that a newer content never overtakes an older one. */
export function startSender(store: Store, server: FhirServer, backOff: BackOff): Sender {
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

  const sendNext = async (): Promise<void> => {
    const task = store.nextDue(Date.now());
    if (task === undefined) {
      await sleep(Math.min(Math.max((store.nextTime() ?? Infinity) - Date.now(), 1), 60_000));
      return;
    }
    const delivery = await deliver(server, task.bundle);
    if (delivery.result === 'stored') store.sent(task);
    else if (delivery.result === 'refused') store.refused(task, delivery.status);
    else store.failed(task, Date.now() + waitOf(task.attempts, delivery.waitSeconds, backOff));
  };

  const run = async (): Promise<void> => {
    while (!stopped) {
      try {
        await sendNext();
      } catch {
        // The store could not note the result; the row stands, and is sent again.
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
