import { spanOf } from '../../model/time.ts';
import type { DateRules } from '../mapping/mapping.ts';
import { type DateFormat, type DateParts, dateFormat } from './date-format.ts';
import { offsetText, type Zone, zoneOf } from './zone.ts';

/** Why a date or time is not taken over as it stands. */
export type DateProblem = 'unreadable-date' | 'impossible-date' | 'missing-zone' | 'ambiguous-time';

/** A date or time in FHIR form, and what was not as it should be. */
export interface DateReading {
  /** None where the text says no date that exists and can be told without guessing. */
  readonly value?: string;
  readonly problem?: DateProblem;
  /** Forms that would have been read. */
  readonly codes?: readonly string[];
}

export type DateReader = (text: string) => DateReading;

/**
 * Reader for texts in the given forms. A time without a zone is cut to its date, with the problem
 * `missing-zone`; seconds that the source does not have become `00`, as FHIR asks.
 * @see https://hl7.org/fhir/R4/datatypes.html#dateTime
 */
export function dateReader(formats: readonly DateFormat[], rules: DateRules): DateReader {
  const zone = rules.zone === undefined ? undefined : zoneOf(rules.zone);
  const codes = formats.map((format) => format.text);
  return (text) => {
    const trimmed = text.trim();
    for (const format of formats) {
      const parts = format.read(trimmed);
      if (parts !== undefined) return { codes, ...reading(parts, rules, zone) };
    }
    const serial = rules.serial === undefined ? undefined : serialDate(trimmed, rules.serial);
    return serial === undefined ? { problem: 'unreadable-date', codes } : { value: serial };
  };
}

export interface FormatProblem {
  readonly at: number;
  readonly problem: 'invalid-value' | 'ambiguous-mapping';
}

/** Forms that cannot be compiled, and those that read a text in another way than one before them. */
export function formatProblems(formats: readonly string[]): FormatProblem[] {
  const compiled = formats.map(dateFormat);
  const problems: FormatProblem[] = [];
  compiled.forEach((format, at) => {
    if (format === undefined) problems.push({ at, problem: 'invalid-value' });
    else if (compiled.slice(0, at).some((other) => other && canMistake(other, format))) {
      problems.push({ at, problem: 'ambiguous-mapping' });
    }
  });
  return problems;
}

function reading(parts: DateParts, rules: DateRules, zone: Zone | undefined): DateReading {
  const year = parts.year ?? fullYear(parts.shortYear, rules.centuryFrom);
  if (year === undefined) return { problem: 'unreadable-date' };
  const day = [year, parts.month, parts.day].filter((part) => part !== undefined);
  const date = day.map((part, at) => (at === 0 ? part : part.padStart(2, '0'))).join('-');
  if (spanOf(date) === undefined) return { problem: 'impossible-date' };
  if (parts.hour === undefined) return { value: date };
  const clock = `${parts.hour.padStart(2, '0')}:${parts.minute}:${parts.second ?? '00'}`;
  if (spanOf(`${date}T${clock}Z`) === undefined) return { problem: 'impossible-date' };
  if (parts.zone !== undefined) return { value: `${date}T${clock}${zoneText(parts.zone)}` };
  if (zone === undefined) return { value: date, problem: 'missing-zone' };
  const offset = zone(Date.parse(`${date}T${clock.slice(0, 8)}Z`));
  if (typeof offset === 'string') return { value: date, problem: 'ambiguous-time' };
  return { value: `${date}T${clock}${offsetText(offset)}` };
}

function fullYear(short: string | undefined, from: number | undefined): string | undefined {
  if (short === undefined || from === undefined) return undefined;
  const century = Math.floor(from / 100) * 100;
  const year = century + Number(short);
  return String(year < from ? year + 100 : year);
}

function zoneText(zone: string): string {
  return zone === 'Z' || zone.includes(':') ? zone : `${zone.slice(0, 3)}:${zone.slice(3)}`;
}

/**
 * Day number of a spreadsheet. Base 1900 counts a day 1900-02-29 that never was, so numbers up to
 * 60 are refused there (common practice, no source).
 */
function serialDate(text: string, base: '1900' | '1904'): string | undefined {
  if (!/^\d{1,5}$/.test(text)) return undefined;
  const days = Number(text);
  if (base === '1900' && days <= 60) return undefined;
  const first = base === '1900' ? Date.UTC(1899, 11, 30) : Date.UTC(1904, 0, 1);
  return new Date(first + days * 86_400_000).toISOString().slice(0, 10);
}

/** Days whose numbers can all be read as day, month or short year. */
const testDays: readonly (readonly [string, string, string])[] = [
  ['2001', '02', '03'],
  ['2010', '11', '12'],
  ['2012', '10', '11'],
];

function canMistake(first: DateFormat, second: DateFormat): boolean {
  return testDays.some(([year, month, day]) => {
    const parts = { month, day, hour: '10', minute: '11', second: '12', zone: 'Z' };
    const moment = { ...parts, year, shortYear: year.slice(2) };
    const text = first.write(moment);
    const [one, other] = [first.read(text), second.read(text)];
    return other !== undefined && JSON.stringify(norm(one)) !== JSON.stringify(norm(other));
  });
}

function norm(parts: DateParts | undefined): readonly (string | number | undefined)[] {
  const year = parts?.year ?? parts?.shortYear;
  return [year, Number(parts?.month), Number(parts?.day), parts?.hour, parts?.minute];
}
