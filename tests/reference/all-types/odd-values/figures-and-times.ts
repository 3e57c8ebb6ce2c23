import { atType } from '../fault-kinds.ts';
import type { NamedFault } from '../places.ts';
import { core } from './core.ts';

const UCUM = 'http://unitsofmeasure.org';

/** Quantities, ranges, ratios, periods and timings. */
export const oddFiguresAndTimes: readonly NamedFault[] = [
  ['quantity-of-value-alone', atType('Quantity', { value: 1 })],
  ['quantity-of-system-alone', atType('Quantity', { value: 1, system: UCUM })],
  ['quantity-of-unit-alone', atType('Quantity', { unit: 'mg' })],
  ['quantity-of-text', atType('Quantity', { value: '1' })],
  [
    'quantity-of-ucum-with-annotation',
    atType('Quantity', { value: 1, system: UCUM, code: '{score}' }),
  ],
  ['quantity-of-ucum-by-name', atType('Quantity', { value: 1, system: UCUM, code: 'day' })],
  ['quantity-of-ad', atType('Quantity', { value: 1, comparator: 'ad', unit: 'mg' })],
  ['age-without-unit', atType('Age', { value: 4 })],
  ['age-in-metres', atType('Age', { value: 4, system: UCUM, code: 'm' })],
  ['age-negative', atType('Age', { value: -4, system: UCUM, code: 'a' })],
  [
    'age-of-other-system',
    atType('Age', { value: 4, system: 'http://vineyard.example/u', code: 'a' }),
  ],
  ['duration-without-unit', atType('Duration', { value: 4 })],
  ['duration-in-kilograms', atType('Duration', { value: 4, system: UCUM, code: 'kg' })],
  ['duration-with-system-alone', atType('Duration', { value: 4, system: UCUM })],
  ['distance-in-seconds', atType('Distance', { value: 4, system: UCUM, code: 's' })],
  ['count-in-metres', atType('Count', { value: 4, system: UCUM, code: 'm' })],
  ['count-of-half', atType('Count', { value: 4.5, system: UCUM, code: '1' })],
  ['simple-quantity-with-comparator', atType('SimpleQuantity', { value: 1, comparator: '<' })],
  ['range-with-comparator', atType('Range', { low: { value: 1, comparator: '<' } })],
  [
    'range-of-units',
    atType('Range', { low: { value: 1, unit: 'm' }, high: { value: 2, unit: 's' } }),
  ],
  ['range-of-nothing', atType('Range', { id: 'r' })],
  [
    'ratio-of-denominator-zero',
    atType('Ratio', { numerator: { value: 1 }, denominator: { value: 0 } }),
  ],
  [
    'ratio-of-extension',
    atType('Ratio', { extension: [{ url: core('data-absent-reason'), valueCode: 'unknown' }] }),
  ],
  ['period-with-open-start', atType('Period', { end: '2021-05' })],
  ['period-mixed', atType('Period', { start: '2021-05-02T10:00:00Z', end: '2021' })],
  [
    'period-reversed-in-zones',
    atType('Period', { start: '2021-05-02T10:00:00Z', end: '2021-05-02T10:00:00+02:00' }),
  ],
  [
    'timing-with-when-and-time',
    atType('Timing', {
      repeat: { when: ['MORN'], timeOfDay: ['10:00:00'], frequency: 1, period: 1, periodUnit: 'd' },
    }),
  ],
  [
    'timing-with-offset-and-meal',
    atType('Timing', {
      repeat: { when: ['C'], offset: 5, frequency: 1, period: 1, periodUnit: 'd' },
    }),
  ],
  ['timing-of-unknown-weekday', atType('Timing', { repeat: { dayOfWeek: ['monday'] } })],
  [
    'timing-of-two-bounds',
    atType('Timing', {
      repeat: { boundsPeriod: { start: '2021' }, boundsRange: { low: { value: 1 } } },
    }),
  ],
  ['timing-of-negative-period', atType('Timing', { repeat: { period: -1, periodUnit: 'd' } })],
  ['timing-of-duration-max-alone', atType('Timing', { repeat: { durationMax: 5 } })],
  ['timing-of-count-max-alone', atType('Timing', { repeat: { countMax: 5 } })],
  ['timing-of-period-max-alone', atType('Timing', { repeat: { periodMax: 5 } })],
  [
    'timing-of-code',
    atType('Timing', {
      code: {
        coding: [
          { system: 'http://terminology.hl7.org/CodeSystem/v3-GTSAbbreviation', code: 'BANANA' },
        ],
      },
    }),
  ],
];
