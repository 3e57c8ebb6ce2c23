import type { TableName } from './built-in.ts';
import type { Catalogue } from './catalogue.ts';
import { lateralitySides, type SideCode, sideText } from './sides.ts';
import type { Laterality, Value } from './types.ts';

/** A code of one of our code systems as it stands in FHIR: a row, a value in it, or one of its sides. */
export interface ExportedCode {
  readonly code: string;
  readonly display: string;
  /** Code of the row that it belongs to; the same as `code` for the row itself. */
  readonly row: string;
  readonly value?: Value;
  readonly side?: SideCode;
}

/** Every code that a table can give, in the order of the table: each row, then its values or sides. */
export function exportedCodes(catalogue: Catalogue, table: TableName): ExportedCode[] {
  const sides = table === 'regions' ? regionSides(catalogue) : undefined;
  return [...catalogue[table].values()].flatMap((row) => [
    { code: row.code, display: row.display, row: row.code },
    ...valuesOf(row).map((value) => ({
      code: `${row.code}.${value.code}`,
      display: value.display,
      row: row.code,
      value,
    })),
    ...[...(sides?.get(row.code) ?? [])].map((side) => ({
      code: `${row.code}.${side}`,
      display: `${row.display}, ${sideText[side]}`,
      row: row.code,
      side,
    })),
  ]);
}

/** Values of an attribute, condition or measure, grades and items of a scale. */
function valuesOf(row: object): readonly Value[] {
  const lists: { readonly [Name in 'values' | 'grades' | 'items']?: readonly Value[] } = row;
  return [...(lists.values ?? []), ...(lists.grades ?? []), ...(lists.items ?? [])];
}

/**
 * Sides that a statement about each region can have: those of the region, and of the points, tests,
 * measures and scales whose place it is. The travel of the jaw has sides although the jaw has none.
 */
function regionSides(catalogue: Catalogue): Map<string, Set<SideCode>> {
  const sides = new Map<string, Set<SideCode>>();
  const add = (region: string, more: readonly SideCode[]): void => {
    const known = sides.get(region) ?? new Set();
    for (const side of more) known.add(side);
    sides.set(region, known);
  };
  const addAll = (region: string, laterality: Laterality): void =>
    add(region, lateralitySides[laterality].sides);
  for (const { code, laterality } of catalogue.regions.values()) addAll(code, laterality);
  for (const { region, laterality, group } of catalogue.testPoints.values()) {
    addAll(region, laterality);
    // Both sides of a point of sensation are compared with each other.
    if (group === 'sensation') add(region, ['both']);
  }
  for (const { region, laterality } of catalogue.measures.values()) addAll(region, laterality);
  for (const { region, laterality } of catalogue.scales.values()) addAll(region, laterality);
  return sides;
}
