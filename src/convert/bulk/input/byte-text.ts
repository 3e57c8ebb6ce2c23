import iconv from 'iconv-lite';
import type { Issue } from '../../../issues/issue.ts';
import { issue } from '../../issue.ts';
import type { Encoding } from '../../mapping/source.ts';

/** Text of an input, in pieces. */
export interface TextPieces {
  /** The pieces hold real text; otherwise one character for each byte, to be decoded unit by unit. */
  readonly decoded: boolean;
  readonly pieces: AsyncIterable<string>;
  readonly issues: readonly Issue[];
  /** What was found while the pieces were taken; whole once they have come to their end. */
  readonly closing?: () => readonly Issue[];
}

/**
 * Bytes as text for a splitter. UTF-16, by its mark or as stated, is decoded at once; a UTF-8 mark is
 * taken away; all else stays bytes until the units are cut, so that one wrong byte spoils one unit.
 */
export async function textPieces(
  bytes: AsyncIterable<Buffer>,
  stated: Encoding | undefined,
): Promise<TextPieces> {
  const source = bytes[Symbol.asyncIterator]();
  let head = Buffer.alloc(0);
  let done = false;
  while (head.length < 64 && !done) {
    const next = await source.next();
    done = next.done ?? false;
    if (!done) head = Buffer.concat([head, next.value]);
  }
  const rest = remaining(head, source, done);
  const utf16 = utf16Of(head, stated);
  if (utf16 !== undefined) return { decoded: true, pieces: decoded(rest, utf16), issues: [] };
  if (head.length > 3 && head.includes(0)) {
    const found = issue('undeclared-encoding', [], { reason: 'zero-bytes' });
    return { decoded: false, pieces: nothing(), issues: [found] };
  }
  return { decoded: false, pieces: asBytes(rest), issues: [] };
}

function utf16Of(head: Buffer, stated: Encoding | undefined): string | undefined {
  if (stated === 'utf-16le' || stated === 'utf-16be') return stated;
  if (head[0] === 0xff && head[1] === 0xfe) return 'utf-16le';
  return head[0] === 0xfe && head[1] === 0xff ? 'utf-16be' : undefined;
}

async function* remaining(
  head: Buffer,
  source: AsyncIterator<Buffer>,
  done: boolean,
): AsyncGenerator<Buffer> {
  try {
    if (head.length > 0) yield head;
    if (done) return;
    for (let next = await source.next(); !next.done; next = await source.next()) yield next.value;
  } finally {
    await source.return?.();
  }
}

async function* decoded(bytes: AsyncIterable<Buffer>, encoding: string): AsyncGenerator<string> {
  // The decoder takes away the mark.
  const decoder = iconv.getDecoder(encoding);
  for await (const piece of bytes) yield decoder.write(piece);
  const end = decoder.end();
  if (end !== undefined && end !== '') yield end;
}

async function* asBytes(bytes: AsyncIterable<Buffer>): AsyncGenerator<string> {
  let first = true;
  for await (const piece of bytes) {
    const text = piece.toString('latin1');
    yield first ? text.replace(/^\u00EF\u00BB\u00BF/, '') : text;
    first = false;
  }
}

async function* nothing(): AsyncGenerator<string> {}
