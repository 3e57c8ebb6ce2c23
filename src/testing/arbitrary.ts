import type { Arbitrary } from 'fast-check';
import type { Exam } from '../model/exam.ts';
import { optionalParts } from '../model/optional-parts.ts';
import { type SampleOptions, type SampleSize, sampleExam } from './sample-exam.ts';
import { withOnly } from './without.ts';

/** The part of fast-check that is used; pass the module itself. */
export type FastCheck = Pick<
  typeof import('fast-check'),
  'constantFrom' | 'nat' | 'subarray' | 'tuple'
>;

/** Sizes of the exams, and what they draw from. */
export interface ArbitraryOptions extends Pick<SampleOptions, 'catalogue'> {
  /** Sizes to draw from. Default: small and edge. */
  readonly sizes?: readonly [SampleSize, ...SampleSize[]];
}

/**
 * Makes sample exams for properties of fast-check. A failing one shrinks: statements and optional
 * parts fall away until each that is left is needed for the failure. fast-check is passed in, so
 * that only those who use it need it.
 *
 * @param fc The module `fast-check`.
 * @param options Sizes of the exams (default `small` and `edge`) and the catalogue to draw from.
 * @returns An arbitrary of exams in which `parseExam` finds no error.
 * @example
 * const property = fc.property(examArbitrary(fc), (one) => parseExam(one).ok);
 * @see https://fast-check.dev
 */
export function examArbitrary(fc: FastCheck, options: ArbitraryOptions = {}): Arbitrary<Exam> {
  const { sizes = ['small', 'edge'], catalogue } = options;
  return fc.tuple(fc.nat(), fc.constantFrom(...sizes)).chain(([seed, size]) => {
    const exam = sampleExam(seed, { size, ...(catalogue && { catalogue }) });
    return fc
      .tuple(fc.subarray([...exam.statements]), fc.subarray([...optionalParts]))
      .map(([statements, parts]) => withOnly(exam, statements, new Set(parts)));
  });
}
