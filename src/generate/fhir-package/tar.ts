import { gzipSync } from 'node:zlib';

/** Bytes of each file by its name in the archive. */
export type Files = ReadonlyMap<string, string>;

const BLOCK = 512;

/**
 * A gzipped ustar archive with the same bytes for the same files: no times, no owners.
 * @see https://pubs.opengroup.org/onlinepubs/9699919799/utilities/pax.html on the ustar format
 */
export function tarball(files: Files): Buffer {
  const parts = [...files].flatMap(([name, text]) => {
    const content = Buffer.from(text, 'utf8');
    const padding = Buffer.alloc((BLOCK - (content.length % BLOCK)) % BLOCK);
    return [header(name, content.length), content, padding];
  });
  return gzipSync(Buffer.concat([...parts, Buffer.alloc(2 * BLOCK)]), { level: 9 });
}

function header(name: string, size: number): Buffer {
  if (Buffer.byteLength(name) > 100) throw new RangeError(`too long a name for ustar: ${name}`);
  const block = Buffer.alloc(BLOCK);
  const octal = (value: number, digits: number): string => value.toString(8).padStart(digits, '0');
  block.write(name, 0);
  block.write(`${octal(0o644, 7)}\0`, 100);
  block.write(`${octal(0, 7)}\0${octal(0, 7)}\0`, 108);
  block.write(`${octal(size, 11)}\0${octal(0, 11)}\0`, 124);
  block.write('        ', 148);
  block.write('0', 156);
  block.write('ustar\x0000', 257);
  const sum = block.reduce((total, byte) => total + byte, 0);
  block.write(`${octal(sum, 6)}\0 `, 148);
  return block;
}
