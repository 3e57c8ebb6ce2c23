import type { Statement } from '../../model/statement.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';

type NameOf<T> = T extends unknown ? keyof T : never;
type ValueOf<T, Name> = T extends unknown ? (Name extends keyof T ? T[Name] : never) : never;

/**
 * Properties that a statement is to have, with these values: `{ finding: 'naevus', region: 'temple' }`.
 * A property that is not named may have any value. Of a list, the entries named must be among its own.
 * A side `right` or `left` is met by `both` as well.
 */
export type StatementPattern = {
  readonly [Name in NameOf<Statement>]?: ValueOf<Statement, Name>;
};

/** Names of the properties of the pattern that the statement does not meet. */
export function unmet(pattern: StatementPattern, statement: Statement): string[] {
  return Object.entries(pattern)
    .filter(([, wanted]) => wanted !== undefined)
    .filter(([name, wanted]) => {
      const value: unknown = Object.getOwnPropertyDescriptor(statement, name)?.value;
      return name === 'side' ? !sideMeets(wanted, value) : !meets(wanted, value);
    })
    .map(([name]) => name);
}

function sideMeets(wanted: unknown, value: unknown): boolean {
  return value === wanted || (value === 'both' && (wanted === 'right' || wanted === 'left'));
}

function meets(wanted: unknown, value: unknown): boolean {
  if (Array.isArray(wanted)) {
    return Array.isArray(value) && wanted.every((entry) => value.some((own) => meets(entry, own)));
  }
  if (typeof wanted !== 'object' || wanted === null) return wanted === value;
  if (typeof value !== 'object' || value === null) return false;
  return Object.entries(wanted).every(
    ([name, inner]) =>
      Object.hasOwn(value, name) &&
      meets(inner, Object.getOwnPropertyDescriptor(value, name)?.value),
  );
}

/** The region and all that lie in it. */
export function regionAndParts(region: string, catalogue: Catalogue): ReadonlySet<string> {
  const found = new Set([region]);
  // A set walks over what is added to it on the way.
  for (const above of found) {
    for (const { code, parent } of catalogue.regions.values())
      if (parent === above) found.add(code);
  }
  return found;
}

/** The pattern as the test wrote it: `finding naevus, side right`. */
export function patternText(pattern: StatementPattern): string {
  return Object.entries(pattern)
    .filter(([, wanted]) => wanted !== undefined)
    .map(
      ([name, wanted]) => `${name} ${typeof wanted === 'string' ? wanted : JSON.stringify(wanted)}`,
    )
    .join(', ');
}
