import { spend } from '../../issues/budget.ts';

/**
 * Whether a value is what is expected: of an object the properties that are named, of a list every member
 * in its order, anything else as it is.
 */
export function matches(value: unknown, expected: unknown): boolean {
  if (Array.isArray(expected)) {
    return (
      Array.isArray(value) &&
      value.length === expected.length &&
      expected.every((one, at) => matches(value[at], one))
    );
  }
  if (typeof expected !== 'object' || expected === null) return value === expected;
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return false;
  const properties = new Map<string, unknown>(Object.entries(value));
  return Object.entries(expected).every(
    ([name, one]) => properties.has(name) && matches(properties.get(name), one),
  );
}

/**
 * Expected parts for which no value is left when each value serves one of them. Where several values
 * serve one part, the assignment that leaves fewest parts without one is found.
 */
export function unmatched<Value>(
  values: readonly Value[],
  expected: readonly unknown[],
): { readonly missing: readonly unknown[]; readonly more: readonly Value[] } {
  const takenBy = new Map<number, number>();
  const assign = (part: number, tried: Set<number>): boolean => {
    spend(values.length);
    for (const [at, value] of values.entries()) {
      if (tried.has(at) || !matches(value, expected[part])) continue;
      tried.add(at);
      const other = takenBy.get(at);
      if (other === undefined || assign(other, tried)) {
        takenBy.set(at, part);
        return true;
      }
    }
    return false;
  };
  const missing = expected.filter((_, part) => !assign(part, new Set()));
  return { missing, more: values.filter((_, at) => !takenBy.has(at)) };
}
