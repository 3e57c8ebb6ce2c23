import { issue } from '../../issues/issue.ts';
import type { Key } from '../../model/primitive.ts';
import type { ItemEntry } from '../exam/circumstances.ts';
import { partNameOf, type Reading } from '../reading.ts';
import type { Entry } from './entries.ts';

/** The resources of the bundle that are parts of the exam. */
export interface Parts {
  /** By the name of the part; a person can have two resources of one name, and then the first counts. */
  readonly byName: ReadonlyMap<string, Entry>;
  /** Statements by key, in the order of the entries. */
  readonly statements: ReadonlyMap<Key, Entry>;
  readonly items: readonly ItemEntry[];
}

/** Finds the parts among `all` by their identifiers. Two observations of one name are an error: only one is read. */
export function findParts(reading: Reading, all: readonly Entry[]): Parts {
  const byName = new Map<string, Entry>();
  const statements = new Map<Key, Entry>();
  const items: ItemEntry[] = [];
  for (const entry of all) {
    const name = partNameOf(reading, entry.resource);
    if (name === undefined) continue;
    if (byName.has(name)) {
      if (entry.type === 'Observation') reportDouble(reading, entry);
      continue;
    }
    byName.set(name, entry);
    if (entry.type !== 'Observation') continue;
    const bar = name.indexOf('|');
    if (bar === -1) statements.set(name, entry);
    else items.push({ item: name.slice(0, bar), at: Number(name.slice(bar + 1)), entry });
  }
  return { byName, statements, items };
}

function reportDouble(reading: Reading, { resource, path: own }: Entry): void {
  const path = [...own, 'identifier'];
  reading.issues.push(issue('duplicate-key', path, { reason: 'identifier' }));
  reading.reasons.set(resource.json, 'another observation has the same identifier and was read');
}
