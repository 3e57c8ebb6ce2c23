import { describe, expect, it } from 'vitest';
import { decodeUnit } from '../../../src/convert/bulk/input/decode-unit.ts';
import { characterSets } from '../../../src/convert/hl7v2/charset.ts';
import { hl7v2Reader } from '../../../src/convert/hl7v2/reader.ts';
import { head } from './suite.ts';

/** Text of OBX-5, sent as these bytes in a message that declares this set in MSH-18. */
function sent(code: string, bytes: readonly number[]): { text: string; issues: string[] } {
  const [msh = '', ...rest] = head;
  const value = bytes.map((byte) => String.fromCharCode(byte)).join('');
  const lines = [msh.replace('UNICODE UTF-8', code), ...rest, `OBX|1|ST|NOTE||${value}||||||F`];
  const splitter = hl7v2Reader.splitter();
  const units = [...splitter.push(lines.join('\r')), ...splitter.end()];
  const groups = hl7v2Reader.read(units.map((unit) => decodeUnit(unit, 'auto')));
  const fields = groups.flatMap(({ records }) => records.flatMap((record) => record.fields));
  return {
    text: fields.find(({ name }) => name === 'OBX-5')?.text ?? '',
    issues: groups.flatMap(({ issues }) => issues.map(({ code: found }) => found)),
  };
}

describe('character sets of MSH-18', () => {
  // U+00E9: E9 in ISO 8859-1, -2 and -15; C3 A9 in UTF-8 (RFC 3629). U+20AC: A4 in ISO 8859-15.
  // U+0151: F5 in ISO 8859-2. U+4E2D: D6 D0 in GB 18030, A4 A4 in Big5, F1 E9 in EUC-KR (Unihan).
  it.each([
    ['8859/1', [0xe9], '\u00e9'],
    ['8859/2', [0xf5], '\u0151'],
    ['8859/15', [0xa4], '\u20ac'],
    ['UNICODE UTF-8', [0xc3, 0xa9], '\u00e9'],
    ['GB 18030-2000', [0xd6, 0xd0], '\u4e2d'],
    ['BIG-5', [0xa4, 0xa4], '\u4e2d'],
    ['KS X 1001', [0xf1, 0xe9], '\u4e2d'],
  ])('%s', (code, bytes, text) => {
    expect(sent(code, bytes)).toEqual({ text, issues: [] });
  });

  // Windows-1252 has 92 for U+2019 (Unicode mapping table CP1252.TXT); table 0211 has no such set.
  it('are told where the bytes say otherwise', () => {
    const found = { text: '\u2019', issues: ['undeclared-encoding'] };
    expect(sent('8859/1', [0x92])).toEqual(found);
    expect(sent('', [0x92])).toEqual(found);
    expect(sent('ASCII', [0xc3, 0xa9])).toEqual({
      text: '\u00e9',
      issues: ['undeclared-encoding'],
    });
  });

  it('are refused where they cannot be decoded', () => {
    // ESC $ B leaves ASCII for JIS X 0208 (RFC 1468).
    expect(sent('ISO IR87', [0x1b, 0x24, 0x42, 0x43, 0x66]).issues).toContain(
      'undeclared-encoding',
    );
    expect(sent('UNICODE UTF-32', [0xe9]).issues).toContain('undeclared-encoding');
    expect(sent('ISO IR87', [0x41])).toEqual({ text: 'A', issues: [] });
  });

  it('do not cut characters whose second byte is a delimiter', () => {
    // U+8868 is 95 5C in Shift JIS: the byte 5C is the usual escape character.
    expect(sent('ISO IR14', [0x95, 0x5c])).toEqual({ text: '\u8868', issues: [] });
  });

  it('have one encoding each', () => {
    expect(new Set(characterSets.keys()).size).toBe(22);
  });
});
