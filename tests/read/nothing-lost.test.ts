import { describe, expect, it } from 'vitest';
import { fromBundle } from '../../src/read/from-bundle.ts';
import { sampleExam } from '../../src/testing/sample-exam.ts';
import { bundleOf, unseenAdditions, unseenChanges } from './nothing-lost.ts';
import { spots } from './spots.ts';

/** The slow suite tries every spot; here one of forty. */
const of = 40;

describe('a change to a bundle', () => {
  it.each([3, 19, 26])('of any value is seen, seed %i', (turn) => {
    const exam = sampleExam(turn, { size: turn % 2 === 0 ? 'edge' : 'small' });
    expect(unseenChanges({ exam, turn, of })).toEqual([]);
  });

  it.each([5, 21])('by a further property is in the remainder, seed %i', (turn) => {
    const exam = sampleExam(turn, { size: turn % 2 === 0 ? 'edge' : 'small' });
    expect(unseenAdditions({ exam, turn, of })).toEqual([]);
  });

  it.each(Object.getOwnPropertyNames(Object.prototype))(
    'to the type %s is read as a type',
    (name) => {
      const bundle = bundleOf(sampleExam(4, { size: 'small' }), 0);
      const resources = [...spots(bundle)].filter(({ step }) => step === 'resourceType');
      expect(resources.length).toBeGreaterThan(10);
      for (const { holder, step } of resources) {
        const type = holder[step];
        holder[step] = name;
        const { value, issues } = fromBundle(bundle);
        expect(value !== undefined || issues.length > 0).toBe(true);
        holder[step] = type;
      }
    },
  );

  it('of any kind ends in an exam or in issues, never in an exception', () => {
    const bundle = bundleOf(sampleExam(4, { size: 'edge' }), 2);
    for (const [at, { holder, step }] of [...spots(bundle)].entries()) {
      if (at % 211 !== 0) continue;
      const value = holder[step];
      for (const wrong of [null, [], {}, '', 7, [[]], [null], '__proto__', { reference: '#' }]) {
        holder[step] = wrong;
        const { value: read, issues } = fromBundle(bundle);
        expect(read !== undefined || issues.length > 0).toBe(true);
      }
      holder[step] = value;
    }
  });
});
