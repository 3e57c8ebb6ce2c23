/**
 * Dates and times of FHIR, as parts. A part that is not written is absent, and so is the zone of a
 * date without time.
 * @see https://hl7.org/fhir/R4/datatypes.html#dateTime
 */
export interface DateTime {
  /** Year, month, day, hour, minute, seconds with their fraction; as many as are written. */
  readonly parts: readonly number[];
  /** Minutes east of Greenwich. */
  readonly zone: number | undefined;
}

const form =
  /^(\d{4})(?:-(\d\d)(?:-(\d\d)(?:T(\d\d):(\d\d):(\d\d(?:\.\d+)?)(Z|([+-])(\d\d):(\d\d))?)?)?)?$/;

/** `undefined` for text that is not a date or time of FHIR's form; the day may still not exist. */
export function parseDateTime(text: string): DateTime | undefined {
  const found = form.exec(text);
  if (found === null) return undefined;
  const [, year, month, day, hour, minute, second, zone, sign, hours, minutes] = found;
  const parts = [year, month, day, hour, minute, second].filter((part) => part !== undefined);
  const east = (Number(hours ?? 0) * 60 + Number(minutes ?? 0)) * (sign === '-' ? -1 : 1);
  return { parts: parts.map(Number), zone: zone === undefined ? undefined : east };
}

/** Whether the calendar and the clock have it. A leap second is allowed, as FHIR's patterns do. */
export function exists({ parts, zone }: DateTime): boolean {
  const [year = 1, month = 1, day = 1, hour = 0, minute = 0, second = 0] = parts;
  return (
    year > 0 &&
    month >= 1 &&
    month <= 12 &&
    day >= 1 &&
    day <= daysIn(year, month) &&
    hour < 24 &&
    minute < 60 &&
    second < 61 &&
    // https://hl7.org/fhir/R4/datatypes.html#dateTime: zones reach from -14:00 to +14:00.
    Math.abs(zone ?? 0) <= 14 * 60
  );
}

export function daysIn(year: number, month: number): number {
  if (month === 2) {
    return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
  }
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
}

/**
 * Whether one is at or before the other, as `<=` of FHIRPath: part by part, in UTC where there is a
 * zone; `undefined` where one is less precise and all before is equal.
 * @see https://hl7.org/fhirpath/N1/#comparison
 */
export function notAfter(one: DateTime, other: DateTime): boolean | undefined {
  const [left, right] = [inUtc(one), inUtc(other)];
  for (let at = 0; at < 6; at++) {
    const [a, b] = [left[at], right[at]];
    if (a === undefined && b === undefined) return true;
    if (a === undefined || b === undefined) return undefined;
    if (a !== b) return a < b;
  }
  return true;
}

function inUtc({ parts, zone }: DateTime): readonly number[] {
  if (zone === undefined || zone === 0 || parts.length < 6) return parts;
  const [year = 1, month = 1, day = 1, hour = 0, minute = 0, second = 0] = parts;
  const moved = new Date(0);
  moved.setUTCFullYear(year, month - 1, day);
  moved.setUTCHours(hour, minute - zone);
  return [
    moved.getUTCFullYear(),
    moved.getUTCMonth() + 1,
    moved.getUTCDate(),
    moved.getUTCHours(),
    moved.getUTCMinutes(),
    second,
  ];
}

/**
 * The earliest or latest moment that it can mean, in milliseconds; a time without a zone can be
 * anywhere on Earth, from +14:00 to -12:00.
 * @see https://hl7.org/fhirpath/2025Jan/#lowboundaryprecision-integer-decimal--date--datetime--time
 */
export function boundary({ parts, zone }: DateTime, side: 'low' | 'high'): number {
  const low = side === 'low';
  const [year = 1, month = low ? 1 : 12] = parts;
  const [, , day = low ? 1 : daysIn(year, month), hour = low ? 0 : 23, minute = low ? 0 : 59] =
    parts;
  const [second, fraction] = splitSeconds(parts[5] ?? (low ? 0 : 59.999), low);
  const moment = new Date(0);
  moment.setUTCFullYear(year, month - 1, day);
  moment.setUTCHours(hour, minute - (zone ?? (low ? 14 : -12) * 60), second, fraction);
  return moment.getTime();
}

/** A fraction that is not written can be any. */
function splitSeconds(seconds: number, low: boolean): [number, number] {
  const whole = Math.floor(seconds);
  if (whole === seconds) return [whole, low ? 0 : 999];
  return [whole, Math.floor((seconds - whole) * 1000 + 1e-6)];
}
