import type {
  MeasureTypes,
  MethodCode,
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

type KnownPlace = {
  [R in keyof RegionTypes]: {
    readonly region: R;
    readonly methods?: readonly [RegionTypes[R]['method'], ...RegionTypes[R]['method'][]];
    readonly place?: Text;
  } & Sided<RegionTypes[R]['laterality']>;
}[keyof RegionTypes];

/** A group such as `neck`, to say something of all that lies in it. */
type GroupPlace = {
  [R in keyof RegionGroupTypes]: {
    readonly region: R;
    readonly methods?: readonly [MethodCode, ...MethodCode[]];
    readonly place?: Text;
  } & Sided<RegionGroupTypes[R]['laterality']>;
}[keyof RegionGroupTypes];

/** A region of an adopter. */
interface AddedPlace {
  readonly region: AddedCode;
  readonly side?: Side;
  readonly methods?: readonly [string, ...string[]];
  readonly place?: Text;
}

/**
 * Where something is: region, side and the methods used there. For a paired region the side is
 * required, and a method that the region does not take is an error of the compiler.
 */
export type Place = KnownPlace | GroupPlace | AddedPlace;

/** A place with at least one method, as normal and abnormal need. */
export type ExaminedPlace = Place & { readonly methods: readonly [string, ...string[]] };

/**
 * Where a measure is taken: in its usual place, with a side where the measure has one, or anywhere
 * else. The distance between the eyes has no side, the travel of the jaw to the right has one.
 */
export type MeasurePlace<M extends keyof MeasureTypes> =
  | ({
      readonly region: MeasureTypes[M]['region'];
      readonly methods?: readonly [MethodCode, ...MethodCode[]];
      readonly place?: Text;
    } & Sided<MeasureTypes[M]['laterality']>)
  | Exclude<Place, { readonly region: MeasureTypes[M]['region'] }>;

/** The side that something divided in this way takes. */
export type Sides<L extends { readonly laterality: Laterality }> = Sided<L['laterality']>;
