import * as lhc from '@lhncbc/ucum-lhc';
import { describe, expect, it } from 'vitest';
import { convertQuantity, knownUnit } from '../../../src/checks/figures/units.ts';
import { attributes } from '../../../src/terminology/tables/attributes.ts';
import { measures } from '../../../src/terminology/tables/measures.ts';
import { units } from '../../../src/terminology/tables/units.ts';

/** The part of the UCUM library that converts; its declaration in this project leaves it out. */
interface Converter {
  convertUnitTo(
    from: string,
    value: number,
    to: string,
  ): { readonly status: string; readonly toVal: number | null };
}

const ucum = lhc.UcumLhcUtils.getInstance() as unknown as Converter;

const pairs = units.flatMap((from) =>
  units.filter((to) => to.kind === from.kind).map((to) => [from.code, to.code] as const),
);

describe('unit conversion', () => {
  it.each(pairs)('%s to %s agrees with the UCUM library', (from, to) => {
    const ours = convertQuantity({ value: '7.25', unit: from }, to);
    const theirs = ucum.convertUnitTo(from, 7.25, to);
    expect(theirs.status).toBe('succeeded');
    const expected = theirs.toVal ?? Number.NaN;
    // Ours is exact or rounded to 12 places, theirs is a binary number.
    expect(Math.abs(Number(ours?.value) - expected)).toBeLessThan(1e-9 * Math.max(1, expected));
  });

  // UCUM 2.1, tables of base units, prefixes and customary units: the inch is 2.54 cm exactly.
  it.each([
    ['1.5', 'cm', 'mm', '15'],
    ['1', '[in_i]', 'mm', '25.4'],
    ['3', 'wk', 'd', '21'],
    ['1', 'a', 'd', '365.25'],
    ['1', 'mo', 'd', '30.4375'],
    ['115', 'L/min', 'mL/min', '115000'],
    ['0.001', 'um', 'mm', '0.000001'],
  ])('%s %s is %s', (value, unit, to, expected) => {
    const converted = convertQuantity({ value, unit }, to);
    expect(converted?.value).toBe(expected);
    expect(converted?.exactly).toBe(true);
  });

  it('keeps the original', () => {
    const original = { value: '1.50', unit: 'cm', comparator: '>' } as const;
    expect(convertQuantity(original, 'mm')).toEqual({
      value: '15',
      unit: 'mm',
      original,
      exactly: true,
    });
  });

  it('says where a division was rounded', () => {
    expect(convertQuantity({ value: '5', unit: 'h' }, 'd')).toMatchObject({
      value: '0.208333333333',
      exactly: false,
    });
  });

  it('converts nothing between kinds, from unknown units or from what is not a number', () => {
    expect(convertQuantity({ value: '1', unit: 'mm' }, 's')).toBeUndefined();
    expect(convertQuantity({ value: '1', unit: 'furlong' }, 'mm')).toBeUndefined();
    expect(convertQuantity({ value: '1', unit: 'mm' }, 'constructor')).toBeUndefined();
    expect(convertQuantity({ value: 'one', unit: 'mm' }, 'mm')).toBeUndefined();
  });

  it('knows every unit that measures and attributes take', () => {
    const codes = [
      ...measures.flatMap((row) => [row.unit, ...(row.units ?? [])]),
      ...attributes.flatMap((row) => row.unit ?? []),
    ];
    expect(codes.filter((code) => knownUnit(code) === undefined)).toEqual([]);
  });
});
