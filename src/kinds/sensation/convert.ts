import {
  isState,
  type Problem,
  reasonOf,
  type Unkeyed,
  unknownWord,
} from '../../convert/build/built.ts';
import type { SensationTarget } from '../../convert/mapping/target.ts';
import type { Side } from '../../model/primitive.ts';
import { notDone, type StatementConversion, type TargetConversion } from '../facets/conversion.ts';
import type { ModalityResult, Sensation } from './statement.ts';

export const sensationConversion: StatementConversion<Sensation> = {
  about: ({ point }) => [point],
  // A test of the same point and side by another modality.
  join: (first, second) => {
    const known = new Set(first.results.map(({ modality }) => modality));
    if (second.results.some(({ modality }) => known.has(modality))) return undefined;
    const note = [first.note, second.note].filter((text) => text !== undefined).join('\n');
    const [head, ...more] = [...first.results, ...second.results];
    if (head === undefined) return undefined;
    return { ...first, results: [head, ...more], ...(note !== '' && { note }) };
  },
};

export const sensationTarget: TargetConversion<SensationTarget> = {
  codes: ({ point }) => [['testPoints', point, 'point']],
  home: ({ point }, catalogue) => catalogue.testPoints.get(point)?.region,
  laterality: ({ point }, catalogue) => catalogue.testPoints.get(point)?.laterality,
  needs: 'modality',
  meanings: (_, catalogue) =>
    [...catalogue.sensationResults.values()].filter((row) => !row.untested).map(({ code }) => code),
  states: notDone,
  build: ({ target }, reading, plan) => {
    const { modality = target.modality, meaning, side, at } = reading;
    if (modality === undefined) return noModality;
    let result: ModalityResult;
    if (isState(meaning)) {
      result = { modality, result: 'not-tested', reason: reasonOf(meaning) };
    } else if (meaning !== undefined && plan.catalogue.sensationResults.has(meaning)) {
      result = { modality, result: meaning };
    } else {
      return unknownWord({ reason: 'sensation' });
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
  },
};

/** Sensation is stated for a modality, and so is its comparison. */
export const noModality: Problem = {
  problem: 'missing-field',
  facts: { reason: 'modality' },
};

const noSensationSide: Problem = {
  problem: 'missing-side',
  facts: { reason: 'sensation' },
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
