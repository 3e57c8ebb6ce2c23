import { delimitersOf } from './delimiters.ts';

/**
 * HL7 table 0211 (alternate character sets, code system v2-0211 of HL7 terminology 7.0.1) and the
 * encoding each code names. The two-byte sets are those of the Encoding Standard. Codes without an
 * encoding here (UTF-32, ISO IR159, CNS 11643) cannot be decoded and are reported by their code.
 * @see https://encoding.spec.whatwg.org/#names-and-labels
 */
export const characterSets: ReadonlyMap<string, string> = new Map([
  ['ASCII', 'us-ascii'],
  ['ISO IR6', 'us-ascii'],
  ['8859/1', 'iso-8859-1'],
  ['8859/2', 'iso-8859-2'],
  ['8859/3', 'iso-8859-3'],
  ['8859/4', 'iso-8859-4'],
  ['8859/5', 'iso-8859-5'],
  ['8859/6', 'iso-8859-6'],
  ['8859/7', 'iso-8859-7'],
  ['8859/8', 'iso-8859-8'],
  ['8859/9', 'iso-8859-9'],
  ['8859/15', 'iso-8859-15'],
  ['ISO IR14', 'shift_jis'],
  ['ISO IR87', 'iso-2022-jp'],
  ['JAS2020', 'iso-2022-jp'],
  ['JIS X 0202', 'iso-2022-jp'],
  ['GB 18030-2000', 'gb18030'],
  ['KS X 1001', 'euc-kr'],
  ['BIG-5', 'big5'],
  ['UNICODE UTF-8', 'utf-8'],
  ['UNICODE', 'utf-16'],
  ['UNICODE UTF-16', 'utf-16'],
]);

/**
 * Encoding that a code of MSH-18 names, or the code itself in lower case where table 0211 does not
 * hold it (`UTF-8` and `WINDOWS-1252` are often written).
 */
export function encodingOfCode(code: string): string {
  return characterSets.get(code.trim().toUpperCase()) ?? code.trim().toLowerCase();
}

/** Encoding that an MSH line declares in MSH-18, first repetition; undefined when it is blank. */
export function declaredEncoding(header: string): string | undefined {
  const delimiters = delimitersOf(header);
  if (delimiters === undefined) return undefined;
  // MSH-1 is the separator itself, so that MSH-18 is the piece 17.
  const field = header.split(delimiters.field, 18)[17] ?? '';
  const code = field.split(delimiters.repetition, 1)[0]?.trim() ?? '';
  return code === '' ? undefined : encodingOfCode(code);
}

/**
 * Bytes of a `\Xhh..\` sequence as text. Only sets whose bytes can be read alone: ASCII, UTF-8 and
 * ISO 8859-1; undefined for others and for bytes that the set does not have.
 */
export function bytesToText(bytes: Uint8Array, encoding: string): string | undefined {
  const single = encoding === 'iso-8859-1' ? isLatin1 : isAscii;
  if (bytes.every(single)) return Array.from(bytes, (byte) => String.fromCharCode(byte)).join('');
  if (encoding !== 'utf-8') return undefined;
  try {
    return decodeURIComponent(Array.from(bytes, (byte) => `%${hex(byte)}`).join(''));
  } catch {
    return undefined;
  }
}

function isAscii(byte: number): boolean {
  return byte < 0x80;
}

/** 80 to 9F are control characters there. */
function isLatin1(byte: number): boolean {
  return byte < 0x80 || byte > 0x9f;
}

function hex(byte: number): string {
  return byte.toString(16).padStart(2, '0');
}
