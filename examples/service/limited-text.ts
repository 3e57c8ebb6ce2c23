/** The text of a stream of bytes; undefined as soon as it has more bytes than the limit. */
export async function limitedText(
  stream: AsyncIterable<Uint8Array>,
  limit: number,
): Promise<string | undefined> {
  const chunks: Uint8Array[] = [];
  let size = 0;
  for await (const chunk of stream) {
    size += chunk.byteLength;
    if (size > limit) return undefined;
    chunks.push(chunk);
  }
  // Throws on bytes that are not UTF-8: replaced characters would change what was said.
  return new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat(chunks));
}
