/**
 * How much a test takes of a large sample: the first figure in the quick suite, the second in
 * `npm run test:slow`, which runs every file that asks here once more.
 */
export function sampled(quick: number, whole: number): number {
  return process.env['WHOLE_SAMPLES'] === undefined ? quick : whole;
}
