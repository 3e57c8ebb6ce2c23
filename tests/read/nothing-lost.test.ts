import { describe, expect, it } from 'vitest';
import { fromBundle } from '../../src/read/from-bundle.ts';
import { sampleExam } from '../../src/testing/sample-exam.ts';
import { sampled } from '../sampled.ts';
import {
  bundleOf,
  expectAnswerToAnyValue,
  unseenAdditions,
  unseenChanges,
} from './nothing-lost.ts';
import { spots } from './spots.ts';

/** The slow suite tries every spot; here one of two hundred and forty. */
const of = 240;

describe('a change to a bundle', () => {
  it.each(sampled([3, 26], [3, 19, 26]))('of any value is seen, seed %i', (turn) => {
    const exam = sampleExam(turn, { size: turn % 2 === 0 ? 'edge' : 'small' });
    expect(unseenChanges({ exam, turn, of })).toEqual([]);
  });

  it.each(sampled([5], [5, 21]))('by a further property is in the remainder, seed %i', (turn) => {
    const exam = sampleExam(turn, { size: turn % 2 === 0 ? 'edge' : 'small' });
    expect(unseenAdditions({ exam, turn, of })).toEqual([]);
  });

  it.each(Object.getOwnPropertyNames(Object.prototype))(
    'to the type %s is read as a type',
    (name) => {
      const bundle = bundleOf(sampleExam(4, { size: 'small' }), 0);
      const resources = [...spots(bundle)].filter(({ step }) => step === 'resourceType');
      expect(resources.length).toBeGreaterThan(10);
      for (const [at, { holder, step }] of resources.entries()) {
        if (at % 8 !== name.length % 8) continue;
        const type = holder[step];
        holder[step] = name;
        const { value, issues } = fromBundle(bundle);
        expect(value !== undefined || issues.length > 0).toBe(true);
        holder[step] = type;
      }
    },
  );

  it('of any type of a resource is seen', () => {
    for (const turn of [1, 4]) {
      const exam = sampleExam(turn, { size: turn % 2 === 0 ? 'edge' : 'small' });
      expect(unseenChanges({ exam, turn, of: sampled(5, 1), only: 'resourceType' })).toEqual([]);
    }
  });

  it('of any kind ends in an exam or in issues, never in an exception', () => {
    expectAnswerToAnyValue({
      exam: sampleExam(4, { size: 'edge' }),
      turn: 2,
      of: sampled(6007, 1009),
    });
  });
});
