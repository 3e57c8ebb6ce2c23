import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isAfter, spanOf } from '../../src/model/time.ts';

const HOUR = 3_600_000;
const DAY = 24 * HOUR;

describe('the span of a stated time', () => {
  it('a moment is what Date makes of it, whatever the zone', () => {
    const zone = fc.integer({ min: -14 * 60, max: 14 * 60 });
    const date = fc.date({
      min: new Date('0002-01-01T00:00:00Z'),
      max: new Date('9998-12-31T23:59:59.999Z'),
      noInvalidDate: true,
    });
    fc.assert(
      fc.property(date, zone, (moment, minutes) => {
        const local = new Date(moment.getTime() + minutes * 60_000).toISOString().slice(0, -1);
        const two = (part: number): string => String(Math.trunc(part)).padStart(2, '0');
        const size = Math.abs(minutes);
        const text = `${local}${minutes < 0 ? '-' : '+'}${two(size / 60)}:${two(size % 60)}`;
        expect(spanOf(text)).toEqual([moment.getTime(), moment.getTime()]);
      }),
    );
  });

  // Examples of https://hl7.org/fhir/R4/datatypes.html#dateTime
  it.each([
    ['2018', Date.UTC(2018, 0, 1), Date.UTC(2019, 0, 1)],
    ['1973-06', Date.UTC(1973, 5, 1), Date.UTC(1973, 6, 1)],
    ['1905-08-23', Date.UTC(1905, 7, 23), Date.UTC(1905, 7, 24)],
    ['2024-12', Date.UTC(2024, 11, 1), Date.UTC(2025, 0, 1)],
    ['2024-02', Date.UTC(2024, 1, 1), Date.UTC(2024, 2, 1)],
  ])('%s lasts to its end in the last zone, and begins in the first', (text, from, to) => {
    expect(spanOf(text)).toEqual([from - 14 * HOUR, to + 12 * HOUR - 1]);
  });

  it.each([
    ['2015-02-07T13:28:17-05:00', '2015-02-07T18:28:17Z'],
    ['2017-01-01T00:00:00.000Z', '2017-01-01T00:00:00Z'],
  ])('%s is %s', (text, same) => {
    expect(spanOf(text)).toEqual([Date.parse(same), Date.parse(same)]);
  });

  it.each([
    '2026-02-30',
    '1900-02-29',
    '2100-02-29',
    '2025-00',
    '2025-13',
    '2025-04-31',
    '2025-04-00',
    '0000',
    '2025-05-05T24:00:00Z',
    '2025-05-05T12:60:00Z',
    '2025-05-05T12:00:61Z',
    '2025-05-05T12:00:00+14:01',
    '2025-05-05T12:00:00+01:60',
    '2025-05-05T12:00:00',
    '2025-05-05T12:00Z',
    '2025-5-5',
    '25-05-05',
    '2025-05-05 12:00:00Z',
    ' 2025',
    '2025\n',
    '',
  ])('%j is no time', (text) => {
    expect(spanOf(text)).toBeUndefined();
  });

  it('leap years: 2000 and 2024, and a leap second', () => {
    expect(spanOf('2000-02-29')).toBeDefined();
    expect(spanOf('2024-02-29')).toBeDefined();
    // FHIR allows second 60: https://hl7.org/fhir/R4/datatypes.html#instant
    expect(spanOf('2016-12-31T23:59:60Z')).toEqual([Date.UTC(2017, 0, 1), Date.UTC(2017, 0, 1)]);
  });

  it('years below 100 are those years', () => {
    const [first] = spanOf('0050') ?? [];
    expect(new Date((first ?? 0) + 14 * HOUR).toISOString()).toBe('0050-01-01T00:00:00.000Z');
  });
});

describe('isAfter', () => {
  it.each([
    ['2025', '2024', true],
    ['2025', '2025', false],
    ['2025-05', '2025', false],
    ['2025-05-05', '2025-05-04', true],
    ['2025-05', '2025-05-04', false],
    // A day without zone may lie a day away: the fifth in Kiribati begins on the fourth elsewhere.
    ['2025-05-05', '2025-05-04T11:00:00Z', false],
    ['2025-05-05', '2025-05-04T09:59:59Z', true],
    ['2025-05-06T12:00:00Z', '2025-05-05', true],
    ['2025-05-06T11:59:59Z', '2025-05-05', false],
    ['2025-05-05T10:00:00+02:00', '2025-05-05T08:00:00Z', false],
    ['2025-05-05T10:00:01+02:00', '2025-05-05T08:00:00Z', true],
    ['2025-05-05T10:00:00Z', '2025', false],
    ['2025-13', '2024', false],
  ])('%s is after %s: %s', (a, b, after) => {
    expect(isAfter(a, b)).toBe(after);
  });

  it('never both ways', () => {
    const text = fc
      .tuple(fc.integer({ min: 0, max: 4000 }), fc.constantFrom(4, 7, 10))
      .map(([days, length]) => new Date(days * DAY).toISOString().slice(0, length));
    fc.assert(fc.property(text, text, (a, b) => !(isAfter(a, b) && isAfter(b, a))));
  });
});
