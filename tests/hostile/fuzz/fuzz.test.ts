import { expect, it } from 'vitest';
import { corpus } from './corpus.ts';
import { type Find, run, tried } from './run.ts';
import { targets } from './targets.ts';

/** What was found once and mended is tried for good. */
it.each(corpus)('$target: $why', ({ target: name, input }) => {
  const target = targets.find((one) => one.name === name);
  if (target === undefined) throw new Error(`there is no target ${name}`);
  expect(tried(target, input(), 0)).not.toHaveProperty('kind');
});

/** `FUZZ_SECONDS=600` in CI; hours by `tsx tests/hostile/fuzz/fuzz.ts`. */
const seconds = Number(process.env.FUZZ_SECONDS ?? 20);

it(`damaged inputs for ${seconds} seconds: nothing thrown, told, changed or slow`, () => {
  const finds: Omit<Find, 'input'>[] = [];
  const counts = run(
    { seconds, inputs: Number.POSITIVE_INFINITY, seed: 1 },
    ({ input: _, ...find }) => {
      finds.push(find);
    },
  );
  console.info(JSON.stringify(counts));
  expect(finds).toEqual([]);
  expect(counts.inputs).toBeGreaterThan(targets.length);
  expect(counts.kept).toBeGreaterThan(targets.length);
});
