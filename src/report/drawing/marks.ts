import { listIn } from '../../checks/exam-index.ts';
import type { Mark } from '../../kinds/facets/page.ts';
import { standingOf } from '../../kinds/registries/meanings.ts';
import { markOf } from '../../kinds/registries/pages.ts';
import type { Exam } from '../../model/exam.ts';
import type { Side } from '../../model/primitive.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import { isSensation } from './sensation.ts';
import type { Column } from './views.ts';

/** The strongest mark wins, so that a normal word never hides a sign or a limit. */
const strongestFirst: readonly Mark[] = ['sign', 'partial', 'not-examined', 'normal', 'said'];

/** Each mark has a sign of its own, so that none is told by colour alone. */
export const markSymbols: Readonly<Record<Mark, string>> = {
  sign: '!',
  partial: '½',
  'not-examined': '×',
  normal: '✓',
  said: '·',
  silent: '?',
};

export type MarkOf = (region: string, column: Column) => Mark;

/** Mark of every region and column that something was said about. */
export function marksOf(exam: Exam, catalogue: Catalogue): MarkOf {
  const marks = new Map<string, Mark>();
  for (const statement of exam.statements) {
    const { region, side } = standingOf(statement, catalogue);
    if (region === undefined) continue;
    // What was felt has a map of its own; here it says no more than that the place was spoken of.
    const mark = isSensation(statement, catalogue) ? 'said' : markOf(statement, catalogue);
    for (const column of columnsOf(region, side, catalogue)) {
      const key = `${region}/${column}`;
      const before = marks.get(key);
      if (before === undefined || rank(mark) < rank(before)) marks.set(key, mark);
    }
  }
  return (region, column) => marks.get(`${region}/${column}`) ?? leftOut(region, column);

  /**
   * Not examining a region leaves out what lies below it, in the columns that it can have; being normal
   * does not pass down.
   */
  function leftOut(region: string, column: Column): Mark {
    if (!canStandIn(region, column, catalogue)) return 'silent';
    let above = catalogue.regions.get(region)?.parent;
    // Four levels in our tables; the bound keeps a cycle in added regions from hanging.
    for (let level = 0; above !== undefined && level < 20; level++) {
      const given = marks.get(`${above}/${column}`) ?? marks.get(`${above}/middle`);
      if (given === 'not-examined') return given;
      above = catalogue.regions.get(above)?.parent;
    }
    return 'silent';
  }
}

/** Whether a region can have a side, or be without one, as a column has it. */
export function canStandIn(region: string, column: Column, catalogue: Catalogue): boolean {
  const laterality = catalogue.regions.get(region)?.laterality;
  if (laterality === 'crossing') return true;
  return (laterality === 'paired') === (column !== 'middle');
}

/** Numbers of signs by place, and those whose place no view shows. */
export interface PlacedNumbers {
  readonly at: (region: string, column: Column) => readonly number[];
  readonly elsewhere: readonly number[];
}

/** Puts each number at every place of its sign. */
export function placeNumbers(
  exam: Exam,
  catalogue: Catalogue,
  numbers: ReadonlyMap<string, number>,
  skip: ReadonlySet<number>,
): PlacedNumbers {
  const places = new Map<string, number[]>();
  const elsewhere: number[] = [];
  for (const statement of exam.statements) {
    const number = numbers.get(statement.key);
    if (number === undefined || skip.has(number)) continue;
    const { region, side } = standingOf(statement, catalogue);
    if (region === undefined || !catalogue.regions.has(region)) elsewhere.push(number);
    else {
      for (const column of columnsOf(region, side, catalogue)) {
        listIn(places, `${region}/${column}`).push(number);
      }
    }
  }
  return { at: (region, column) => places.get(`${region}/${column}`) ?? [], elsewhere };
}

function rank(mark: Mark): number {
  return strongestFirst.indexOf(mark);
}

/** Both sides of a region that crosses the midline are all of it. */
function columnsOf(
  region: string,
  side: Side | undefined,
  catalogue: Catalogue,
): readonly Column[] {
  const laterality = catalogue.regions.get(region)?.laterality;
  if (side === 'both') {
    return laterality === 'crossing' ? ['right', 'left', 'middle'] : ['right', 'left'];
  }
  return side === 'right' || side === 'left' ? [side] : ['middle'];
}
