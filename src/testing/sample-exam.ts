import { startExam } from '../model/builder/draft.ts';
import type { Exam } from '../model/exam.ts';
import { builtInCatalogue, type Catalogue } from '../terminology/catalogue.ts';
import { createRandom } from './random.ts';
import { sampleConditions, sampleConsents, sampleIndication } from './sample/circumstances.ts';
import { sampleClock } from './sample/clock.ts';
import { sampleConclusion } from './sample/conclusion.ts';
import { sampleHistory, sampleStatus } from './sample/history.ts';
import {
  sampleEncounter,
  sampleExaminers,
  sampleInstruments,
  sampleOrganization,
  sampleSubject,
} from './sample/people.ts';
import { maybe, type SampleSize, type Sampling } from './sample/sampling.ts';
import { withStatements } from './sample/statements.ts';
import { sampleWarnings } from './sample/warnings.ts';

export type { SampleSize } from './sample/sampling.ts';

/** Size of an invented exam, and what it draws from. */
export interface SampleOptions {
  /**
   * `small`: a dozen statements; `usual` (default): about a hundred; `full`: every region, test,
   * measure, scale and symptom; `edge`: few statements, with all the options and odd texts there are.
   */
  readonly size?: SampleSize;
  /** Default: the built-in catalogue. */
  readonly catalogue?: Catalogue;
}

/**
 * Invents an exam that follows from the seed alone: a yearly check of a vineyard or harbour worker.
 * It is test data: plausible in its form, not in its medicine.
 *
 * @param seed A whole number.
 * @param options Size, and the catalogue to draw from; see {@link SampleOptions}.
 * @returns An exam in which `parseExam` finds no error; never a draft.
 * @example
 * const invented = sampleExam(7, { size: 'small' });
 */
export function sampleExam(seed: number, options: SampleOptions = {}): Exam {
  const size = options.size ?? 'usual';
  const catalogue = options.catalogue ?? builtInCatalogue;
  const random = createRandom(seed);
  const draw = { random, size, catalogue };
  const clock = sampleClock(random, size);
  const examiners = sampleExaminers(draw);
  const instruments = size === 'small' || random.chance(0.7) ? sampleInstruments(draw) : [];
  const sampling: Sampling = {
    ...draw,
    clock,
    examiners,
    instruments: instruments.map(({ key }) => key),
  };
  const protocol = random.pick([...catalogue.protocols.values()]);
  const { exam } = withStatements(
    startExam({
      id: `check-${size}-${seed}`,
      subject: sampleSubject(draw),
      examiners,
      ...(random.chance(0.7) && { organization: sampleOrganization(draw) }),
      ...(random.chance(0.5) && { encounter: sampleEncounter(draw) }),
      performed: { start: clock.start, ...(clock.end !== undefined && { end: clock.end }) },
      recorded: clock.later(0),
      ...(maybe(sampling, 0.8) && { indication: sampleIndication(sampling) }),
      ...(maybe(sampling, 0.7) && { consents: sampleConsents(sampling) }),
      ...(maybe(sampling, 0.8) && { conditions: sampleConditions(sampling) }),
      ...(instruments.length > 0 && { instruments }),
      protocol: { id: protocol.code, version: protocol.version },
    }),
    sampling,
  );
  const status = sampleStatus(sampling);
  const { statements } = exam;
  const history = random.chance(0.8) ? sampleHistory(sampling, status, statements) : [];
  const conclusion = random.chance(0.85) && { conclusion: sampleConclusion(sampling, statements) };
  return {
    ...exam,
    status,
    recorded: history.at(-1)?.at ?? exam.recorded,
    ...conclusion,
    ...sampleWarnings(sampling, statements),
    ...(history.length > 0 && { history }),
  };
}

/**
 * Invents several exams, of the seed and those that follow it.
 *
 * @param seed A whole number: the seed of the first exam.
 * @param count How many exams.
 * @param options As for {@link sampleExam}.
 * @returns The exams, one at a time.
 * @example
 * for (const invented of sampleExams(1, 9)) console.log(invented.id);
 */
export function* sampleExams(
  seed: number,
  count: number,
  options: SampleOptions = {},
): Generator<Exam, void, undefined> {
  for (let at = 0; at < count; at++) yield sampleExam(seed + at, options);
}
