import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromJson } from '../../src/fhir/json/from-json.ts';
import { toJson } from '../../src/fhir/json/to-json.ts';

// JSON.parse and JSON.stringify of the engine are the reference of both directions.
const json = fc.jsonValue({ depthSize: 'medium', stringUnit: 'binary' });

describe('toJson', () => {
  it('writes what JSON.stringify writes', () => {
    fc.assert(
      fc.property(json, (value) => {
        expect(toJson(value)).toBe(JSON.stringify(value));
        expect(toJson(value, { pretty: true })).toBe(JSON.stringify(value, null, 2));
      }),
    );
  });

  it('leaves out what is undefined', () => {
    expect(toJson({ a: undefined, b: { c: undefined } })).toBe('{"b":{}}');
  });

  it('asks no object for another form of itself', () => {
    const boxed: unknown[] = [new Date(0), Object('text'), Object(4)];
    expect(toJson(boxed)).toBe('[{},{"0":"t","1":"e","2":"x","3":"t"},{}]');
  });

  it.each([
    ['a function', () => 1],
    ['a symbol', Symbol('x')],
    ['a bigint', 1n],
    ['NaN', Number.NaN],
    ['infinity', Number.POSITIVE_INFINITY],
    ['undefined', undefined],
    ['undefined in a list', [undefined]],
    ['a list with a gap', Object.assign([], { 1: 'b' })],
    ['two thousand levels', Array.from({ length: 2000 }).reduce<unknown>((inner) => [inner], null)],
  ])('throws TypeError for %s', (_, value) => {
    expect(() => toJson(value)).toThrow(TypeError);
  });
});

describe('fromJson', () => {
  it('reads what JSON.parse reads', () => {
    fc.assert(
      fc.property(json, fc.boolean(), (value, pretty) => {
        const text = JSON.stringify(value, null, pretty ? 2 : 0);
        expect(fromJson(text)).toEqual({ ok: true, value: JSON.parse(text), issues: [] });
      }),
    );
  });

  it('refuses what JSON.parse refuses, and gives the place', () => {
    const damaged = fc
      .tuple(json, fc.nat(), fc.constantFrom('', '"', '\\', '{', '}', ',', '\u0001', 'e', '0', ':'))
      .map(([value, at, put]) => {
        const text = JSON.stringify(value);
        const from = at % (text.length + 1);
        return text.slice(0, from) + put + text.slice(from + 1);
      });
    fc.assert(
      fc.property(damaged, (text) => {
        const { value, issues } = fromJson(text);
        // Stricter than JSON.parse in two things, which are tested below.
        const strict = issues.some(
          ({ code, expected }) => code === 'duplicate-property' || expected?.includes('1.8e308'),
        );
        fc.pre(!strict);
        let parsed: { value: unknown } | undefined;
        try {
          parsed = { value: JSON.parse(text) };
        } catch {
          parsed = undefined;
        }
        if (parsed === undefined) {
          expect(issues).toHaveLength(1);
          expect(issues[0]).toMatchObject({ code: 'not-json', severity: 'error' });
          expect(issues[0]?.source).toMatchObject({ line: 1 });
        } else {
          // As text, which does not see the carried decimals.
          expect(issues).toEqual([]);
          expect(JSON.stringify(value)).toBe(JSON.stringify(parsed.value));
        }
      }),
      { numRuns: 2000 },
    );
  });

  it('keeps each number as it was written', () => {
    const text = '{"a":4.0,"b":[{"c":0.010},5.0],"d":1e3,"e":-0,"f":12345678901234567890,"g":7}';
    expect(toJson(fromJson(text).value)).toBe(text);
  });

  it.each([
    ['{"a":1,"a":2}', 'duplicate-property', ['[unknown property 2]']],
    [
      '{"a":{"b":1,"\\u0062":1}}',
      'duplicate-property',
      ['[unknown property 1]', '[unknown property 2]'],
    ],
    ['{"a":[0,1e999]}', 'not-json', ['[unknown property 1]', 1]],
    ['{"a":"\\ud8"}', 'not-json', ['[unknown property 1]']],
    ['{"a":"x\u0000"}', 'not-json', ['[unknown property 1]']],
    ['', 'not-json', []],
    ['\uFEFF{}', 'not-json', []],
  ])('%j gives %s', (text, code, path) => {
    const { value, issues } = fromJson(text);
    expect(value).toBeUndefined();
    expect(issues.map((found) => [found.code, found.path])).toEqual([[code, path]]);
  });

  it('tells every property that stands twice', () => {
    const { issues } = fromJson('{"id":1,"id":2,"code":{"text":1,"text":2}}');
    expect(issues.map(({ path }) => path.join('.'))).toEqual(['id', 'code.text']);
  });

  it('counts lines and columns from 1', () => {
    const { issues } = fromJson('{\n  "a": 1,\n  "b" 2\n}');
    expect(issues[0]?.source).toEqual({ line: 3, column: 7 });
  });

  it('bounds the depth', () => {
    expect(fromJson('[[1]]', { budget: { depth: 2 } }).value).toEqual([[1]]);
    expect(fromJson('[[[1]]]', { budget: { depth: 2 } }).issues[0]?.code).toBe('too-deep');
    expect(fromJson('['.repeat(1_000_000)).issues[0]?.code).toBe('too-deep');
  });

  it('a property __proto__ changes no prototype', () => {
    const { value } = fromJson('{"__proto__":{"polluted":true},"constructor":1}');
    expect(Object.keys(Object(value))).toEqual(['__proto__', 'constructor']);
    expect(Object.getPrototypeOf(value)).toBe(Object.prototype);
    expect('polluted' in Object(value)).toBe(false);
  });

  it('keeps the text of a number named __proto__ apart too', () => {
    const text = '{"__proto__":1.0}';
    expect(toJson(fromJson(text).value)).toBe(text);
  });

  it('reads a text of a million characters and as many escapes', () => {
    const long = `${'\\n"'.repeat(300_000)}x`;
    expect(fromJson(JSON.stringify([long])).value).toEqual([long]);
  });
});
