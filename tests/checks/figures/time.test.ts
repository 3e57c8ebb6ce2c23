import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ageAt, daysBetween } from '../../../src/checks/figures/time.ts';

const DAY = 86_400_000;
/** Whole days from the year 1 to 9999. */
const days = fc
  .date({
    min: new Date('0001-01-01T00:00:00Z'),
    max: new Date('9999-12-31T00:00:00Z'),
    noInvalidDate: true,
  })
  .map((date) => date.toISOString().slice(0, 10));

describe('days between', () => {
  it('agree with the calendar of ECMAScript', () => {
    fc.assert(
      fc.property(days, days, (a, b) => {
        const between = (Date.parse(b) - Date.parse(a)) / DAY;
        expect(daysBetween(a, b)).toEqual({ least: between, most: between });
      }),
    );
  });

  it('are 91 from 1 March to 31 May 2024', () => {
    expect(daysBetween('2024-03-01', '2024-05-31')).toEqual({ least: 91, most: 91 });
  });

  it('go by the dates as written, whatever the zones', () => {
    const evening = '2024-03-01T23:30:00-05:00';
    expect(daysBetween(evening, '2024-03-02T01:00:00+02:00')).toEqual({ least: 1, most: 1 });
  });

  it('are a span where a date is known in part', () => {
    expect(daysBetween('2024-02', '2024-03-01')).toEqual({ least: 1, most: 29 });
    expect(daysBetween('2023', '2024')).toEqual({ least: 1, most: 730 });
  });

  it('are none for a date that does not exist', () => {
    for (const text of ['2026-02-30', '2023-02-29', '2024-13', '2024-00-10', 'today', '']) {
      expect(daysBetween(text, '2024-01-01')).toBeUndefined();
    }
  });
});

describe('age', () => {
  it.each([
    ['1979-05-31', '2024-05-31', 45, 45],
    ['1979-06-01', '2024-05-31', 44, 44],
    ['1979', '2024-05-31', 44, 45],
    ['1979-05', '2024-05-31', 45, 45],
    ['1979-05', '2024-05-30', 44, 45],
    ['1979-05-31', '2024', 44, 45],
    ['2000-02-29', '2023-02-28', 22, 22],
    ['2000-02-29', '2023-03-01', 23, 23],
    ['2000-02-29', '2024-02-29', 24, 24],
  ])('born %s, at %s: %i to %i', (birth, at, least, most) => {
    expect(ageAt(birth, at)).toEqual({ least, most });
  });
});
