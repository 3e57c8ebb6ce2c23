/** Bytes that may come out of an archive before its rate of growth is looked at. */
const FREE_BYTES = 8 * 1024 * 1024;
/** Text exports shrink to a tenth or a fiftieth; deflate itself cannot do better than 1032 to 1. */
const MOST_GROWTH = 300;

/** Thrown where an archive grows as no text does. */
export class TooMuchGrowth extends Error {
  readonly code = 'TOO_MUCH_GROWTH';
}

/**
 * The unpacked bytes, as long as they stay in proportion to what was read. Memory is flat either way;
 * the limit is for time and disk space.
 */
export async function* inflatedWithin(
  unpacked: AsyncIterable<Buffer>,
  taken: () => number,
): AsyncGenerator<Buffer> {
  let made = 0;
  for await (const piece of unpacked) {
    made += piece.length;
    if (made > FREE_BYTES && made > taken() * MOST_GROWTH) {
      throw new TooMuchGrowth('the archive grows beyond any text');
    }
    yield piece;
  }
}
