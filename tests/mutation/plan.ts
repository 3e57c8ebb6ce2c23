import { join } from 'node:path';

/** Where a run keeps what it works with, from the root of the project. */
const folder = join(import.meta.dirname, '../../output/mutation');
export const workFiles = {
  folder,
  /** Sources with switches, and the mutants: {@link Instrumented}. */
  instrumented: join(folder, 'instrumented.json'),
  /** A {@link Verdict} a line, as they come. */
  verdicts: join(folder, 'verdicts.ndjson'),
  /** The mutant that is switched on, for a run that hangs. */
  current: join(folder, 'current'),
} as const;

/** A mutant as the instrumenter of StrykerJS describes it; lines are counted from 0. */
export interface Mutant {
  readonly id: string;
  readonly fileName: string;
  readonly mutatorName: string;
  readonly replacement: string;
  readonly location: { readonly start: { readonly line: number } };
}

export interface Instrumented {
  readonly sources: Readonly<Record<string, string>>;
  readonly mutants: readonly Mutant[];
}

/**
 * What a test says of a mutant: `met` where its place is run; `reached` where the test passes although
 * the mutant ran; `killed` where it fails with it alone; `hung` where the run had to be ended. `loaded`:
 * the loading of modules ran its place.
 */
export interface Verdict {
  readonly id: string;
  readonly said: 'met' | 'reached' | 'killed' | 'hung' | 'loaded';
  readonly test?: string;
}
