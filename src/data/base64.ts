import { sha1 } from '@noble/hashes/legacy.js';

/** How many bytes a base64 text stands for; `undefined` where it is not base64. Spaces count as none. */
export function base64Length(text: string): number | undefined {
  const bare = /[ \t\r\n]/.test(text) ? text.replace(/[ \t\r\n]+/g, '') : text;
  if (bare.length % 4 !== 0 || !/^[A-Za-z0-9+/]*={0,2}$/.test(bare)) return undefined;
  const padding = bare.endsWith('==') ? 2 : bare.endsWith('=') ? 1 : 0;
  return (bare.length / 4) * 3 - padding;
}

/** The bytes of a base64 text that {@link base64Length} accepts. */
export function base64Bytes(text: string): Uint8Array {
  const letters = atob(text.replace(/[ \t\r\n]+/g, ''));
  return Uint8Array.from(letters, (letter) => letter.charCodeAt(0));
}

export function base64(bytes: Uint8Array): string {
  let characters = '';
  for (const byte of bytes) characters += String.fromCharCode(byte);
  return btoa(characters);
}

/**
 * SHA-1 as base64, which Attachment.hash is. It proves that data came over whole, not who made it.
 * Browsers offer a hash only asynchronously.
 * @see https://www.rfc-editor.org/rfc/rfc3174
 */
export function sha1Base64(bytes: Uint8Array): string {
  return base64(sha1(bytes));
}
