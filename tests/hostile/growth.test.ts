import { beforeAll, describe, expect, it } from 'vitest';
import { parseExam } from '../../src/model/parse-exam.ts';
import { exponent, grown, measuring } from './growth.ts';
import { soundExams } from './shapes/exams.ts';
import { shapes } from './shapes/index.ts';

/** `EVERY_SHAPE=1` for all; a shape takes some two seconds on an idle core. */
const every = Number(process.env.EVERY_SHAPE ?? 8);
const sizes = [30_000, 300_000];

/**
 * Between linear with what a growing heap costs and quadratic, which is 2. Processor time of a process of
 * its own, so that other work on the machine moves it little; a shape above the bound is measured again.
 */
const mostExponent = 1.5;
const tries = 3;

let program: string;
beforeAll(async () => {
  program = await measuring('output/hostile');
});

describe.each(shapes.filter((_, at) => at % every === 0))('$entry: $name', (shape) => {
  it('takes time in proportion to the size, and throws nothing', async () => {
    let slope: number | undefined;
    for (let at = 0; at < tries; at++) {
      const { points, ended } = await grown(program, shape, sizes);
      expect({ ended, thrown: points.find(({ thrown }) => thrown)?.thrown }).toEqual({});
      slope = exponent(points, 'seconds', 0.05);
      if (slope === undefined || slope < mostExponent) break;
    }
    expect(slope ?? 1).toBeLessThan(mostExponent);
  });
});

it.each(Object.entries(soundExams))('an exam of %s is accepted', (_, make) => {
  expect(parseExam(make(20_000)).issues).toEqual([]);
});

it('tells quadratic work from linear work', () => {
  const points = (power: number) =>
    sizes.map((size) => ({ size, seconds: (size / 1e5) ** power, memory: 0 }));
  expect(exponent(points(1), 'seconds', 0.05)).toBeCloseTo(1);
  expect(exponent(points(2), 'seconds', 0.05)).toBeCloseTo(2);
});
