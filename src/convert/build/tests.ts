import type { Side } from '../../model/primitive.ts';
import type { ModalityResult, SensationComparison } from '../../model/statement.ts';
import type {
  ComparisonTarget,
  FunctionTestTarget,
  MovementTarget,
  SensationTarget,
} from '../target.ts';
import {
  type Builder,
  isState,
  type Problem,
  type Reading,
  reasonOf,
  type Unkeyed,
  unknownWord,
} from './built.ts';

const comparisons: readonly string[] = [
  'equal',
  'right-less',
  'left-less',
  'not-compared',
] satisfies SensationComparison['result'][];

export const buildSensation: Builder<SensationTarget> = ({ target }, reading, plan) => {
  const { modality = target.modality, meaning, side, at } = reading;
  if (modality === undefined) return noModality;
  let result: ModalityResult;
  if (isState(meaning)) {
    result = { modality, result: 'not-tested', reason: reasonOf(meaning) };
  } else if (meaning !== undefined && plan.catalogue.sensationResults.has(meaning)) {
    result = { modality, result: meaning };
  } else {
    return unknownWord('a word for a result of a sensation test');
  }
  const sides = sensationSides(side, plan.catalogue.testPoints.get(target.point)?.laterality);
  if (sides === undefined) return noSensationSide;
  const statements = sides.map(
    (one): Unkeyed => ({
      kind: 'sensation',
      point: target.point,
      side: one,
      ...(at !== undefined && { at }),
      results: [result],
    }),
  );
  return { statements };
};

export const buildComparison: Builder<ComparisonTarget> = ({ target }, reading) => {
  const { modality = target.modality, meaning, at } = reading;
  if (modality === undefined) return noModality;
  const shared = {
    kind: 'sensation-comparison' as const,
    point: target.point,
    modality,
    ...(at !== undefined && { at }),
  };
  if (isState(meaning)) {
    return { statements: [{ ...shared, result: 'not-compared', reason: reasonOf(meaning) }] };
  }
  if (!isComparison(meaning)) return unknownWord('a word for equal, right-less or left-less');
  return { statements: [{ ...shared, result: meaning }] };
};

export const buildMovement: Builder<MovementTarget> = ({ target }, reading, plan) => {
  const answer = testAnswer(target.test, reading, plan.catalogue.testPoints);
  if ('problem' in answer) return answer;
  const { code: grade, ...more } = answer;
  return { statements: [{ kind: 'movement', test: target.test, grade, ...more }] };
};

export const buildFunctionTest: Builder<FunctionTestTarget> = ({ target }, reading, plan) => {
  const answer = testAnswer(target.test, reading, plan.catalogue.testPoints);
  if ('problem' in answer) return answer;
  const { code: result, ...more } = answer;
  return { statements: [{ kind: 'function-test', test: target.test, result, ...more }] };
};

const noModality: Problem = {
  problem: 'missing-field',
  message: 'the record does not say how sensation was tested',
  expected: 'a modality in the mapping or a word for one in the modality field',
};

const noSensationSide: Problem = {
  problem: 'missing-side',
  message: 'the side of a sensation test is missing or not possible',
  expected: 'right, left, both or midline',
};

/** A result said of both sides is said of each. */
function sensationSides(
  side: Side | undefined,
  laterality: string | undefined,
): readonly ('right' | 'left' | 'midline')[] | undefined {
  if (side === 'both') return ['right', 'left'];
  if (side === 'right' || side === 'left' || side === 'midline') return [side];
  return side === undefined && laterality === 'midline' ? ['midline'] : undefined;
}

function testAnswer(
  test: string,
  { meaning, side, at }: Reading,
  points: ReadonlyMap<string, { readonly results?: readonly string[] }>,
): Problem | { code: string; side?: Side; at?: string; reason?: { code: string; text?: string } } {
  const results = points.get(test)?.results ?? [];
  const shared = { ...(side !== undefined && { side }), ...(at !== undefined && { at }) };
  if (isState(meaning)) return { code: 'not-tested', ...shared, reason: reasonOf(meaning) };
  if (meaning === undefined || !results.includes(meaning)) {
    return unknownWord(`a word for a result of the test ${test}`);
  }
  return { code: meaning, ...shared };
}

function isComparison(meaning: unknown): meaning is SensationComparison['result'] {
  return typeof meaning === 'string' && comparisons.includes(meaning);
}
