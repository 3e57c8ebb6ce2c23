import { ageAt } from '../checks/figures/time.ts';
import { element, type Html, joined } from './html.ts';

/** How a language writes dates and times. In the patterns `{day}` and the like stand for the parts. */
export interface DateWords {
  /** January first. */
  readonly months: readonly string[];
  readonly date: string;
  readonly monthAndYear: string;
  readonly time: string;
  /** Between a date and the time of day. */
  readonly at: string;
  /** Between the begin and the end of a period. */
  readonly to: string;
}

const form =
  /^(\d{4})(?:-(\d{2})(?:-(\d{2})(?:T(\d{2}):(\d{2}):\d{2}(?:\.\d+)?(Z|[+-]\d{2}:\d{2}))?)?)?$/;

interface Shown {
  readonly date: string;
  readonly time?: string;
  readonly zone?: string;
}

/**
 * A date or time as people write it, as precise as it was stated: `12 November 2025, 15:30 (UTC+1)`.
 * The clock is that of the place where it was written down; a text of another form stays as it is.
 */
export function dateText(text: string, words: DateWords): string {
  const { date, time, zone } = shown(text, words);
  return time === undefined ? date : `${date}${words.at}${time} (${zone})`;
}

/** The date alone. */
export function dayText(text: string, words: DateWords): string {
  return shown(text, words).date;
}

/** A period; a day and a zone that begin and end share are said once. */
export function periodText(start: string, end: string | undefined, words: DateWords): string {
  const from = shown(start, words);
  const until = end === undefined ? undefined : shown(end, words);
  if (until === undefined) return dateText(start, words);
  const known = from.time !== undefined && until.time !== undefined;
  if (!known || from.date !== until.date || from.zone !== until.zone) {
    return `${dateText(start, words)}${words.to}${dateText(end ?? '', words)}`;
  }
  return `${from.date}${words.at}${from.time}${words.to}${until.time} (${from.zone})`;
}

/** The date for people, with what was written for machines. */
export function time(text: string, words: DateWords): Html {
  if (!form.test(text)) return joined(text);
  return element('time', { datetime: text }, dateText(text, words));
}

/** Years completed on a day, `58` or `57–58` where a date is not exact; undefined without a date. */
export function yearsAt(birthDate: string | undefined, day: string): string | undefined {
  const age = birthDate === undefined ? undefined : ageAt(birthDate, day);
  if (age === undefined || age.most < 0) return undefined;
  const least = Math.max(0, age.least);
  return least === age.most ? String(least) : `${least}–${age.most}`;
}

function shown(text: string, words: DateWords): Shown {
  const match = form.exec(text);
  if (match === null) return { date: text };
  const [, year = '', month, day, hour, minute, zone] = match;
  const name = words.months[Number(month) - 1];
  if (month === undefined || name === undefined) return { date: month === undefined ? year : text };
  if (day === undefined) return { date: filled(words.monthAndYear, { month: name, year }) };
  const date = filled(words.date, { day: String(Number(day)), month: name, year });
  if (hour === undefined || minute === undefined || zone === undefined) return { date };
  return { date, time: filled(words.time, { hour, minute }), zone: zoneText(zone) };
}

function filled(pattern: string, parts: Readonly<Record<string, string>>): string {
  return pattern.replaceAll(/\{(\w+)\}/g, (_, name: string) => parts[name] ?? '');
}

/** `UTC`, `UTC+1`, `UTC+5:30`. */
function zoneText(zone: string): string {
  if (zone === 'Z' || zone.endsWith('00:00')) return 'UTC';
  const [, sign, hours, minutes] = /^([+-])(\d{2}):(\d{2})$/.exec(zone) ?? [];
  return `UTC${sign}${Number(hours)}${minutes === '00' ? '' : `:${minutes}`}`;
}
