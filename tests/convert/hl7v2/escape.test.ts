import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bytesToText } from '../../../src/convert/hl7v2/charset.ts';
import { type Delimiters, delimitersOf } from '../../../src/convert/hl7v2/delimiters.ts';
import { unescapeText } from '../../../src/convert/hl7v2/escape.ts';

const usual: Delimiters = {
  field: '|',
  component: '^',
  repetition: '~',
  escape: '\\',
  subcomponent: '&',
};

function readBack(raw: string, encoding = 'us-ascii', delimiters = usual): string {
  return unescapeText(raw, delimiters, (bytes) => bytesToText(bytes, encoding)).text;
}

// Sequences and commands: HL7 v2.3 chapter 2, "Use of escape sequences in text fields" and
// "Formatted text" (read in a copy); pairs of the delimiters also in its figure 2-1.
const published: readonly (readonly [raw: string, text: string])[] = [
  ['a\\F\\b', 'a|b'],
  ['a\\S\\b', 'a^b'],
  ['a\\T\\b', 'a&b'],
  ['a\\R\\b', 'a~b'],
  ['a\\E\\b', 'a\\b'],
  ['\\E\\F\\E\\', '\\F\\'],
  ['\\X0D\\', '\n'],
  ['a\\X0D0A\\b', 'a\nb'],
  ['\\X41\\\\X42\\', 'AB'],
  ['one\\.br\\two', 'one\ntwo'],
  ['one\\.sp\\two', 'one\ntwo'],
  ['one\\.sp2\\two', 'one\n\ntwo'],
  ['one\\.sk3\\two', 'one   two'],
  ['one\\.ce\\two', 'one\ntwo'],
  ['\\H\\red\\N\\ eye', 'red eye'],
  ['\\.in+4\\text', 'text'],
  ['\\.ti-4\\ 1. text', ' 1. text'],
  ['\\.fi\\a\\.nf\\b', 'ab'],
];

describe('escape sequences of HL7 v2', () => {
  it.each(published)('%j is %j', (raw, text) => {
    expect(readBack(raw)).toBe(text);
  });

  it.each([
    ['\\Zlocal\\', 'a sequence of local agreement'],
    ['\\C2842\\', 'another single-byte character set'],
    ['\\M244242\\', 'another multi-byte character set'],
    ['\\XE9\\', 'a byte that ASCII does not have'],
    ['\\X4\\', 'half a byte'],
    ['\\X00\\', 'a control character that FHIR and XML forbid'],
    ['\\.xx\\', 'an unpublished command'],
    ['\\q\\', 'an unpublished letter'],
    ['C:\\exam\\right', 'escape characters that nobody escaped'],
    ['lone \\ mark', 'one escape character alone'],
  ])('leaves %j as it stands: %s', (raw) => {
    expect(readBack(raw)).toBe(raw);
  });

  it('tells what was left and what layout was dropped', () => {
    const toText = (bytes: Uint8Array): string | undefined => bytesToText(bytes, 'us-ascii');
    const read = unescapeText('\\H\\a\\N\\\\Zb\\', usual, toText);
    expect(read).toEqual({ text: 'a\\Zb\\', kept: ['Zb'], layout: ['H', 'N'] });
  });

  it('reads hexadecimal bytes in the character set of the message', () => {
    // U+00E9 is E9 in ISO 8859-1 and C3 A9 in UTF-8 (RFC 3629).
    expect(readBack('caf\\XE9\\', 'iso-8859-1')).toBe('caf\u00e9');
    expect(readBack('caf\\XC3A9\\', 'utf-8')).toBe('caf\u00e9');
    expect(readBack('caf\\XC3\\', 'utf-8')).toBe('caf\\XC3\\');
    expect(readBack('\\X93\\', 'iso-8859-1')).toBe('\\X93\\');
  });

  it('goes by the delimiters that the message declares', () => {
    const own = delimitersOf('MSH$%*@+$');
    if (own === undefined) throw new Error('the delimiters were refused');
    expect(readBack('a@F@b@S@c@R@d@E@e@T@f', 'us-ascii', own)).toBe('a$b%c*d@e+f');
    expect(readBack('a\\F\\b', 'us-ascii', own)).toBe('a\\F\\b');
  });

  it('bounds what one command can add', () => {
    expect(readBack('\\.sk9999\\').length).toBe(200);
    expect(readBack('\\.sp9999\\').length).toBe(200);
  });

  it('reads back every text that was escaped by the published rules', () => {
    const letters = new Map([...'|^&~\\'].map((mark, at) => [mark, 'FSTRE'.charAt(at)]));
    const escaped = (text: string): string =>
      [...text].map((mark) => (letters.has(mark) ? `\\${letters.get(mark)}\\` : mark)).join('');
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...'|^&~\\aX.F ') }), (text) => {
        expect(readBack(escaped(text))).toBe(text);
      }),
    );
  });
});

describe('delimiters', () => {
  it('may leave out the escape and subcomponent characters (HL7 v2.3 figure 2-1)', () => {
    expect(delimitersOf('MSH|^~|A')).toEqual({ field: '|', component: '^', repetition: '~' });
    expect(delimitersOf('MSH|^~\\|A')).toMatchObject({ escape: '\\' });
  });

  it('may declare a truncation character (HL7 v2.7, 2.5.5.2)', () => {
    expect(delimitersOf('MSH|^~\\&#|A')).toMatchObject({ truncation: '#' });
  });

  it.each([
    'MSH',
    'MSH|',
    'MSH|^',
    'MSH|^|A',
    'MSH|^^\\&|',
    'MSH|^~\\&#!|',
    'MSHA^~\\&A',
    'MSH|ab\\&|',
    'MSH|^~\\é|',
  ])('refuses %j', (line) => {
    expect(delimitersOf(line)).toBeUndefined();
  });
});
