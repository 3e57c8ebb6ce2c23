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
