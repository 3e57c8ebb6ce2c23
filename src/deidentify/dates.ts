import { spanOf } from '../model/time.ts';

/** What becomes of the times of one exam. */
export interface Dates {
  /** A date or time; undefined where it is too coarse to be moved. */
  readonly dateTime: (text: string) => string | undefined;
  readonly instant: (text: string) => string;
}

const DAY = 86_400_000;

/**
 * Every time moved by the same number of days. A moment is written in UTC, since its zone tells where it
 * was and, moved, that it stood in another season. A year or month can't be moved, since it would reach
 * into two.
 */
export function shiftedBy(days: number): Dates {
  const moved = (text: string): string => {
    // A date stands for itself: midnight in UTC is the same day again.
    const start = text.includes('T') ? spanOf(text)?.[0] : Date.parse(`${text}T00:00:00Z`);
    return new Date((start ?? Number.NaN) + days * DAY).toISOString();
  };
  return {
    dateTime: (text) => {
      if (text.includes('T')) return moved(text);
      return text.length === 10 ? moved(text).slice(0, 10) : undefined;
    },
    instant: moved,
  };
}

/** The year alone; a moment, which FHIR asks for whole, is the first of its year. */
export const cutToYear: Dates = {
  dateTime: (text) => text.slice(0, 4),
  instant: (text) => `${text.slice(0, 4)}-01-01T00:00:00Z`,
};
