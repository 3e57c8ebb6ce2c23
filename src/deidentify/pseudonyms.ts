import { hmac } from '@noble/hashes/hmac.js';
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';

/** Names that stand in place of others: the same for the same name, and not to be led back without the secret. */
export interface Pseudonyms {
  /** 128 bits as 32 hexadecimal digits. `kind` keeps apart what has the same name in two kinds. */
  readonly of: (kind: string, name: string) => string;
  /** A whole number from 0 to 4294967295. */
  readonly number: (kind: string, name: string) => number;
}

/** @see https://www.rfc-editor.org/rfc/rfc2104 HMAC, here with SHA-256 */
export function pseudonymsOf(secret: string): Pseudonyms {
  const encoder = new TextEncoder();
  const key = encoder.encode(secret);
  // As JSON, so that no two pairs of kind and name make one text.
  const digest = (kind: string, name: string): Uint8Array =>
    hmac(sha256, key, encoder.encode(JSON.stringify([kind, name])));
  return {
    of: (kind, name) => bytesToHex(digest(kind, name).subarray(0, 16)),
    number: (kind, name) => {
      const bytes = digest(kind, name);
      return new DataView(bytes.buffer, bytes.byteOffset).getUint32(0);
    },
  };
}
