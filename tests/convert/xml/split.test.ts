import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RawUnit } from '../../../src/convert/record/record.ts';
import { type XmlLimits, xmlLimits } from '../../../src/convert/xml/limits.ts';
import { elementSplitter } from '../../../src/convert/xml/split.ts';
import { sampled } from '../../sampled.ts';

/** More than is read of any one exam. */
const MANY = sampled(250_000, 1_000_000);

function split(text: string, piece = 1000, limits: XmlLimits = xmlLimits): RawUnit[] {
  const splitter = elementSplitter(['export', 'exam'], limits);
  const units: RawUnit[] = [];
  for (let at = 0; at < text.length; at += piece) {
    units.push(...splitter.push(text.slice(at, at + piece)));
  }
  return [...units, ...splitter.end()];
}

const codes = (units: readonly RawUnit[]): (string | undefined)[] =>
  units.map(({ issues }) => issues?.[0]?.code);

describe('exams in an XML stream', () => {
  it('tells the encoding of the declaration (XML 1.0, 4.3.3)', () => {
    const [unit] = split('<?xml version="1.0" encoding="ISO-8859-15"?><export><exam/></export>');
    expect(unit).toEqual({
      raw: '<exam/>',
      at: { line: 1, column: 53 },
      declaredEncoding: 'iso-8859-15',
    });
  });

  it('takes the UTF-8 byte order mark for no data, read as bytes or as text', () => {
    for (const mark of ['\ufeff', '\u00ef\u00bb\u00bf']) {
      expect(codes(split(`${mark}<export><exam>1</exam></export>`))).toEqual([undefined]);
    }
  });

  it('does not depend on where the pieces of the input end', () => {
    const parts = [
      '<export>',
      '</export>',
      '<exam>',
      '</exam>',
      '<exam a="1>2">',
      '<exam/>',
      '<a>',
      '</a>',
    ];
    const odd = [
      '<!--',
      '-->',
      '<![CDATA[',
      ']]>',
      '<?pi',
      '?>',
      '<!DOCTYPE x [',
      ']>',
      '"',
      "'",
      '<',
      '>',
      ' x ',
    ];
    const document = fc.array(fc.constantFrom(...parts, ...parts, ...odd), { maxLength: 30 });
    fc.assert(
      fc.property(document, fc.integer({ min: 1, max: 9 }), (pieces, size) => {
        const text = pieces.join('');
        expect(split(text, size)).toEqual(split(text));
      }),
      { numRuns: sampled(600, 2000) },
    );
  });

  it('keeps every exam of a well-formed export, whatever stands in it', () => {
    const content = fc.constantFrom(
      'text',
      '<a b="x>y" c=\'"\'>1</a>',
      '<!-- <exam> -->',
      '<![CDATA[</exam>]]>',
      '<exam>inner</exam>',
      '<exam/>',
      '<?pi </exam> ?>',
    );
    fc.assert(
      fc.property(fc.array(fc.array(content, { maxLength: 4 }), { maxLength: 6 }), (exams) => {
        const wanted = exams.map((parts) => `<exam>${parts.join('')}</exam>`);
        const units = split(`<export>${wanted.join('\n')}</export>`, 5);
        expect(units.map(({ raw }) => raw)).toEqual(wanted);
      }),
      { numRuns: 300 },
    );
  });
});

describe('hostile XML', () => {
  const good = '<exam>2</exam>';

  it.each([
    ['very many attributes', `<exam ${'a="1" '.repeat(MANY)}/>`, 'too-large'],
    ['ten thousand levels', `<exam>${'<d>'.repeat(10_000)}</exam>`, 'too-deep'],
    ['very many elements', `<exam>${'<d/>'.repeat(MANY)}</exam>`, 'too-large'],
    ['a comment that does not end', '<exam><!--</exam>', 'not-well-formed'],
    [
      'a hundred thousand comments that do not end',
      `<exam>${'<!--'.repeat(100_000)}</exam>`,
      'not-well-formed',
    ],
    [
      'a hundred thousand quotes that do not end',
      `<exam>${'<a b="'.repeat(100_000)}</exam>`,
      'not-well-formed',
    ],
    ['nothing but opening marks', `<exam>${'<'.repeat(100_000)}</exam>`, 'not-well-formed'],
    ['a document type inside', `<exam>${'<!DOCTYPE x>'}</exam>`, 'forbidden-doctype'],
  ])('with %s costs one exam', (_, bad, code) => {
    const units = split(`<export>${bad}${good}</export>`, 65_536);
    expect(codes(units)).toEqual([code, undefined]);
    expect(units[1]?.raw).toBe(good);
  });

  it('is cut when one exam is longer than the limit', () => {
    const limits = { ...xmlLimits, units: 100 };
    const units = split(`<export><exam>${'x'.repeat(1000)}</exam>${good}</export>`, 10, limits);
    expect(units[0]?.issues?.map(({ code }) => code)).toEqual(['too-large']);
    expect(units.at(-1)?.raw).toBe(good);
    expect(Math.max(...units.map(({ raw }) => raw.length))).toBeLessThan(120);
  });
});
