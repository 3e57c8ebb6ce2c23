import type {
  MeasureTypes,
  MethodCode,
  RegionCode,
  RegionGroupTypes,
  RegionTypes,
} from '../../terminology/tables/code-types.ts';
import type { Laterality } from '../../terminology/types.ts';
import type { Side, Text } from '../primitive.ts';

declare const addedCode: unique symbol;

/** A code that an adopter added to the catalogue. The compiler cannot check it; `finishExam` does. */
export type AddedCode = string & { readonly [addedCode]: true };

/**
 * Marks a code as one of your own catalogue, so that the builder takes it.
 *
 * @param code A code of a row given to `createCatalogue`.
 * @returns The same text.
 * @example
 * draft = present(draft, added('sun-mark'), { region: 'temple', side: 'right' });
 */
export function added(code: string): AddedCode {
  return code as AddedCode; // the brand exists for the compiler only
}

interface SidesOf {
  paired: { readonly side: 'right' | 'left' | 'both' };
  crossing: { readonly side: Side };
  midline: { readonly side?: 'midline' | 'right-of-midline' | 'left-of-midline' };
  whole: { readonly side?: Side };
}

/** The side that a place divided in this way takes, required where it must be said. */
export type Sided<L extends Laterality> = SidesOf[L];

/** A region of the tables, or one of an adopter. */
export type GivenRegion = RegionCode | AddedCode;

type SideAt<R> = R extends keyof RegionTypes
  ? Sided<RegionTypes[R]['laterality']>
  : R extends keyof RegionGroupTypes
    ? Sided<RegionGroupTypes[R]['laterality']>
    : { readonly side?: Side };

type MethodAt<R> = R extends keyof RegionTypes
  ? RegionTypes[R]['method']
  : R extends AddedCode
    ? string
    : MethodCode;

type MethodsAt<R> = readonly [MethodAt<R>, ...MethodAt<R>[]];

/**
 * Where something is, at one region: its side where it is paired, and the methods used there. The
 * side is no part of what tells the regions apart, so that an editor offers all of them before a
 * side is written.
 */
export type PlaceAt<R> = {
  readonly region: R;
  readonly methods?: MethodsAt<R>;
  readonly place?: Text;
} & SideAt<R>;

/** A place at one region with at least one method, as normal and abnormal need. */
export type ExaminedAt<R> = PlaceAt<R> & { readonly methods: MethodsAt<R> };

type EachOf<R> = R extends unknown ? PlaceAt<R> : never;

/**
 * Where something is: any region of the tables, its side and the methods used there. For a paired
 * region the side is required, and a method that the region does not take is an error of the
 * compiler. A place of strings known only at run time is for {@link entered}.
 */
export type Place = EachOf<RegionCode>;

/** A place with at least one method, as normal and abnormal need. */
export type ExaminedPlace = Place & { readonly methods: readonly [string, ...string[]] };

/**
 * Where a measure is taken: in its usual place, with a side where the measure has one, or anywhere
 * else. The distance between the eyes has no side, the travel of the jaw to the right has one.
 */
export type MeasurePlace<M extends keyof MeasureTypes, R> = {
  readonly region: R;
  readonly methods?: R extends MeasureTypes[M]['region']
    ? readonly [MethodCode, ...MethodCode[]]
    : MethodsAt<R>;
  readonly place?: Text;
} & (R extends MeasureTypes[M]['region'] ? Sided<MeasureTypes[M]['laterality']> : SideAt<R>);

/** The side that something divided in this way takes. */
export type Sides<L extends { readonly laterality: Laterality }> = Sided<L['laterality']>;
