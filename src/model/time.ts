const HOUR = 3_600_000;
/** Furthest zones east and west of UTC: a date without a zone may lie this far to either side. */
const EARLIEST_ZONE = 14 * HOUR;
const LATEST_ZONE = 12 * HOUR;

const shape =
  /^(\d{4})(?:-(\d{2})(?:-(\d{2})(?:T(\d{2}):(\d{2}):(\d{2})(?:\.(\d+))?(Z|[+-]\d{2}:\d{2}))?)?)?$/;

/** A day, as nearly all dates of an exam are: told apart first, since it is read much faster. */
const dayShape = /^\d{4}-\d{2}-\d{2}$/;

/** First and last millisecond (Unix time) that a stated time can mean; `undefined` if it does not exist. */
export type Span = readonly [first: number, last: number];

/**
 * The span of a date or time stated to the year, month, day or second. Undefined for a text of
 * another form and for what no calendar has: 2026-02-30, 25:00, a zone beyond +14:00.
 */
export function spanOf(text: string): Span | undefined {
  if (dayShape.test(text)) {
    const parts = [text.slice(0, 4), text.slice(5, 7), text.slice(8)] as const;
    const start = calendarDay(Number(parts[0]), Number(parts[1]), Number(parts[2]));
    return start === undefined ? undefined : dateSpan(start, start + 24 * HOUR);
  }
  const match = shape.exec(text);
  if (match === null) return undefined;
  const [, year, month, day, hour, minute, second, fraction = '', zone] = match;
  if (zone !== undefined) {
    const moment = momentOf([year, month, day, hour, minute, second].map(Number), zone);
    const fractionMs = Number(`0.${fraction || '0'}`) * 1000;
    return moment === undefined ? undefined : [moment + fractionMs, moment + fractionMs];
  }
  const first = calendarDay(Number(year), Number(month ?? 1), 1);
  if (first === undefined) return undefined;
  const next = Date.UTC(Number(year) + (month ? 0 : 1), month ? Number(month) : 0, 1);
  return dateSpan(first, next);
}

/** From the first moment of a date anywhere to its last; both are given in UTC. */
function dateSpan(start: number, next: number): Span {
  return [start - EARLIEST_ZONE, next - 1 + LATEST_ZONE];
}

/**
 * True only where `a` lies after `b` whatever their precision leaves open. Two dates without zone
 * are dates of one calendar; a date and a moment can be of different zones.
 */
export function isAfter(a: string, b: string): boolean {
  const left = spanOf(a);
  const right = spanOf(b);
  if (left === undefined || right === undefined) return false;
  const slack = isDate(a) && isDate(b) ? EARLIEST_ZONE + LATEST_ZONE : 0;
  return left[0] + slack > right[1];
}

function isDate(text: string): boolean {
  return !text.includes('T');
}

function momentOf(parts: number[], zone: string): number | undefined {
  const [year = 0, month = 0, day = 0, hour = 0, minute = 0, second = 0] = parts;
  const midnight = calendarDay(year, month, day);
  const offset = zoneOffset(zone);
  // FHIR allows second 60 for a leap second.
  const clock = hour < 24 && minute < 60 && second <= 60;
  if (midnight === undefined || offset === undefined || !clock) return undefined;
  return midnight + hour * HOUR + minute * 60_000 + second * 1000 - offset;
}

function zoneOffset(zone: string): number | undefined {
  if (zone === 'Z') return 0;
  const hours = Number(zone.slice(1, 3));
  const minutes = Number(zone.slice(4, 6));
  if (minutes > 59 || hours * 60 + minutes > 14 * 60) return undefined;
  return (zone.startsWith('-') ? -1 : 1) * (hours * HOUR + minutes * 60_000);
}

/** Days in each month of a year that is no leap year. */
const monthDays: readonly number[] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** The start of a day in UTC; undefined for one that no calendar has. */
function calendarDay(year: number, month: number, day: number): number | undefined {
  const isLeap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  const days = month === 2 && isLeap ? 29 : (monthDays[month - 1] ?? 0);
  if (year < 1 || day < 1 || day > days) return undefined;
  if (year >= 100) return Date.UTC(year, month - 1, day);
  // Date.UTC takes the years to 99 for those of the 20th century.
  const date = new Date(Date.UTC(2000, month - 1, day));
  return date.setUTCFullYear(year, month - 1, day);
}
