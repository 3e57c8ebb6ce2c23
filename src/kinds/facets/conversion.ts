import type { Builder, Unkeyed } from '../../convert/build/built.ts';
import { issue } from '../../convert/issue.ts';
import type { Mapping } from '../../convert/mapping/mapping.ts';
import type { Target } from '../../convert/mapping/target.ts';
import type { Issue } from '../../issues/issue.ts';
import type { Path } from '../../issues/path.ts';
import { isWithin } from '../../model/rules/places.ts';
import type { TableName } from '../../terminology/built-in.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import { lateralitySides } from '../../terminology/sides.ts';
import type { Laterality } from '../../terminology/types.ts';
import type { ExceptedPlace, StatementBase } from './base.ts';

/** A code that a target names, with its table and the property in which it stands. */
export type CodeUse = readonly [table: TableName, code: string | undefined, property: string];

/** What a record can say about a value besides the target itself. */
export interface Supplied {
  readonly side: boolean;
  readonly region: boolean;
  readonly method: boolean;
  readonly modality: boolean;
}

export interface Prepared {
  readonly supplied: Supplied;
  readonly catalogue: Catalogue;
  readonly mapping: Mapping;
}

/** How a target of a mapping is checked and read: in the facet `convert.ts`, listed in `conversions.ts`. */
export interface TargetConversion<T extends Target> {
  /** Codes of its own, besides region, methods and modality. */
  codes(target: T): readonly CodeUse[];
  /** Region of the point, test, measure or scale, where no other is named. */
  home?(target: T, catalogue: Catalogue): string | undefined;
  /** How its place is divided. Default: as the region that the target names. */
  laterality?(target: T, catalogue: Catalogue): Laterality | undefined;
  /** The side can be left open although its place has sides. */
  readonly sideOpen?: true;
  /** What stands open must be said by the mapping or the record. */
  readonly needs?: 'region' | 'modality';
  /** Values with conditions of their own: under which light, with which denture. */
  readonly conditions?: true;
  /** Text kept as it is: no word has a meaning, and nothing in it counts as damaged. */
  readonly verbatim?: true;
  /** Meanings that a word of it can have, besides those of all fields. */
  meanings(target: T, catalogue: Catalogue): readonly string[];
  /** States with a reason that it can tell. */
  readonly states: readonly ('not-examined' | 'not-applicable' | 'partial')[];
  /** What else can be wrong with it. */
  issues?(target: T, path: Path, prepared: Prepared): readonly Issue[];
  readonly build: Builder<T>;
}

/** How statements of a kind that were read become part of an exam. */
export interface StatementConversion<S extends StatementBase> {
  /** What it is about, besides kind, side and time: the start of its key. */
  about(statement: Omit<S, 'key'>): readonly string[];
  /** It stands by itself, however often it is said. */
  readonly repeats?: true;
  /** Different values at one place can all hold: several readings of one measure. */
  readonly several?: true;
  /** It can be of the finding of its group. */
  readonly ofFinding?: true;
  /** One statement of two at one place, where they complete each other. */
  join?(first: Omit<S, 'key'>, second: Omit<S, 'key'>): Unkeyed | undefined;
}

/** Untested, and why. */
export const notDone = ['not-examined', 'not-applicable'] as const;

/**
 * Exceptions of a target that no statement could have: places that there are not, that do not lie
 * within the region of the target, or without the side that they need.
 */
export function exceptionIssues(
  target: { readonly region?: string; readonly except?: readonly ExceptedPlace[] },
  path: Path,
  { catalogue }: Pick<Prepared, 'catalogue'>,
): readonly Issue[] {
  return (target.except ?? []).flatMap(({ region, side }, at): readonly Issue[] => {
    const here = [...path, 'except', at];
    const row = catalogue.regions.get(region);
    const { region: whole } = target;
    const isMember =
      row !== undefined &&
      whole !== undefined &&
      region !== whole &&
      isWithin(region, whole, catalogue);
    if (!isMember)
      return [issue('unknown-region', [...here, 'region'], { reason: 'not-a-member' })];
    const { sides, required } = lateralitySides[row.laterality];
    if (side === undefined ? !required : sides.includes(side)) return [];
    return side === undefined
      ? [issue('missing-side', [...here, 'side'], { reason: 'target', codes: sides })]
      : [issue('impossible-side', [...here, 'side'], { reason: 'place', codes: sides })];
  });
}
