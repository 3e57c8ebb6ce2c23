import { describe, expect, it } from 'vitest';
import { looksDamaged } from '../../../src/convert/values/damaged.ts';
import { dateReader, formatProblems } from '../../../src/convert/values/date.ts';
import { type DateFormat, dateFormat } from '../../../src/convert/values/date-format.ts';
import { readNumber } from '../../../src/convert/values/number.ts';
import { zoneOf } from '../../../src/convert/values/zone.ts';

describe('readNumber', () => {
  it.each([
    ['4.5', { value: '4.5' }],
    [' 4.50 ', { value: '4.50' }],
    ['.5', { value: '0.5' }],
    ['+4', { value: '4' }],
    ['-1.5', { value: '-1.5' }],
    ['<5', { value: '5', comparator: '<' }],
    ['>= 5 mm', { value: '5', comparator: '>=', suffix: 'mm' }],
    ['4.5mm', { value: '4.5', suffix: 'mm' }],
    ['12 %', { value: '12', suffix: '%' }],
    ['4,5', 'decimal-mark'],
    ['1,234', 'decimal-mark'],
    ['1.2.3', 'decimal-mark'],
    ['4-5', 'not-a-number'],
    ['4 5', 'not-a-number'],
    ['4 x 5', { value: '4', suffix: 'x 5' }],
    ['5.', 'not-a-number'],
    ['.', 'not-a-number'],
    ['007', 'not-a-number'],
    ['4.5e3', { value: '4.5', suffix: 'e3' }],
    ['four', 'not-a-number'],
    ['', 'not-a-number'],
    ['١٢', 'not-a-number'],
    ['1'.repeat(19), 'not-a-number'],
  ])('%s', (text, expected) => {
    expect(readNumber(text, '.')).toEqual(expected);
  });

  it('reads the other mark where it is stated', () => {
    expect(readNumber('4,5', ',')).toEqual({ value: '4.5' });
    expect(readNumber('1.234,5', ',')).toBe('decimal-mark');
    expect(readNumber('4.5', ',')).toBe('decimal-mark');
  });
});

// Forms that spreadsheets make of other values: common practice, no source.
describe('looksDamaged', () => {
  it.each([
    '02-Jan',
    '2-Jan',
    '01.Feb',
    'Jan-02',
    'May 2024',
    '01/02/2024',
    '1/2/24',
    '2024-01-02',
    '2024-01-02 00:00:00',
    '2024-01-02T00:00:00',
    '1.2E+05',
    '1E5',
    '#REF!',
    '#N/A',
    '#DIV/0!',
    '####',
  ])('%s does', (text) => {
    expect(looksDamaged(text)).toBe(true);
    expect(looksDamaged(` ${text} `)).toBe(true);
  });

  it.each([
    '',
    '4.5',
    '1-2',
    'III',
    'N/A',
    'marked',
    'may',
    '#',
    'node 2',
    '2024-01-02 09:30',
    'V0001',
    '5 mm',
    'e5',
  ])('%s does not', (text) => expect(looksDamaged(text)).toBe(false));
});

const reader = (formats: readonly string[], rules: object = {}): ReturnType<typeof dateReader> =>
  dateReader(
    formats.map(dateFormat).filter((format): format is DateFormat => format !== undefined),
    { formats, ...rules },
  );

describe('dates', () => {
  it.each([
    ['DD/MM/YYYY', '05/02/2024', '2024-02-05'],
    ['D/M/YYYY', '5/2/2024', '2024-02-05'],
    ['MM/DD/YYYY', '05/02/2024', '2024-05-02'],
    ['DD MMM YYYY', '05 FEB 2024', '2024-02-05'],
    ['DD.MM.YYYY', '05.02.2024', '2024-02-05'],
    ['YYYYMMDD', '20240205', '2024-02-05'],
    ['YYYY-MM', '2024-02', '2024-02'],
    ['YYYY', '2024', '2024'],
    ['YYYYMMDDHHmmssZ', '20240205093000+0100', '2024-02-05T09:30:00+01:00'],
    ['YYYYMMDDHHmmssZ', '20240205093000.25-0330', '2024-02-05T09:30:00.25-03:30'],
    ['YYYY-MM-DDTHH:mmZ', '2024-02-05T09:30Z', '2024-02-05T09:30:00Z'],
  ])('%s reads %s', (format, text, value) => {
    expect(reader([format])(text)).toEqual({ value, codes: [format] });
  });

  it.each([
    ['DD/MM/YYYY', '30/02/2024', 'impossible-date'],
    ['DD/MM/YYYY', '05/13/2024', 'impossible-date'],
    ['DD/MM/YYYY', '5/2/2024', 'unreadable-date'],
    ['DD/MM/YYYY', '05/02/24', 'unreadable-date'],
    ['DD/MM/YY', '05/02/24', 'unreadable-date'],
    ['DD/MM/YYYY', '45327', 'unreadable-date'],
    ['DD MMM YYYY', '05 Mai 2024', 'unreadable-date'],
    ['YYYY-MM-DDTHH:mmZ', '2024-02-05T25:30Z', 'impossible-date'],
    // A nine-digit date of birth in a sample message that many have copied.
    ['YYYYMMDD', '196203520', 'unreadable-date'],
  ])('%s does not read %s', (format, text, problem) => {
    expect(reader([format])(text)).toEqual({ problem, codes: [format] });
  });

  it('two-digit years fall in the stated hundred years', () => {
    const read = reader(['DD/MM/YY'], { centuryFrom: 1930 });
    expect(read('05/02/30').value).toBe('1930-02-05');
    expect(read('05/02/29').value).toBe('2029-02-05');
  });

  // Day 45327 of base 1900 is 2024-02-05: 2024-01-01 is 45292 (common practice, no source).
  it('day numbers count from the stated base', () => {
    expect(reader(['YYYY'], { serial: '1900' })('45292').value).toBe('2024-01-01');
    expect(reader(['YYYY'], { serial: '1904' })('43830').value).toBe('2024-01-01');
    expect(reader(['YYYY'], { serial: '1900' })('60').problem).toBe('unreadable-date');
  });

  it('forms that can be mistaken for each other are found', () => {
    expect(formatProblems(['DD/MM/YYYY', 'YYYY-MM-DD', 'DD/MM/YYYY HH:mm'])).toEqual([]);
    expect(formatProblems(['DD/MM/YYYY', 'D/M/YYYY'])).toEqual([]);
    expect(formatProblems(['YYMMDD', 'DDMMYY'])).toEqual([{ at: 1, problem: 'ambiguous-mapping' }]);
    expect(formatProblems(['', 'MM/DD', 'DD YYYY', 'YYYY HH', 'QQ'])).toEqual(
      [0, 1, 2, 3, 4].map((at) => ({ at, problem: 'invalid-value' })),
    );
  });
});

// Rules of the IANA time zone database, files europe and asia.
describe('zones', () => {
  const wall = (text: string): number => Date.parse(`${text}Z`);

  it.each([
    ['Europe/Lisbon', '2024-01-15T09:30', 0],
    ['Europe/Lisbon', '2024-07-15T09:30', 60],
    ['Europe/Lisbon', '2024-03-31T01:30', 'skipped'],
    ['Europe/Lisbon', '2024-10-27T01:30', 'doubled'],
    ['Europe/Berlin', '2024-03-31T02:30', 'skipped'],
    ['Europe/Berlin', '2024-03-31T03:00', 120],
    ['America/St_Johns', '2024-01-15T09:30', -210],
    ['Asia/Kathmandu', '2024-01-15T09:30', 345],
    ['+01:00', '2024-01-15T09:30', 60],
    ['Z', '2024-01-15T09:30', 0],
  ])('%s at %s', (name, time, expected) => {
    expect(zoneOf(name)?.(wall(time))).toBe(expected);
  });

  it.each(['+15:00', '+01:60', 'Mars/Phobos', '', '1'])('%s is none', (name) => {
    expect(zoneOf(name)).toBeUndefined();
  });
});
