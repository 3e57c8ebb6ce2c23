/**
 * SHA-1 as base64, which Attachment.hash is. It proves that data came over whole, not who made it.
 * Browsers offer a hash only asynchronously, so it is worked out here.
 * @see https://www.rfc-editor.org/rfc/rfc3174
 */
export function sha1Base64(bytes: Uint8Array): string {
  const padded = pad(bytes);
  const view = new DataView(padded.buffer);
  const state = [0x67452301, 0xefcdab89, 0x98badcfe, 0x10325476, 0xc3d2e1f0];
  const words = new Int32Array(80);
  for (let at = 0; at < padded.length; at += 64) addBlock(state, words, view, at);
  const digest = new DataView(new ArrayBuffer(20));
  state.forEach((word, at) => {
    digest.setInt32(at * 4, word);
  });
  return btoa(String.fromCharCode(...new Uint8Array(digest.buffer)));
}

/** A one bit, zeros, and the length in bits, to whole blocks of 64 bytes. */
function pad(bytes: Uint8Array): Uint8Array<ArrayBuffer> {
  const padded = new Uint8Array(Math.ceil((bytes.length + 9) / 64) * 64);
  padded.set(bytes);
  padded[bytes.length] = 0x80;
  const view = new DataView(padded.buffer);
  view.setUint32(padded.length - 8, Math.floor(bytes.length / 0x20000000));
  view.setUint32(padded.length - 4, bytes.length * 8);
  return padded;
}

function addBlock(state: number[], words: Int32Array, view: DataView, start: number): void {
  for (let at = 0; at < 80; at++) {
    words[at] =
      at < 16
        ? view.getInt32(start + at * 4)
        : turn(
            word(words, at - 3) ^ word(words, at - 8) ^ word(words, at - 14) ^ word(words, at - 16),
            1,
          );
  }
  let [a = 0, b = 0, c = 0, d = 0, e = 0] = state;
  for (let at = 0; at < 80; at++) {
    const next = (turn(a, 5) + mix(at, b, c, d) + e + word(words, at)) | 0;
    e = d;
    d = c;
    c = turn(b, 30);
    b = a;
    a = next;
  }
  [a, b, c, d, e].forEach((value, at) => {
    state[at] = ((state[at] ?? 0) + value) | 0;
  });
}

function word(words: Int32Array, at: number): number {
  return words[at] ?? 0;
}

function turn(value: number, by: number): number {
  return (value << by) | (value >>> (32 - by));
}

function mix(round: number, b: number, c: number, d: number): number {
  if (round < 20) return ((b & c) | (~b & d)) + 0x5a827999;
  if (round < 40) return (b ^ c ^ d) + 0x6ed9eba1;
  if (round < 60) return ((b & c) | (b & d) | (c & d)) + 0x8f1bbcdc;
  return (b ^ c ^ d) + 0xca62c1d6;
}
