import type { CheckContext } from '../context.ts';
import type { OneSide } from '../places/sides.ts';
import { type Fact, known, some, unknown } from './fact.ts';
import { isMeasured, measured } from './measured.ts';
import { eyeClosure, isTested, lowerFace, movementOn, weakerThan } from './movements.ts';
import { sign } from './stated.ts';

export type FacialPattern = 'forehead spared' | 'whole side' | 'mixed' | 'lower face not weak';

/** The pattern on a side, or what is missing to tell it. */
export interface PatternVerdict {
  readonly pattern: FacialPattern | undefined;
  readonly used: readonly string[];
  readonly missing: readonly string[];
}

/**
 * Pattern of facial weakness on one side: lower face weak with the forehead normal and the eye at
 * most slightly weak; forehead and lower face weak; or neither of the two.
 */
export function facialPattern(context: CheckContext, side: OneSide): PatternVerdict {
  const lower = some(lowerFace.map((test) => weakerThan(context, test, side, 0)));
  if (lower.holds === false)
    return { pattern: 'lower face not weak', used: lower.used, missing: [] };
  const forehead = weakerThan(context, 'frontalis', side, 0);
  const used = [...new Set([...lower.used, ...forehead.used])];
  if (lower.holds === undefined || forehead.holds === undefined) {
    return { pattern: undefined, used, missing: [...lower.missing, ...forehead.missing] };
  }
  if (forehead.holds) return { pattern: 'whole side', used, missing: [] };
  const eye = some(eyeClosure.map((test) => weakerThan(context, test, side, 1)));
  if (eye.holds === undefined) return { pattern: undefined, used, missing: eye.missing };
  return {
    pattern: eye.holds ? 'mixed' : 'forehead spared',
    used: [...used, ...eye.used],
    missing: [],
  };
}

/** Whether any movement of the face was tested. */
export function facialMovementStated({ index }: CheckContext): boolean {
  return [...lowerFace, ...eyeClosure, 'frontalis'].some(
    (test) => index.about('movement', test).length > 0,
  );
}

/** Whether any movement of the face was tested, or its weakness was seen or told. */
export function facialWeaknessStated(context: CheckContext): boolean {
  const { index } = context;
  return (
    facialMovementStated(context) ||
    index.about('finding', 'facial-weakness').some((one) => one.presence === 'present') ||
    index.about('symptom', 'sym-motor.weakness').some((one) => one.answer === 'yes')
  );
}

/** The eye cannot be closed: a gap, the sign of it, or hardly any movement on tight closure. */
export function eyeStaysOpen(context: CheckContext, side: OneSide): Fact {
  const tight = movementOn(context, 'orb-oculi-forced', side);
  const gap = measured(context, 'lagophthalmos', side);
  return some([
    isTested(tight) ? known((tight.rank ?? 0) >= 3, tight.key) : unknown(tight.missing),
    isMeasured(gap) ? known(gap.value.digits > 0n, gap.statement.key) : unknown(gap.missing),
    sign(context, {
      finding: 'lagophthalmos',
      regions: ['lid-upper'],
      side,
      by: ['inspection', 'inspection-magnified'],
    }),
  ]);
}
