import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { plainDataIssues, withoutBadCharacters } from '../../../src/data/plain-data.ts';
import { parseExam } from '../../../src/model/parse-exam.ts';
import { examSchemaIssues } from '../../../src/model/schema-issues.ts';
import { validateBundle } from '../../../src/validate/versions/r4.ts';

const limits = { depth: 10, values: 1000 };

function nested(levels: number): unknown {
  let value: unknown = 1;
  for (let level = 0; level < levels; level++) value = level % 2 === 0 ? { a: value } : [value];
  return value;
}

describe('depth', () => {
  test('the limit is the last level accepted', () => {
    expect(plainDataIssues(nested(10), limits)).toEqual([]);
    expect(plainDataIssues(nested(11), limits)).toEqual([
      {
        code: 'too-deep',
        severity: 'error',
        message: 'the data is nested too deeply, or in a circle',
        path: ['a', 0, 'a', 0, 'a', 0, 'a', 0, 'a', 0],
        expected: 'at most 10 levels',
        facts: { reason: 'levels', maximum: 10 },
      },
    ]);
  });

  test('a circle, 10,000 levels and a circle of branches end at the limit', () => {
    const circle: Record<string, unknown> = { resourceType: 'Patient' };
    circle.contact = [circle];
    const branches: Record<string, unknown> = {};
    Object.assign(branches, { a: branches, b: branches });
    for (const value of [circle, branches, nested(10_000)]) {
      expect(validateBundle(value).issues.map(({ code }) => code)).toEqual(['too-deep']);
      expect(examSchemaIssues(value).map(({ code }) => code)).toEqual(['too-deep']);
    }
  });

  test('shared parts that would unfold without end stop at the number of values', () => {
    let shared: unknown = 'x';
    for (let level = 0; level < 30; level++) shared = [shared, shared];
    expect(parseExam(shared).issues).toEqual([
      {
        code: 'too-large',
        severity: 'error',
        message: 'there are too many values',
        path: [],
        expected: 'at most 1000000',
        facts: { reason: 'values', maximum: 1_000_000 },
      },
    ]);
  });
});

const narrative = JSON.stringify({
  status: 'generated',
  div: '<div xmlns="http://www.w3.org/1999/xhtml">Ida</div>',
});

test.each(['__proto__', 'constructor', 'prototype'])('a property named %s is told once', (name) => {
  const patient: unknown = JSON.parse(
    `{"resourceType":"Patient","text":${narrative},"name":[{"${name}":{"polluted":true}}]}`,
  );
  expect(validateBundle(patient).issues).toEqual([
    {
      code: 'unsafe-property',
      severity: 'error',
      message: 'a property with this name is not accepted',
      path: ['name', 0, name],
      facts: { reason: 'name' },
    },
  ]);
  expect(Object.hasOwn(Object.prototype, 'polluted')).toBe(false);
});

// https://www.w3.org/TR/xml/#charsets, production 2; FHIR JSON must be able to become XML.
const xmlChar = (code: number): boolean =>
  code === 0x9 ||
  code === 0xa ||
  code === 0xd ||
  (code >= 0x20 && code <= 0xd7ff) ||
  (code >= 0xe000 && code <= 0xfffd) ||
  code > 0xffff;

test('text is refused exactly where it holds what no XML document can', () => {
  for (let code = 0; code <= 0xffff; code++) {
    const found = plainDataIssues(`a${String.fromCharCode(code)}b`, limits);
    expect(found.length, `U+${code.toString(16)}`).toBe(xmlChar(code) ? 0 : 1);
  }
});

test('any text is clean after withoutBadCharacters, and clean text is unchanged', () => {
  fc.assert(
    fc.property(
      fc.string({ unit: 'binary' }),
      fc.integer({ min: 0, max: 0xffff }),
      (text, code) => {
        const clean = withoutBadCharacters(text + String.fromCharCode(code));
        expect(plainDataIssues(clean, limits)).toEqual([]);
        expect(withoutBadCharacters(clean)).toBe(clean);
      },
    ),
  );
});

test('any JSON value gives issues and no exception', () => {
  fc.assert(
    fc.property(fc.jsonValue(), (value) => {
      expect(examSchemaIssues(value).length).toBeGreaterThan(0);
      expect(validateBundle(value).valid).toBe(false);
    }),
  );
});
