import { LOINC, SNOMED } from '../../fhir/names/systems.ts';
import type { TableName } from '../../terminology/built-in.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { Mapping } from '../../terminology/types.ts';
import { type Element, innersOf, peek, textOf } from '../bundle/element.ts';

/** Codes of a table by the codes of other systems that mean the same. */
export interface Meanings {
  /** The one row that a coding of the concept is equivalent to; undefined when there are several. */
  rowOf(table: TableName, concept: Element): string | undefined;
  /** The same for one code. */
  rowOfCode(table: TableName, system: string, code: string): string | undefined;
  /** Claims the codings that are equivalent to a row, which stands in their place. */
  claimFor(table: TableName, concept: Element, row: string): void;
}

/** Only equivalent codes count: a wider or related one would say something else. */
export function createMeanings(catalogue: Catalogue): Meanings {
  const indexes = new Map<TableName, Index>();
  const indexOf = (table: TableName): Index => {
    const index = indexes.get(table) ?? indexed(catalogue, table);
    indexes.set(table, index);
    return index;
  };
  const meant = (table: TableName, coding: Element): readonly string[] => {
    const system = peek(coding, 'system');
    const code = peek(coding, 'code');
    if (typeof system !== 'string' || typeof code !== 'string') return [];
    return indexOf(table).get(`${system}|${code}`) ?? [];
  };
  return {
    rowOf: (table, concept) => {
      const found = new Set(innersOf(concept, 'coding').flatMap((coding) => meant(table, coding)));
      const [row] = found;
      return found.size === 1 ? row : undefined;
    },
    rowOfCode: (table, system, code) => {
      const found = indexOf(table).get(`${system}|${code}`) ?? [];
      return found.length === 1 ? found[0] : undefined;
    },
    claimFor: (table, concept, row) => {
      for (const coding of innersOf(concept, 'coding')) {
        if (!meant(table, coding).includes(row)) continue;
        for (const name of ['system', 'code', 'display']) textOf(coding, name);
      }
    },
  };
}

type Index = ReadonlyMap<string, readonly string[]>;

function indexed(catalogue: Catalogue, table: TableName): Index {
  const rows: Iterable<Mapped> = catalogue[table].values();
  const index = new Map<string, string[]>();
  for (const { code, maps = [] } of rows) {
    for (const { system, code: other } of maps.filter(
      ({ relation }) => relation === 'equivalent',
    )) {
      const name = `${system === 'loinc' ? LOINC : SNOMED}|${other}`;
      index.set(name, [...(index.get(name) ?? []), code]);
    }
  }
  return index;
}

interface Mapped {
  readonly code: string;
  readonly maps?: readonly Mapping[];
}
