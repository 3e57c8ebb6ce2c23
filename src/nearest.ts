/**
 * The known name most like `name`, for "did you mean"; undefined when none is near. Distance is
 * Levenshtein's, near is at most a third of the length. Names over 60 characters are not compared.
 */
export function nearest(name: string, known: Iterable<string>): string | undefined {
  if (name.length > 60) return undefined;
  let best: string | undefined;
  let bestDistance = Math.max(1, Math.floor(name.length / 3)) + 1;
  for (const candidate of known) {
    if (Math.abs(candidate.length - name.length) >= bestDistance) continue;
    const distance = editDistance(name.toLowerCase(), candidate.toLowerCase());
    if (distance < bestDistance) {
      best = candidate;
      bestDistance = distance;
    }
  }
  return best;
}

function editDistance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const replace = (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(replace, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    row = next;
  }
  return row[b.length] ?? 0;
}
