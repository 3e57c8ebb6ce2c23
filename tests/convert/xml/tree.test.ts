import { describe, expect, it } from 'vitest';
import { resolveReferences } from '../../../src/convert/xml/characters.ts';
import { placesIn } from '../../../src/convert/xml/place.ts';
import { readTree } from '../../../src/convert/xml/tree.ts';

describe('one XML element', () => {
  it('becomes a tree in input order, with the places of its elements', () => {
    expect(readTree('<a x="1&lt;2">t<b/>u<!-- c --><![CDATA[<d>]]><?p q?></a>')).toEqual({
      unknownReferences: 0,
      root: {
        name: 'a',
        attributes: new Map([['x', '1<2']]),
        offset: 0,
        children: [
          { text: 't' },
          { name: 'b', attributes: new Map(), children: [], offset: 15 },
          { text: 'u' },
          { comment: ' c ' },
          { text: '<d>' },
          { instruction: 'p q' },
        ],
      },
    });
  });

  it('may have names that objects have too', () => {
    const tree = readTree('<toString valueOf="1"><hasOwnProperty>x</hasOwnProperty></toString>');
    expect(tree).toMatchObject({
      root: { name: 'toString', children: [{ name: 'hasOwnProperty', children: [{ text: 'x' }] }] },
    });
  });

  it.each([
    ['', 'no well-formed XML'],
    ['text', 'no well-formed XML'],
    ['<a/><b/>', 'not exactly one element'],
    ['<a></b>', 'no well-formed XML'],
    ['<a>\u0000</a>', 'a character that XML forbids'],
    ['<a>\ud800</a>', 'a character that XML forbids'],
    ['<!DOCTYPE a><a/>', 'a document type inside an element'],
    ['<a __proto__="1"/>', 'a name that is not accepted'],
    ['<constructor/>', 'a name that is not accepted'],
    ['<prototype/>', 'a name that is not accepted'],
  ])('is refused as %j', (text, message) => {
    expect(readTree(text)).toMatchObject({ message });
    expect(Object.hasOwn(Object.prototype, '1')).toBe(false);
  });
});

describe('references', () => {
  // XML 1.0, 4.1 and 4.6; the last code point of Unicode is 10FFFF.
  it.each([
    ['&amp;&lt;&gt;&quot;&apos;', '&<>"\'', 0],
    ['&#65;&#x42;', 'AB', 0],
    ['&#x10FFFF;', '\u{10ffff}', 0],
    ['&#x110000;', '&#x110000;', 1],
    ['&#xD800;', '&#xD800;', 1],
    ['&#xFFFE;', '&#xFFFE;', 1],
    ['&#11;', '&#11;', 1],
    ['&nbsp;', '&nbsp;', 1],
    ['a & b', 'a & b', 0],
    ['&amp', '&amp', 0],
    ['&toString;', '&toString;', 1],
  ])('%j is %j', (raw, text, unknown) => {
    expect(resolveReferences(raw)).toEqual({ text, unknown });
  });
});

it('places count lines and columns from the start of the unit', () => {
  const placeOf = placesIn('<exam>\n<a/>\r\n<b/>', { line: 7, column: 3 });
  expect([0, 6, 7, 13].map(placeOf)).toEqual([
    { line: 7, column: 3 },
    { line: 7, column: 9 },
    { line: 8, column: 1 },
    { line: 9, column: 1 },
  ]);
});
