import type { Key } from '../../model/primitive.ts';
import type { OneSide } from '../places/sides.ts';

export type PlaceKind = 'region' | 'method' | 'point' | 'test' | 'measure';

/** Something that a protocol can ask for, on one side or on none. */
export interface CoveragePlace {
  readonly kind: PlaceKind;
  /** Code of the region, point, test or measure. */
  readonly code: string;
  readonly side: OneSide | undefined;
  /** The method or modality. */
  readonly detail?: string | undefined;
}

/** What an exam says at one place. */
export interface CoverageMark {
  readonly side: OneSide | undefined;
  readonly detail: string | undefined;
  readonly keys: Key[];
  partial: boolean;
}

/** Marks by kind and code: the few of one code are searched, which is quicker than a joined name. */
export type MarkMap = { readonly [Kind in PlaceKind]: Map<string, CoverageMark[]> };

export function emptyMarks(): MarkMap {
  return {
    region: new Map(),
    method: new Map(),
    point: new Map(),
    test: new Map(),
    measure: new Map(),
  };
}

export function findMark(marks: MarkMap, place: CoveragePlace): CoverageMark | undefined {
  return marks[place.kind].get(place.code)?.find((mark) => isAt(mark, place));
}

/** The mark of a place, made where there is none. */
export function markAt(marks: MarkMap, place: CoveragePlace): CoverageMark {
  const known = marks[place.kind].get(place.code);
  const found = known?.find((mark) => isAt(mark, place));
  if (found !== undefined) return found;
  const made: CoverageMark = { side: place.side, detail: place.detail, keys: [], partial: true };
  if (known === undefined) marks[place.kind].set(place.code, [made]);
  else known.push(made);
  return made;
}

function isAt(mark: CoverageMark, place: CoveragePlace): boolean {
  return mark.side === place.side && mark.detail === place.detail;
}
