/** First and last value that something known only in part can have. */
export interface Span {
  readonly least: number;
  readonly most: number;
}

interface Parts {
  readonly year: number;
  readonly month?: number;
  readonly day?: number;
}

const DATE_FORM = /^(\d{4})(?:-(\d{2})(?:-(\d{2})(T.*)?)?)?$/;

/**
 * Days on the calendar from one date to another, as written at each place: the clock and its zone
 * are left aside. A date known only to the month or year gives a span. Undefined for no date.
 */
export function daysBetween(from: string, to: string): Span | undefined {
  const start = daySpan(from);
  const end = daySpan(to);
  if (start === undefined || end === undefined) return undefined;
  return { least: end.least - start.most, most: end.most - start.least };
}

/**
 * Completed years at a date, as a span when a date is known only in part. Someone born on 29 February
 * completes a year on 1 March of a common year. Undefined for no date.
 */
export function ageAt(birthDate: string, at: string): Span | undefined {
  const birth = dateParts(birthDate);
  const then = dateParts(at);
  if (birth === undefined || then === undefined) return undefined;
  return {
    least: completedYears(lastDay(birth), firstDay(then)),
    most: completedYears(firstDay(birth), lastDay(then)),
  };
}

function daySpan(text: string): Span | undefined {
  const parts = dateParts(text);
  if (parts === undefined) return undefined;
  const first = firstDay(parts);
  const last = lastDay(parts);
  return {
    least: dayNumber(first.year, first.month, first.day),
    most: dayNumber(last.year, last.month, last.day),
  };
}

function dateParts(text: string): Parts | undefined {
  const match = DATE_FORM.exec(text);
  if (match === null) return undefined;
  const [, yearText, monthText, dayText] = match;
  const year = Number(yearText);
  if (monthText === undefined) return { year };
  const month = Number(monthText);
  if (month < 1 || month > 12) return undefined;
  if (dayText === undefined) return { year, month };
  const day = Number(dayText);
  if (day < 1 || day > daysInMonth(year, month)) return undefined;
  return { year, month, day };
}

type Day = Required<Parts>;

function firstDay({ year, month = 1, day = 1 }: Parts): Day {
  return { year, month, day };
}

function lastDay({ year, month = 12, day = daysInMonth(year, month) }: Parts): Day {
  return { year, month, day };
}

function completedYears(birth: Day, at: Day): number {
  const before = at.month < birth.month || (at.month === birth.month && at.day < birth.day);
  return at.year - birth.year - (before ? 1 : 0);
}

function daysInMonth(year: number, month: number): number {
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}

/** Days since 1970-01-01 in the proleptic Gregorian calendar; years are counted from March. */
function dayNumber(year: number, month: number, day: number): number {
  const marchYear = month > 2 ? year : year - 1;
  const monthFromMarch = (month + 9) % 12;
  const leapDays =
    Math.floor(marchYear / 4) - Math.floor(marchYear / 100) + Math.floor(marchYear / 400);
  return marchYear * 365 + leapDays + Math.floor((monthFromMarch * 153 + 2) / 5) + day - 719_469;
}
