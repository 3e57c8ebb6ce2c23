/**
 * The known name most like `name`, for "did you mean"; undefined when none is near. Distance counts
 * letters put in, left out, changed or swapped with their neighbour; near is at most a third of the
 * length. Names over 60 characters are not compared.
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

/** Names for which one call looks for a near one: the search costs as much as all names together. */
const mostSuggestions = 20;

/** {@link nearest} for the first names of a call; later ones get no suggestion. */
export function firstNearest(): typeof nearest {
  let left = mostSuggestions;
  return (name, known) => {
    left -= 1;
    return left < 0 ? undefined : nearest(name, known);
  };
}

/** Letters put in, left out, changed or swapped between two words; undefined where they are more than `most`. */
export function distanceWithin(a: string, b: string, most: number): number | undefined {
  if (Math.abs(a.length - b.length) > most) return undefined;
  const distance = editDistance(a, b);
  return distance > most ? undefined : distance;
}

/** Optimal string alignment: Levenshtein's distance in which a swap of neighbours counts once. */
function editDistance(a: string, b: string): number {
  let before: number[] = [];
  let row = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const replace = (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      const swap = swapped ? (before[j - 2] ?? 0) + 1 : replace;
      next.push(Math.min(replace, swap, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    before = row;
    row = next;
  }
  return row[b.length] ?? 0;
}
