import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  absolute,
  add,
  compare,
  decimalText,
  divide,
  type Exact,
  exact,
  multiply,
  signedText,
  subtract,
  trimmed,
} from '../../../src/checks/figures/decimal.ts';

function number(text: string): Exact {
  const value = exact(text);
  if (value === undefined) throw new Error(`${text} is no decimal`);
  return value;
}

/** Decimal texts of the form that the exam schema allows, with up to nine places. */
const decimals = fc
  .tuple(fc.bigInt({ min: -(10n ** 15n), max: 10n ** 15n }), fc.integer({ min: 0, max: 9 }))
  .map(([digits, scale]) => decimalText({ digits, scale }));

describe('exact decimals', () => {
  it('keep the precision as written', () => {
    expect(decimalText(number('4.0'))).toBe('4.0');
    expect(decimalText(number('-0.50'))).toBe('-0.50');
    expect(decimalText(subtract(number('2.5'), number('4.5')))).toBe('-2.0');
  });

  it('have none of the gaps of binary numbers', () => {
    expect(decimalText(add(number('0.1'), number('0.2')))).toBe('0.3');
    expect(decimalText(subtract(number('6.5'), number('6.4')))).toBe('0.1');
    expect(compare(subtract(number('8.6'), number('7.5')), number('1.1'))).toBe(0);
  });

  it('refuse what is not a decimal', () => {
    for (const text of ['', '.5', '5.', '1e3', '+1', '1,5', 'NaN', '٣', ' 1', '0x10']) {
      expect(exact(text)).toBeUndefined();
    }
  });

  // Rounding half to even as in IEEE 754-2019, 4.3.1, the default of decimal arithmetic.
  it.each([
    ['1', '8', 2, '0.12', false],
    ['3', '8', 2, '0.38', false],
    ['1', '4', 2, '0.25', true],
    ['-1', '8', 2, '-0.12', false],
    ['2', '3', 3, '0.667', false],
    ['150', '8.0', 2, '18.75', true],
    ['-10', '4', 0, '-2', false],
  ] as const)('%s / %s to %i places is %s', (a, b, places, text, exactly) => {
    const quotient = divide(number(a), number(b), places);
    expect(quotient && decimalText(quotient.value)).toBe(text);
    expect(quotient?.exactly).toBe(exactly);
  });

  it('do not divide by zero', () => {
    expect(divide(number('1'), number('0.00'), 2)).toBeUndefined();
  });

  it('add and subtract back to what they were', () => {
    fc.assert(
      fc.property(decimals, decimals, (a, b) => {
        const back = subtract(add(number(a), number(b)), number(b));
        expect(compare(back, number(a))).toBe(0);
      }),
    );
  });

  it('order as their digits do at one scale', () => {
    fc.assert(
      fc.property(fc.bigInt(), fc.bigInt(), fc.integer({ min: 0, max: 12 }), (a, b, scale) => {
        const order = compare({ digits: a, scale }, { digits: b, scale });
        expect(Math.sign(order)).toBe(a === b ? 0 : a < b ? -1 : 1);
      }),
    );
  });

  it('multiply, take the size and drop zeros without changing the number', () => {
    fc.assert(
      fc.property(decimals, (a) => {
        const value = number(a);
        expect(compare(multiply(value, number('1.000')), value)).toBe(0);
        expect(compare(trimmed(value), value)).toBe(0);
        expect(compare(absolute(value), number('0'))).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it('show a gain with its sign', () => {
    expect(signedText(number('1.5'))).toBe('+1.5');
    expect(signedText(number('-1.5'))).toBe('-1.5');
    expect(signedText(number('0.0'))).toBe('0.0');
  });
});
