import type { Side } from '../../model/primitive.ts';
import type { ModalityResult } from '../../model/statement.ts';
import { lateralitySides } from '../../terminology/sides.ts';
import type { Lean, TestPoint } from '../../terminology/types.ts';
import { type Stated, sampleReason } from './regions.ts';
import { maybe, type Sampling, sampleDetails } from './sampling.ts';

/** Sensation at a point on both sides and their comparison, or a movement or function test. */
export function testStatements(sampling: Sampling, point: Lean<TestPoint>): Stated[] {
  if (point.group === 'sensation') return sensationStatements(sampling, point);
  const { random } = sampling;
  const { sides, required } = lateralitySides[point.laterality];
  const wanted: readonly (Side | undefined)[] = required
    ? random.pick([['right', 'left'] as const, ['both'] as const])
    : [random.chance(0.7) ? undefined : random.pick(sides)];
  return wanted.map((side) => resultStatement(sampling, point, side));
}

function sensationStatements(sampling: Sampling, point: Lean<TestPoint>): Stated[] {
  const { random } = sampling;
  const sides = random.chance(0.9)
    ? (['right', 'left'] as const)
    : [random.pick(['right', 'left'] as const)];
  const modalities = random.some(point.modalities ?? [], random.int(1, 2));
  const statements: Stated[] = sides.map((side) => ({
    kind: 'sensation',
    point: point.code,
    side,
    results: modalities.map((modality) => modalityResult(sampling, modality)),
    ...(maybe(sampling, 0.8) && { eyesClosed: random.chance(0.9) }),
    ...sampleDetails(sampling),
  }));
  const [modality] = modalities;
  if (modality !== undefined && maybe(sampling, 0.6)) {
    statements.push(comparison(sampling, point.code, modality));
  }
  return statements;
}

function modalityResult(sampling: Sampling, modality: string): ModalityResult {
  const { random, catalogue } = sampling;
  const rows = [...catalogue.sensationResults.values()].filter(
    (row) => row.modalities === undefined || row.modalities.includes(modality),
  );
  const usual = rows.filter((row) => row.usual === true);
  const row = random.pick(random.chance(0.75) ? usual : rows);
  return {
    modality,
    result: row.code,
    ...(row.untested === true && { reason: sampleReason(sampling, 'not-examined') }),
  };
}

function comparison(sampling: Sampling, point: string, modality: string): Stated {
  const { random } = sampling;
  const result = random.pick([
    'equal',
    'equal',
    'right-less',
    'left-less',
    'not-compared',
  ] as const);
  return {
    kind: 'sensation-comparison',
    point,
    modality,
    result,
    ...(result === 'not-compared' && { reason: sampleReason(sampling, 'not-examined') }),
    ...sampleDetails(sampling),
  };
}

function resultStatement(
  sampling: Sampling,
  point: Lean<TestPoint>,
  side: Side | undefined,
): Stated {
  const { random, catalogue } = sampling;
  const rows = (point.results ?? []).flatMap((code) => catalogue.testResults.get(code) ?? []);
  const usual = rows.filter((row) => row.usual === true);
  const row = random.pick(usual.length > 0 && random.chance(0.7) ? usual : rows);
  const shared = {
    test: point.code,
    ...(side !== undefined && { side }),
    ...(row.untested === true && { reason: sampleReason(sampling, 'not-examined') }),
    ...sampleDetails(sampling),
  };
  if (point.group === 'function') return { kind: 'function-test', result: row.code, ...shared };
  return {
    kind: 'movement',
    grade: row.code,
    ...shared,
    ...(point.group === 'facial-movement' &&
      maybe(sampling, 0.1) && { synkinesis: random.chance(0.3) }),
  };
}
