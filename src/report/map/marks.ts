import { isUnconfirmed } from '../../kinds/facets/base.ts';
import type { Mark } from '../../kinds/facets/page.ts';
import { standingOf } from '../../kinds/registries/meanings.ts';
import { markOf } from '../../kinds/registries/pages.ts';
import type { Exam } from '../../model/exam.ts';
import type { Side } from '../../model/primitive.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';

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

/** Columns of the map: a side of the patient, or the middle and places without a side. */
export type Column = 'right' | 'left' | 'middle';

/** Mark of every region and column that something was said about. */
export function marksOf(
  exam: Exam,
  catalogue: Catalogue,
): (region: string, column: Column) => Mark {
  const marks = new Map<string, Mark>();
  for (const statement of exam.statements) {
    const { region, side } = standingOf(statement, catalogue);
    if (region === undefined) continue;
    // What was seen at another time and not looked at again says nothing of how the place is.
    const mark = isUnconfirmed(statement) ? 'said' : markOf(statement, catalogue);
    const crossing = catalogue.regions.get(region)?.laterality === 'crossing';
    for (const column of columnsOf(side, crossing)) {
      const key = `${region}/${column}`;
      const before = marks.get(key);
      if (before === undefined || rank(mark) < rank(before)) marks.set(key, mark);
    }
  }
  return (region, column) => marks.get(`${region}/${column}`) ?? leftOut(region, column);

  /** Not examining a region leaves out what lies below it; being normal does not pass down. */
  function leftOut(region: string, column: Column): Mark {
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

function rank(mark: Mark): number {
  return strongestFirst.indexOf(mark);
}

/** Both sides of a region that crosses the midline are all of it. */
function columnsOf(side: Side | undefined, crossing: boolean): readonly Column[] {
  if (side === 'both') return crossing ? ['right', 'left', 'middle'] : ['right', 'left'];
  return side === 'right' || side === 'left' ? [side] : ['middle'];
}
