import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { textPieces } from '../../../src/convert/bulk/input/byte-text.ts';
import { decodeBytes, decodeUnit } from '../../../src/convert/bulk/input/decode-unit.ts';

/** Bytes 80 to FF and their characters, by the mapping table that Unicode publishes. */
const table: { readonly source: string; readonly bytes: { readonly [byte: string]: string } } =
  JSON.parse(
    readFileSync(join(import.meta.dirname, '../../cases/encoding/windows-1252.json'), 'utf8'),
  );

describe('Windows-1252 by the table of Unicode', () => {
  it.each(Object.entries(table.bytes))('byte %s is U+%s', (byte, code) => {
    const decoded = decodeBytes(String.fromCharCode(Number.parseInt(byte, 16)), 'windows-1252');
    expect(decoded).toEqual({ text: String.fromCodePoint(Number.parseInt(code, 16)) });
  });

  it('tells the five bytes that have no character', () => {
    for (const byte of [0x81, 0x8d, 0x8f, 0x90, 0x9d]) {
      expect(decodeBytes(String.fromCharCode(byte), 'windows-1252').problem).toBe('lost-character');
    }
  });

  it('has the bytes A0 to FF in common with ISO 8859-1', () => {
    for (let byte = 0xa0; byte <= 0xff; byte++) {
      const text = String.fromCharCode(byte);
      expect(decodeBytes(text, 'windows-1252')).toEqual({ text });
    }
  });
});

const bytesOf = (text: string): string => Buffer.from(text).toString('latin1');

describe('decodeBytes', () => {
  it('takes UTF-8 where the bytes are UTF-8', () => {
    expect(decodeBytes(bytesOf('café 🍇'), undefined)).toEqual({ text: 'café 🍇' });
  });

  it('takes Windows-1252 with a problem where they are not', () => {
    expect(decodeBytes('caf\u00e9 \u0096 5', undefined)).toEqual({
      text: 'café – 5',
      problem: 'undeclared-encoding',
      used: 'windows-1252',
    });
  });

  // A mislabelled 8859-1 is common (common practice, no source).
  it('takes Windows-1252 where ISO 8859-1 is declared and the bytes are not text in it', () => {
    expect(decodeBytes('\u0092', 'iso-8859-1')).toMatchObject({
      text: '\u2019',
      problem: 'undeclared-encoding',
    });
    expect(decodeBytes('\u00e9', 'iso-8859-1')).toEqual({ text: 'é' });
  });

  // ISO 8859-15 has the euro sign at A4 (Unicode 8859-15.TXT).
  it('takes a declared set', () => {
    expect(decodeBytes('\u00a4', 'iso-8859-15')).toEqual({ text: '€' });
  });

  it('tells a character that was lost before', () => {
    expect(decodeBytes(bytesOf('caf\uFFFD'), 'utf-8')).toMatchObject({ problem: 'lost-character' });
  });

  it('does not guess at a set that it does not know', () => {
    expect(decodeBytes('\u00e9', 'x-unknown')).toMatchObject({ problem: 'unknown-encoding' });
  });
});

describe('decodeUnit', () => {
  it('takes what the mapping states before what the text declares', () => {
    const unit = { raw: '\u00a4', at: { line: 1 }, declaredEncoding: 'iso-8859-1' };
    expect(decodeUnit(unit, 'iso-8859-15').raw).toBe('€');
    expect(decodeUnit(unit, 'auto').raw).toBe('¤');
  });

  it('makes an error of a set that cannot be decoded, and a warning of an assumed one', () => {
    const unit = { raw: '\u00e9', at: { line: 4 } };
    expect(decodeUnit({ ...unit, declaredEncoding: 'x-unknown' }, undefined).issues).toMatchObject([
      { code: 'undeclared-encoding', severity: 'error', source: { line: 4 } },
    ]);
    expect(decodeUnit(unit, undefined).issues).toMatchObject([
      { code: 'undeclared-encoding', severity: 'warning', source: { line: 4 } },
    ]);
  });
});

async function* pieces(...buffers: readonly Buffer[]): AsyncGenerator<Buffer> {
  yield* buffers;
}

async function textOf(bytes: Buffer, size: number, stated?: 'utf-16be'): Promise<string> {
  const parts: Buffer[] = [];
  for (let at = 0; at < bytes.length; at += size) parts.push(bytes.subarray(at, at + size));
  const found = await textPieces(pieces(...parts), stated);
  let text = '';
  for await (const piece of found.pieces) text += piece;
  return found.decoded ? text : Buffer.from(text, 'latin1').toString('utf8');
}

describe('textPieces', () => {
  const wide = (text: string): Buffer => Buffer.from(text, 'utf16le');

  // The marks are those of the Unicode standard, section 23.8.
  it.each([1, 3, 64, 1000])('takes a byte order mark away (pieces of %i)', async (size) => {
    const long = 'é🍇,'.repeat(40);
    expect(await textOf(Buffer.from(`\uFEFF${long}`), size)).toBe(long);
    expect(await textOf(wide(`\uFEFF${long}`), size)).toBe(long);
    expect(await textOf(wide(`\uFEFF${long}`).swap16(), size)).toBe(long);
    expect(await textOf(wide(long).swap16(), size, 'utf-16be')).toBe(long);
  });

  it('does not guess at UTF-16 without its mark', async () => {
    const found = await textPieces(pieces(wide('a,b,c')), undefined);
    expect(found.issues).toMatchObject([{ code: 'undeclared-encoding', severity: 'error' }]);
  });

  it('takes an empty input', async () => {
    expect(await textOf(Buffer.alloc(0), 1)).toBe('');
  });
});
