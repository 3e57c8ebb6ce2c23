import type { RecordEvent, RecordStatus } from '../../model/record-event.ts';
import type { Statement } from '../../model/statement.ts';
import { maybe, type Sampling, sampleText } from './sampling.ts';

type Action = RecordEvent['action'];

/** Lives that a record can have had by the time it stands in a state. */
const lives: Readonly<Record<RecordStatus, readonly (readonly Action[])[]>> = {
  draft: [['create']],
  preliminary: [
    ['create', 'release'],
    ['create', 'release', 'release'],
  ],
  final: [
    ['create', 'sign'],
    ['create', 'release', 'sign'],
    ['create', 'release', 'sign', 'sign'],
  ],
  amended: [
    ['create', 'sign', 'amend'],
    ['create', 'release', 'sign', 'amend', 'sign'],
    ['create', 'sign', 'append', 'amend'],
  ],
  corrected: [
    ['create', 'sign', 'correct'],
    ['create', 'sign', 'amend', 'correct', 'sign'],
  ],
  appended: [
    ['create', 'sign', 'append'],
    ['create', 'sign', 'correct', 'append'],
  ],
  cancelled: [
    ['create', 'cancel'],
    ['create', 'release', 'cancel'],
  ],
  'entered-in-error': [
    ['create', 'sign', 'retract'],
    ['create', 'release', 'sign', 'append', 'retract'],
  ],
};

/** Weighted: most records are final. */
const statuses = [
  'final',
  'final',
  'final',
  'final',
  'preliminary',
  'amended',
  'corrected',
  'appended',
  'cancelled',
  'entered-in-error',
] as const;

/** A state and the steps that led to it. A draft is left out, since it is not exported. */
export function sampleStatus({ random }: Pick<Sampling, 'random'>): Exclude<RecordStatus, 'draft'> {
  return random.pick(statuses);
}

export function sampleHistory(
  sampling: Sampling,
  status: RecordStatus,
  statements: readonly Statement[],
): RecordEvent[] {
  const { random, clock, examiners } = sampling;
  return random.pick(lives[status]).map((action, at) => {
    const changes = action === 'amend' || action === 'correct' || action === 'append';
    const keys = random
      .shuffled(statements)
      .slice(0, random.int(1, 3))
      .map(({ key }) => key);
    const explained = changes || action === 'cancel' || action === 'retract';
    // Now and then a step takes a statement out.
    const takesOut = (action === 'amend' || action === 'correct') && keys.length === 3;
    return {
      action,
      by: random.pick(examiners).key,
      at: clock.later(at),
      version: at + 1,
      ...((explained || maybe(sampling, 0.1)) && { reason: sampleText(sampling) }),
      ...(changes && keys.length > 0 && { changed: keys }),
      ...(takesOut && { withdrawn: [`withdrawn/${at}`] }),
    };
  });
}
