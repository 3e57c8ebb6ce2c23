import type { Exam } from '../../model/exam.ts';
import type { Side } from '../../model/primitive.ts';
import type { Statement } from '../../model/statement.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';

/** What the map shows of a place. `silent`: nothing was said, which is not normal. */
export type Mark = 'sign' | 'partial' | 'not-examined' | 'normal' | 'said' | 'silent';

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
    const place = placeOf(statement, catalogue);
    if (place === undefined) continue;
    const mark = markOf(statement, catalogue);
    const crossing = catalogue.regions.get(place.region)?.laterality === 'crossing';
    for (const column of columnsOf(place.side, crossing)) {
      const key = `${place.region}/${column}`;
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

function placeOf(
  statement: Statement,
  catalogue: Catalogue,
): { readonly region: string; readonly side: Side | undefined } | undefined {
  if ('region' in statement && statement.region !== undefined) {
    return { region: statement.region, side: 'side' in statement ? statement.side : undefined };
  }
  const point =
    statement.kind === 'sensation'
      ? statement.point
      : statement.kind === 'movement' || statement.kind === 'function-test'
        ? statement.test
        : undefined;
  const region = point === undefined ? undefined : catalogue.testPoints.get(point)?.region;
  if (region === undefined) return undefined;
  return { region, side: 'side' in statement ? statement.side : undefined };
}

function markOf(statement: Statement, catalogue: Catalogue): Mark {
  if (statement.kind === 'region-state') {
    switch (statement.state) {
      case 'abnormal':
        return 'sign';
      case 'normal':
        return 'normal';
      case 'partial':
        return 'partial';
      default:
        return 'not-examined';
    }
  }
  if (statement.kind !== 'finding' || statement.presence !== 'present') return 'said';
  return catalogue.findings.get(statement.finding)?.usual ? 'said' : 'sign';
}
