import type { NumberForm } from './number-format.ts';

const DAY = 86_400;

/** Last day of 9999 in the 1900 system. */
const LAST = 2_958_465;

/**
 * A day number as ISO 8601, as precise as its format shows it; undefined where the date system does not
 * have that day, or the format shows a day or time without all that stands above it, which the
 * spreadsheet has then made up. Seconds are rounded.
 * @param serial days and parts of one since the beginning of the system
 * @see ECMA-376 part 1, 18.17.4.1: the 1900 system counts a 29 February 1900 that never was
 */
export function serialDate(
  serial: number,
  form: Extract<NumberForm, { readonly form: 'date' }>,
  is1904: boolean,
): string | undefined {
  const seconds = Math.round(serial * DAY);
  const day = Math.floor(seconds / DAY);
  const rest = seconds - day * DAY;
  if (!(serial >= 0) || day > LAST) return undefined;
  const clock = `${two(rest / 3600)}:${two((rest / 60) % 60)}:${two(rest % 60)}`;
  if (!form.year && !form.month && !form.day) return day === 0 ? clock : undefined;
  if (!form.year || (form.day && !form.month)) return undefined;
  const date = dateOf(day, is1904);
  if (date === undefined) return undefined;
  if (form.time || rest > 0) return form.day ? `${date}T${clock}` : undefined;
  return date.slice(0, form.day ? 10 : form.month ? 7 : 4);
}

function dateOf(day: number, is1904: boolean): string | undefined {
  if (is1904) return isoDate(Date.UTC(1904, 0, 1 + day));
  if (day === 0 || day === 60) return undefined;
  return isoDate(Date.UTC(1899, 11, day < 60 ? 31 + day : 30 + day));
}

/** Hours, minutes and seconds of a span in days; undefined where it is negative. */
export function elapsedTime(days: number): string | undefined {
  const seconds = Math.round(days * DAY);
  if (!(seconds >= 0) || days > LAST) return undefined;
  return `${two(seconds / 3600)}:${two((seconds / 60) % 60)}:${two(seconds % 60)}`;
}

function isoDate(milliseconds: number): string {
  return new Date(milliseconds).toISOString().slice(0, 10);
}

function two(number: number): string {
  return String(Math.floor(number)).padStart(2, '0');
}
