/**
 * How much a test takes of a large sample: the first value in the quick suite, the second in
 * `npm run test:slow`, which runs every file that asks here once more.
 */
export function sampled<T>(quick: T, whole: T): T {
  return process.env['WHOLE_SAMPLES'] === undefined ? quick : whole;
}
