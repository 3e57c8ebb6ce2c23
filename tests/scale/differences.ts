/** Where two lists begin to differ, and how long each is: the lists themselves are too long to be shown. */
export function firstDifference(
  found: readonly unknown[],
  expected: readonly unknown[],
): object | undefined {
  const longer = Math.max(found.length, expected.length);
  for (let at = 0; at < longer; at++) {
    const [one, other] = [JSON.stringify(found[at]), JSON.stringify(expected[at])];
    if (one === other) continue;
    return { at, found: one?.slice(0, 300), expected: other?.slice(0, 300) };
  }
  return undefined;
}
