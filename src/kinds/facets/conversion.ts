import type { Builder, Unkeyed } from '../../convert/build/built.ts';
import type { Mapping } from '../../convert/mapping/mapping.ts';
import type { Target } from '../../convert/mapping/target.ts';
import type { Issue } from '../../issues/issue.ts';
import type { Path } from '../../issues/path.ts';
import type { TableName } from '../../terminology/built-in.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { Laterality } from '../../terminology/types.ts';
import type { StatementBase } from './base.ts';

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
