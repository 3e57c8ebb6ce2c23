import { type Reading, readingOf } from '../exam/finish.ts';
import { type Kept, keepDraft } from '../exam/kept-draft.ts';
import { answered, type Saved, withAnswer } from '../exam/saved.ts';

/** The examination that is open: what was answered, and what follows from it. */
export interface Store {
  readonly saved: Saved;
  readonly reading: Reading;
  /** Whether the last change is kept in this browser. */
  readonly kept: Kept;
  /** When it was kept. */
  readonly keptAt: Date;
  readonly answers: (linkId: string) => readonly string[];
  readonly answer: (linkId: string, values: readonly string[]) => void;
  readonly change: (next: (before: Saved) => Saved) => void;
  /** Ends the writing: another window has taken over the draft. */
  readonly stop: () => void;
}

const otherWindow = 'another window writes it; load this page anew to go on here';

/** Milliseconds between an answer and what follows from it, so that typing stays quick. */
const pause = 120;

/**
 * @param saved Where it begins.
 * @param changed Called after each change, once what follows from it is worked out.
 */
export function openStore(saved: Saved, changed: () => void): Store {
  let current = saved;
  let reading = readingOf(saved);
  let kept = keepDraft(saved);
  let keptAt = new Date();
  let isStopped = false;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const work = (): void => {
    timer = undefined;
    reading = readingOf(current);
    changed();
  };
  const change: Store['change'] = (next) => {
    current = next(current);
    if (isStopped) kept = { state: 'failed', why: otherWindow };
    else {
      kept = keepDraft(current);
      keptAt = new Date();
    }
    clearTimeout(timer);
    timer = setTimeout(work, pause);
  };
  return {
    get saved() {
      return current;
    },
    get reading() {
      // Whoever asks before the pause is over gets what is true now.
      if (timer !== undefined) {
        clearTimeout(timer);
        timer = undefined;
        reading = readingOf(current);
        setTimeout(changed);
      }
      return reading;
    },
    get kept() {
      return kept;
    },
    get keptAt() {
      return keptAt;
    },
    answers: (linkId) => answered(current.answers, linkId),
    answer: (linkId, values) => change((before) => withAnswer(before, linkId, values)),
    change,
    stop: () => {
      isStopped = true;
      kept = { state: 'failed', why: otherWindow };
    },
  };
}
