import { describe, expect, it } from 'vitest';
import { type Document, documents } from '../../../src/cli/input/documents.ts';
import type { CliIo } from '../../../src/cli/io.ts';

async function read(pieces: readonly Uint8Array[], most?: number): Promise<Document[]> {
  async function* stdin(): AsyncGenerator<Uint8Array> {
    yield* pieces;
  }
  const io: CliIo = {
    stdin: stdin(),
    interactive: false,
    out: async () => {},
    err: async () => {},
    errIsTerminal: false,
    now: () => new Date(0),
    cwd: '/',
  };
  const found: Document[] = [];
  for await (const document of documents(io, [], most)) found.push(document);
  return found;
}

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

/** Every way to cut the bytes of a text into pieces of one size. */
function pieces(text: string, size: number): Uint8Array[] {
  const all = bytes(text);
  const cut: Uint8Array[] = [];
  for (let at = 0; at < all.length; at += size) cut.push(all.subarray(at, at + size));
  return cut;
}

const input = '(stdin)';

describe('documents of an input', () => {
  it.each([1, 2, 3, 7, 1000])(
    'are the same however the bytes are cut, in pieces of %i',
    async (size) => {
      const text = '{"a":"é€𝄞"}\n\n{"b":2}\r\n{"c":[1]}';
      expect(await read(pieces(text, size))).toEqual([
        { input, record: 1, line: 1, text: '{"a":"é€𝄞"}' },
        { input, record: 2, line: 3, text: '{"b":2}\r' },
        { input, record: 3, line: 4, text: '{"c":[1]}' },
      ]);
    },
  );

  it('one document over several lines is one document', async () => {
    const text = '{\n "a": 1\n}\n';
    expect(await read([bytes(text)])).toEqual([{ input, line: 1, text: '{\n "a": 1\n}' }]);
  });

  it('one document on one line has no number', async () => {
    expect(await read([bytes('{"a":1}\n')])).toEqual([{ input, line: 1, text: '{"a":1}' }]);
  });

  it('lines before the document count', async () => {
    expect(await read([bytes('\n\n{\n}')])).toEqual([{ input, line: 3, text: '{\n}' }]);
  });

  it('a byte order mark is not part of the text', async () => {
    expect(await read([bytes('\uFEFF{"a":1}')])).toEqual([{ input, line: 1, text: '{"a":1}' }]);
  });

  it('nothing is one empty document, which no reader accepts', async () => {
    expect(await read([])).toEqual([{ input, line: 1, text: '' }]);
  });

  it('bytes that are not UTF-8 give an issue', async () => {
    const [found] = await read([Uint8Array.of(0x7b, 0xe9, 0x7d)]);
    expect(found?.issue).toMatchObject({ code: 'undeclared-encoding', severity: 'error' });
  });

  it.each([
    ['on one line', `{"a":"${'x'.repeat(100)}"}`],
    ['over several lines', `{\n${'"a":1,\n'.repeat(20)}}`],
  ])('a document above the limit gives an issue, %s', async (_, text) => {
    const [found] = await read(pieces(text, 10), 60);
    expect(found?.issue).toMatchObject({ code: 'too-large', severity: 'error' });
  });
});
