import { isUnconfirmed } from '../../kinds/facets/base.ts';
import type { state } from '../../model/builder/draft.ts';
import type { Exam } from '../../model/exam.ts';
import type { Text } from '../../model/primitive.ts';
import type { Reason, StatementBase } from '../../model/statement.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { Lean, Region } from '../../terminology/types.ts';
import type { Random } from '../random.ts';
import { hardTexts, sentences } from './words.ts';

/** How much an invented exam says. */
export type SampleSize = 'small' | 'usual' | 'full' | 'edge';

/** A statement without its key, which the draft gives. */
export type Stated = Parameters<typeof state>[1];

/** How many rows of each table an exam of this size speaks of. */
export const amounts: Readonly<
  Record<
    SampleSize,
    Readonly<
      Record<'regions' | 'tests' | 'measures' | 'scales' | 'symptoms' | 'notes' | 'images', number>
    >
  >
> = {
  small: { regions: 3, tests: 2, measures: 1, scales: 1, symptoms: 1, notes: 1, images: 0 },
  usual: { regions: 24, tests: 12, measures: 6, scales: 2, symptoms: 10, notes: 3, images: 1 },
  full: {
    regions: 1000,
    tests: 1000,
    measures: 1000,
    scales: 1000,
    symptoms: 1000,
    notes: 12,
    images: 4,
  },
  edge: { regions: 5, tests: 5, measures: 4, scales: 3, symptoms: 4, notes: 3, images: 3 },
};

/** What the parts of a sample exam are drawn from. */
export interface Sampling {
  readonly random: Random;
  readonly catalogue: Catalogue;
  readonly size: SampleSize;
  readonly clock: Clock;
  readonly examiners: Exam['examiners'];
  readonly instruments: readonly string[];
}

/** The times of a sample exam: it starts at `start`, and everything later lies between it and `recorded`. */
export interface Clock {
  readonly start: string;
  readonly end?: string;
  /** A moment during the exam, never the start itself. */
  readonly during: (random: Random) => string;
  /** A date, or part of one, before the exam. */
  readonly before: (random: Random) => string;
  /** A date, or part of one, after the exam. */
  readonly after: (random: Random) => string;
  /** A moment after the exam; a later step lies later. */
  readonly later: (step: number) => string;
}

/** A sentence, or in an edge exam a text that breaks careless code. */
export function sampleText({ random, size }: Pick<Sampling, 'random' | 'size'>): Text {
  if (size !== 'edge') return random.pick(sentences);
  if (random.chance(0.03)) return `${random.pick(hardTexts)} `.repeat(200);
  return random.pick(hardTexts);
}

/** True in this share of cases; in an edge exam always more often. */
export function maybe({ random, size }: Sampling, share: number): boolean {
  return random.chance(size === 'edge' ? Math.max(share, 0.5) : share);
}

/** Details that every statement can have. None says explicitly what holds by default. */
export function sampleDetails(sampling: Sampling): Omit<StatementBase, 'key'> {
  const { random, clock, examiners, instruments } = sampling;
  const others = examiners.slice(1).map(({ key }) => key);
  const used = random.some(instruments, random.int(1, 3));
  const own = maybe(sampling, 0.05) ? { at: clock.during(random) } : {};
  const details = {
    ...(others.length > 0 && maybe(sampling, 0.1) && { examiner: random.pick(others) }),
    ...(used.length > 0 && maybe(sampling, 0.1) && { instruments: used }),
    ...(maybe(sampling, 0.08) && { note: sampleText(sampling) }),
    ...(maybe(sampling, 0.04) && { codings: sampleCodings(sampling) }),
    ...(maybe(sampling, 0.03) && {
      carried: {
        exam: `check-${random.int(1, 9999)}`,
        statement: `statement/${random.int(1, 99)}`,
        at: clock.before(random),
        confirmed: random.chance(0.5),
      },
    }),
  };
  // What was not looked at again has no time of today.
  return { ...(isUnconfirmed(details) ? {} : own), ...details };
}

/** Codings of a clinic's own system, as a caller may add them. */
export function sampleCodings(sampling: Sampling): NonNullable<StatementBase['codings']> {
  const { random } = sampling;
  const coding = (): NonNullable<StatementBase['codings']>[number] => ({
    system: 'https://clinic.example/codes/findings',
    ...(random.chance(0.3) && { version: `20${random.int(18, 26)}` }),
    code: `C ${random.int(1, 99)}.${random.int(0, 9)}`,
    ...(random.chance(0.6) && { display: sampleText(sampling) }),
  });
  return random.chance(0.3) ? [coding(), coding()] : [coding()];
}

/** A decimal as text, between the bounds, with `digits` places after the point. */
export function sampleDecimal(random: Random, low: number, high: number, digits: number): string {
  const scale = 10 ** digits;
  return (random.int(Math.ceil(low * scale), Math.floor(high * scale)) / scale).toFixed(digits);
}

/** Why something was not examined, or cannot be. */
export function sampleReason(sampling: Sampling, why: 'not-examined' | 'not-applicable'): Reason {
  const { random, catalogue } = sampling;
  const rows = [...catalogue.reasons.values()].filter(
    ({ dataAbsentReason }) =>
      (dataAbsentReason === 'not-applicable') === (why === 'not-applicable'),
  );
  return {
    code: random.pick(rows).code,
    ...(maybe(sampling, 0.2) && { text: sampleText(sampling) }),
  };
}

/** Regions that can be examined themselves. */
export function sitedRegions({ catalogue }: Sampling): Lean<Region>[] {
  return [...catalogue.regions.values()].filter(({ group }) => group !== true);
}
