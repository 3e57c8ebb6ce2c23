import { sha1 } from '@noble/hashes/legacy.js';

/**
 * SHA-1 as base64, which Attachment.hash is. It proves that data came over whole, not who made it.
 * Browsers offer a hash only asynchronously.
 * @see https://www.rfc-editor.org/rfc/rfc3174
 */
export function sha1Base64(bytes: Uint8Array): string {
  return btoa(String.fromCharCode(...sha1(bytes)));
}
