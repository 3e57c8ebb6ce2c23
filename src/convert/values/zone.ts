const MINUTE = 60_000;
const DAY = 86_400_000;

/** Offset of a zone in minutes for a local wall time, or why there is not exactly one. */
export type ZoneOffset = number | 'skipped' | 'doubled';

/** Reads offsets of one zone. The argument is the wall time as if it were UTC, in milliseconds. */
export type Zone = (wall: number) => ZoneOffset;

/**
 * Zone for an offset such as `+01:00` or `Z` or an IANA name such as `Europe/Lisbon`; undefined if
 * there is none. Names rest on the time zone data of the JavaScript engine.
 */
export function zoneOf(name: string): Zone | undefined {
  if (name === 'Z') return () => 0;
  const fixed = /^([+-])(\d{2}):(\d{2})$/.exec(name);
  if (fixed !== null) {
    const minutes = Number(fixed[2]) * 60 + Number(fixed[3]);
    if (Number(fixed[3]) > 59 || minutes > 14 * 60) return undefined;
    return () => (fixed[1] === '-' ? -minutes : minutes);
  }
  const offsetAt = namedZone(name);
  if (offsetAt === undefined) return undefined;
  return (wall) => {
    // Offsets change at most once within two days, so the days around hold both candidates.
    const candidates = [...new Set([offsetAt(wall - DAY), offsetAt(wall + DAY)])];
    const fitting = candidates.filter((offset) => offsetAt(wall - offset * MINUTE) === offset);
    const [only, second] = fitting;
    if (only === undefined) return 'skipped';
    return second === undefined ? only : 'doubled';
  };
}

/** `+01:00` for 60. */
export function offsetText(minutes: number): string {
  if (minutes === 0) return 'Z';
  const size = Math.abs(minutes);
  const two = (part: number): string => String(part).padStart(2, '0');
  return `${minutes < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`;
}

function namedZone(name: string): ((moment: number) => number) | undefined {
  let format: Intl.DateTimeFormat;
  try {
    format = new Intl.DateTimeFormat('en-US', {
      timeZone: name,
      calendar: 'gregory',
      hourCycle: 'h23',
      year: 'numeric',
      month: 'numeric',
      day: 'numeric',
      hour: 'numeric',
      minute: 'numeric',
      second: 'numeric',
    });
  } catch {
    return undefined;
  }
  return (moment) => {
    const found = new Map(format.formatToParts(moment).map((part) => [part.type, part.value]));
    const part = (type: Intl.DateTimeFormatPartTypes): number => Number(found.get(type));
    const wall = Date.UTC(
      part('year'),
      part('month') - 1,
      part('day'),
      part('hour'),
      part('minute'),
      part('second'),
    );
    return Math.round((wall - Math.floor(moment / 1000) * 1000) / MINUTE);
  };
}
