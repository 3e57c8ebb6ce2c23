import type { Code, DateTime, Side, Text } from '../../model/primitive.ts';
import type { TableName } from '../../terminology/built-in.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { Laterality } from '../../terminology/types.ts';
import type { ExceptedPlace, StatementBase } from './base.ts';

/** A code and the table of the catalogue in which it stands. */
export interface Coded {
  readonly table: TableName;
  readonly code: Code;
}

/** Where a statement stands. */
export interface Standing {
  /** The region named, or that of the point or test; undefined where the exam as a whole is meant. */
  readonly region: Code | undefined;
  readonly side: Side | undefined;
  /** Where within the region, in the examiner's words. */
  readonly place?: Text | undefined;
  /** Part of the body under which it is told; undefined where nothing says it. */
  readonly section: Code | undefined;
  /** How that place is divided, which decides the sides it can have; undefined where it is not known. */
  readonly laterality: Laterality | undefined;
  /** False where a place that has sides can be meant as such: a complaint, a note. */
  readonly needsSide: boolean;
}

/**
 * What is said of a thing: it is there (a sign, a complaint, something abnormal at a region or test,
 * a value), it is not there, it was looked for and left open, or nothing was found out.
 */
export type Polarity = 'states' | 'denies' | 'open' | 'none';

/** What a statement says of one thing, before its place and time. A sensation says one for each modality. */
export interface Said {
  readonly polarity: Polarity;
  /** The sign, region, point, test, measure, scale, complaint or item that it is said of. */
  readonly of: Coded;
  /** The modality, where the thing is examined by several. */
  readonly aspect?: Coded | undefined;
  /** The thing itself is the usual appearance: pupils equal, voice clear. */
  readonly usual?: boolean | undefined;
  readonly methods?: readonly Code[] | undefined;
  /** Places below that of the statement of which it is not said. */
  readonly except?: readonly ExceptedPlace[] | undefined;
  /** How much of the place was examined. Default: `none` with the polarity `none`, else `whole`. */
  readonly completeness?: 'whole' | 'part' | 'none';
}

/** The same with place and time: all that rules, coverage, comparison, export and report may rest on. */
export interface Saying extends Said {
  /** Region and side; none where the exam as a whole is meant. */
  readonly at: readonly { readonly region: Code; readonly side: Side | undefined }[];
  readonly methods: readonly Code[];
  readonly except: readonly ExceptedPlace[];
  readonly completeness: 'whole' | 'part' | 'none';
  /** When it was seen, where that is not the time of the exam. */
  readonly seen: DateTime | undefined;
  /** Taken over from an earlier exam. */
  readonly carried: boolean;
  /** Taken over and not looked at again: not known today. */
  readonly unconfirmed: boolean;
}

/** What a kind of statement means: facet of its `statement.ts`, listed in `meanings.ts`. */
export interface Meaning<S extends StatementBase> {
  /** What the statement is about, without its answer. */
  subject(statement: S): Coded;
  standing(statement: S, catalogue: Catalogue): Standing;
  said(statement: S, catalogue: Catalogue): readonly Said[];
}

/** The standing of what names its region itself. */
export function atRegion(
  { region, side, place }: Pick<Partial<Standing>, 'region' | 'side' | 'place'>,
  catalogue: Catalogue,
  needsSide = true,
): Standing {
  const row = region === undefined ? undefined : catalogue.regions.get(region);
  return { region, side, place, section: row?.section, laterality: row?.laterality, needsSide };
}

/** The standing of what is done at a test point, whose row says region and sides. */
export function atTestPoint(point: Code, side: Side | undefined, catalogue: Catalogue): Standing {
  const row = catalogue.testPoints.get(point);
  return {
    region: row?.region,
    side,
    section: row?.section,
    laterality: row?.laterality,
    needsSide: true,
  };
}

/** What a result says: the usual one denies a deviation, another states it, an untested one nothing. */
export function resultPolarity(
  row: { readonly usual?: boolean; readonly untested?: boolean } | undefined,
): Polarity {
  if (row?.untested === true) return 'none';
  return row?.usual === true ? 'denies' : 'states';
}
