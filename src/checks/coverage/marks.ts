import { isUnconfirmed } from '../../kinds/facets/base.ts';
import type { Side } from '../../model/primitive.ts';
import type { Statement } from '../../model/statement.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import { coversSide, type OneSide, oneSides } from '../places/sides.ts';
import { type CoveragePlace, emptyMarks, type MarkMap, markAt } from './places.ts';

/** Where the exam says something: as covered, or as not done with a reason. */
export interface Marks {
  readonly covered: MarkMap;
  readonly documented: MarkMap;
  /** As in an earlier exam, and not looked at again. */
  readonly carried: MarkMap;
}

/** Marks while they are made. */
export interface Marker extends Marks {
  readonly catalogue: Catalogue;
}

/** A method that takes in another: who looks with a loupe has looked. Common practice, no source. */
const takesIn: ReadonlyMap<string, string> = new Map([
  ['inspection-magnified', 'inspection'],
  ['bimanual-palpation', 'palpation'],
  ['pneumatic-otoscopy', 'otoscopy'],
]);

/** Marks that hold nothing yet. */
export function marker(catalogue: Catalogue): Marker {
  return { catalogue, covered: emptyMarks(), documented: emptyMarks(), carried: emptyMarks() };
}

/** A test covers itself, and at its region the methods that the region takes; gives the sides it speaks of. */
export function coverTest(
  marker: Marker,
  test: Extract<Statement, { readonly test: string }>,
  result: string,
  methods: readonly string[],
): readonly Sided[] {
  const row = marker.catalogue.testPoints.get(test.test);
  const sides = sidesOf(test.side, row?.laterality === 'paired');
  const tested = marker.catalogue.testResults.get(result)?.untested !== true;
  for (const side of sides) {
    const place: CoveragePlace = { kind: 'test', code: test.test, side };
    if (tested) cover(marker, place, test);
    else document(marker, place, test);
  }
  if (!tested || row === undefined) return [];
  const regionSides = row.laterality === 'paired' ? sides : sidesIn(marker, row.region, 'both');
  const taken = marker.catalogue.regions.get(row.region)?.methods ?? [];
  const used = methods.filter((method) => taken.includes(method));
  markMethods(marker, row.region, regionSides, test, used);
  return sides;
}

/** A few measures are recorded as a test or a score: misting of a mirror, a grade. */
export function coverAsMeasure(
  marker: Marker,
  statement: Statement,
  code: string,
  sides: readonly Sided[],
): void {
  const row = marker.catalogue.measures.get(code);
  if (row === undefined || (row.scale ?? row.test) !== code) return;
  for (const side of sides) cover(marker, { kind: 'measure', code: row.code, side }, statement);
}

/** A method used at a place covers that method there; the place itself is covered by a state or sign. */
export function markMethods(
  marker: Marker,
  region: string,
  sides: readonly Sided[],
  statement: Statement,
  methods: readonly string[],
  partial = false,
): void {
  for (const method of methods) {
    const also = takesIn.get(method);
    for (const side of sides) {
      cover(marker, { kind: 'method', code: region, side, detail: method }, statement, partial);
      if (also !== undefined) {
        cover(marker, { kind: 'method', code: region, side, detail: also }, statement, partial);
      }
    }
  }
}

/** The statement covers the place; what was taken over and not looked at again does not. */
export function cover(
  marker: Marker,
  place: CoveragePlace,
  statement: Statement,
  partial = false,
): void {
  if (isUnconfirmed(statement)) {
    noteKey(marker.carried, place, statement);
    return;
  }
  const mark = markAt(marker.covered, place);
  if (mark.keys.at(-1) !== statement.key) mark.keys.push(statement.key);
  // Whole beats part: what one statement left out another has covered.
  mark.partial &&= partial;
}

/** The exam says that the place was not examined or tested. */
export function document(marker: Marker, place: CoveragePlace, statement: Statement): void {
  const reached = isUnconfirmed(statement) ? marker.carried : marker.documented;
  noteKey(reached, place, statement);
}

function noteKey(marks: MarkMap, place: CoveragePlace, statement: Statement): void {
  const { keys } = markAt(marks, place);
  if (keys.at(-1) !== statement.key) keys.push(statement.key);
}

export type Sided = OneSide | undefined;

/** Sides of a region that a statement speaks of. */
export function sidesIn(marker: Marker, region: string, side: Side | undefined): readonly Sided[] {
  const laterality = marker.catalogue.regions.get(region)?.laterality;
  return sidesOf(side, laterality === 'paired' || laterality === 'crossing');
}

/** Sides that a statement speaks of; without a side it speaks of a pair only where there is none. */
export function sidesOf(side: Side | undefined, sided: boolean): readonly Sided[] {
  if (side === undefined) return sided ? [undefined] : [undefined, ...oneSides];
  if (side === 'midline') return [undefined];
  return [undefined, ...oneSides.filter((one) => coversSide(side, one))];
}
