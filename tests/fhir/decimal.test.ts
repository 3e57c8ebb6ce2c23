import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DECIMAL_TEXT, decimalProperty, decimalText } from '../../src/fhir/json/decimal.ts';

describe('decimals keep the precision as stated', () => {
  // 0.010 is the example of https://hl7.org/fhir/R4/datatypes.html#decimal: it is not 0.01.
  it.each(['0.010', '4.0', '4', '-0.50', '0', '12345678901234567890', '0.1000000000000000055'])(
    '%s',
    (text) => {
      const holder = decimalProperty('value', text);
      expect(holder.value).toBe(Number(text));
      expect(decimalText(holder, 'value')).toBe(text);
    },
  );

  it('the text survives a copy and is not seen by JSON or key loops', () => {
    const holder = { ...decimalProperty('value', '4.0'), unit: 'mm' };
    expect(decimalText(holder, 'value')).toBe('4.0');
    expect(Object.keys(holder)).toEqual(['value', 'unit']);
    expect(JSON.stringify(holder)).toBe('{"value":4,"unit":"mm"}');
  });

  it('the text is dropped once the number is another', () => {
    const holder = decimalProperty('value', '4.0');
    holder.value = 5;
    expect(decimalText(holder, 'value')).toBe('5');
  });

  it.each(['0x4', ' 4 ', '4.', '04', '4,"injected":1'])(
    'a carried text %j is not believed',
    (text) => {
      const holder = { value: 4, [DECIMAL_TEXT]: { value: text } };
      expect(decimalText(holder, 'value')).toBe('4');
    },
  );

  it.each([{}, { value: '4' }, { value: Number.NaN }, { value: Number.POSITIVE_INFINITY }])(
    'there is none in %j',
    (holder) => {
      expect(decimalText(holder, 'value')).toBeUndefined();
    },
  );

  it('is without exponent and exact for every number', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        const text = decimalText({ value }, 'value') ?? '';
        return /^-?(0|[1-9]\d*)(\.\d+)?$/.test(text) && Number(text) === value;
      }),
    );
  });
});
