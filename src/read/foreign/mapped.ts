import { LOINC, SNOMED } from '../../fhir/systems.ts';
import type { TableName } from '../../terminology/built-in.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { Mapping } from '../../terminology/types.ts';
import { type Element, innersOf, peek, textOf } from '../element.ts';

/** Codes of a table by the codes of other systems that mean the same. */
export interface Meanings {
  /** The one row that a coding of the concept is equivalent to; undefined when there are several. */
  rowOf(table: TableName, concept: Element): string | undefined;
  /** Claims the codings that are equivalent to a row, which stands in their place. */
  claimFor(table: TableName, concept: Element, row: string): void;
}

/** Only equivalent codes count: a wider or related one would say something else. */
export function createMeanings(catalogue: Catalogue): Meanings {
  const indexes = new Map<TableName, Map<string, string[]>>();
  const indexOf = (table: TableName): Map<string, string[]> => {
    const known = indexes.get(table);
    if (known !== undefined) return known;
    const index = new Map<string, string[]>();
    for (const { code, maps } of rowsOf(catalogue, table)) {
      for (const { system, code: other, relation } of maps ?? []) {
        if (relation !== 'equivalent') continue;
        const name = `${system === 'loinc' ? LOINC : SNOMED}|${other}`;
        const codes = index.get(name);
        if (codes === undefined) index.set(name, [code]);
        else codes.push(code);
      }
    }
    indexes.set(table, index);
    return index;
  };
  const meant = (table: TableName, coding: Element): readonly string[] =>
    indexOf(table).get(`${peek(coding, 'system')}|${peek(coding, 'code')}`) ?? [];
  return {
    rowOf: (table, concept) => {
      const found = new Set(innersOf(concept, 'coding').flatMap((coding) => meant(table, coding)));
      const [row] = found;
      return found.size === 1 ? row : undefined;
    },
    claimFor: (table, concept, row) => {
      for (const coding of innersOf(concept, 'coding')) {
        if (!meant(table, coding).includes(row)) continue;
        for (const name of ['system', 'code', 'display']) textOf(coding, name);
      }
    },
  };
}

function rowsOf(
  catalogue: Catalogue,
  table: TableName,
): Iterable<{ readonly code: string; readonly maps?: readonly Mapping[] }> {
  return catalogue[table].values();
}
