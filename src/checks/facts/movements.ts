import type { Key } from '../../model/primitive.ts';
import type { CheckContext } from '../context.ts';
import { coversSide, type OneSide } from '../places/sides.ts';
import { fill } from '../words/check-words.ts';
import { type Fact, known, unknown } from './fact.ts';

/** Grades of a facial movement, from normal to none. */
const gradeRanks: ReadonlyMap<string, number> = new Map([
  ['normal', 0],
  ['slight-weakness', 1],
  ['obvious-weakness', 2],
  ['trace', 3],
  ['none', 4],
]);

/** A movement that was tested on a side. */
export interface TestedMovement {
  readonly test: string;
  readonly grade: string;
  /** Only facial movements have a rank: 0 normal to 4 none. */
  readonly rank: number | undefined;
  readonly usual: boolean;
  readonly synkinesis: boolean;
  readonly key: Key;
}

/** The movement as tested on a side, or what is missing. The last statement counts. */
export function movementOn(
  { index, catalogue, words }: CheckContext,
  test: string,
  side: OneSide | undefined,
): TestedMovement | { readonly missing: string } {
  const { phrases, sides, within } = words;
  const values = {
    name: within(catalogue.testPoints.get(test)?.display ?? test),
    side: side === undefined ? '' : sides[side],
  };
  const stated = index
    .about('movement', test)
    .filter((one) => side === undefined || coversSide(one.side, side));
  const statement = stated.at(-1);
  if (statement === undefined) return { missing: fill(phrases.named, values) };
  const result = catalogue.testResults.get(statement.grade);
  if (result?.untested === true) return { missing: fill(phrases['not-tested'], values) };
  return {
    test,
    grade: statement.grade,
    rank: gradeRanks.get(statement.grade),
    usual: result?.usual === true,
    synkinesis: statement.synkinesis === true,
    key: statement.key,
  };
}

export function isTested(
  movement: TestedMovement | { readonly missing: string },
): movement is TestedMovement {
  return 'grade' in movement;
}

/** A movement is weaker than this rank: 0 asks for any weakness, 1 for more than a slight one. */
export function weakerThan(context: CheckContext, test: string, side: OneSide, rank: number): Fact {
  const movement = movementOn(context, test, side);
  if (!isTested(movement)) return unknown(movement.missing);
  if (movement.rank === undefined) {
    const name = context.catalogue.testPoints.get(test)?.display ?? test;
    return unknown(fill(context.words.phrases.grade, { name: context.words.within(name) }));
  }
  return known(movement.rank > rank, movement.key);
}

/** Movements of the lower face by which its weakness is told. */
export const lowerFace: readonly string[] = ['zygomaticus', 'buccinator', 'orb-oris'];
export const eyeClosure: readonly string[] = ['orb-oculi-gentle', 'orb-oculi-forced'];
