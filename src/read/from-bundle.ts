import { orThrow } from '../issues/issue.ts';
import type { Exam } from '../model/exam.ts';
import type { ReadOptions, ReadOutcome } from './options.ts';
import { readBundle } from './read-bundle.ts';

export type { Remainder } from './bundle/remainder.ts';
export type { ReadOptions, ReadOutcome, Supplied } from './options.ts';

/**
 * Reads the exam that a bundle holds. A bundle of this library, of any version and type, gives back
 * the exam it was made from; what it says explicitly although it holds by default (the first
 * examiner, the time of the exam, words equal to a display) comes back left out. A search set of a
 * server can be read too, and so can a bundle of others as far as it can be understood: an
 * observation becomes a sign or a measurement only where its codes mean exactly one of ours, and
 * otherwise a note.
 *
 * Decimals keep their precision where the bundle was parsed with `fromJson`.
 *
 * @param bundle The bundle as plain data.
 * @param options Names and codes as at the export, and facts that the bundle lacks; see
 *   {@link ReadOptions}.
 * @returns The exam, and in `remainder` everything of the bundle that is not in it. It fails where
 *   the bundle lacks what an exam must have; `supplied` can state it. An issue about the exam has
 *   its path in the exam, and one about what could not be read has it in the bundle.
 * @example
 * const { value, remainder } = fromBundle(bundle, { supplied: { status: 'final' } });
 */
export function fromBundle(bundle: unknown, options: ReadOptions = {}): ReadOutcome {
  return readBundle(bundle, options).outcome;
}

/**
 * Reads an exam like {@link fromBundle} and throws where that fails.
 *
 * @param bundle The bundle as plain data.
 * @param options As for `fromBundle`.
 * @returns The exam. Warnings and the remainder are not returned; `fromBundle` gives them.
 * @throws {IssueError} Where there is no exam; it holds all issues.
 * @example
 * const same = fromBundleOrThrow(toBundleOrThrow(exam));
 */
export function fromBundleOrThrow(bundle: unknown, options?: ReadOptions): Exam {
  return orThrow('read the exam of the bundle', fromBundle(bundle, options));
}
