import type { Key } from '../../model/primitive.ts';
import type { Statement } from '../../model/statement.ts';
import type { TableName } from '../../terminology/built-in.ts';
import { ownTable } from '../concept.ts';
import { lookAt, peek } from '../element.ts';
import type { Entry } from '../entries.ts';
import { baseOf, type Observed, observe } from '../observation.ts';
import type { ExamReading } from '../reading.ts';
import { readFinding } from './finding.ts';
import { readImage } from './image.ts';
import { readMeasurement } from './measurement.ts';
import { readNote } from './note.ts';
import type { Read } from './read.ts';
import { readRegionState } from './region-state.ts';
import { readScaleScore } from './scale-score.ts';
import { readComparison, readSensation } from './sensation.ts';
import { readSymptom } from './symptom.ts';
import { readTest } from './test.ts';

type Reader = (observed: Observed, name: string | undefined) => Read<Statement> | undefined;

const tables: readonly TableName[] = [
  'findings',
  'measures',
  'scales',
  'symptoms',
  'testPoints',
  'items',
];

const itemReaders: ReadonlyMap<string, Reader> = new Map<string, Reader>([
  ['region-state', readRegionState],
  ['sensation-comparison', readComparison],
  ['note', readNote],
  ['image', readImage],
]);

/**
 * The statement that an observation with our codes makes; undefined, and nothing claimed, where it
 * lacks what its kind must have. `name` is the name under which the exam identifies it, if any.
 */
export function readStatement(
  reading: ExamReading,
  entry: Entry,
  { key, name }: { readonly key: Key; readonly name: string | undefined },
): Statement | undefined {
  const { resource } = entry;
  return resource.claims.attempt(() => {
    const reader = readerOf(reading, entry);
    if (reader === undefined) return undefined;
    const observed = observe(reading, entry);
    const read = reader(observed, name);
    if (read === undefined || isWithdrawn(observed, read, name ?? '')) return undefined;
    return { key, ...baseOf(observed), ...read };
  });
}

/** Withdrawn or cancelled by itself, and not with the exam as a whole or because it was not done. */
function isWithdrawn({ reading, element }: Observed, read: Read<Statement>, name: string): boolean {
  const status = peek(element, 'status');
  if (status !== 'entered-in-error' && status !== 'cancelled') return false;
  if (status === reading.statusOf(name)) return false;
  const undone = read.kind === 'region-state' && read.state === 'not-examined';
  return status === 'entered-in-error' || !undone;
}

function readerOf(reading: ExamReading, { resource }: Entry): Reader | undefined {
  const concept = lookAt(resource, 'code');
  const own = concept && ownTable(reading, concept, tables);
  switch (own?.table) {
    case 'findings':
      return readFinding;
    case 'measures':
      return readMeasurement;
    case 'scales':
      return readScaleScore;
    case 'symptoms':
      return readSymptom;
    case 'testPoints': {
      const point = reading.catalogue.testPoints.get(own.code);
      return point?.group === 'sensation' ? readSensation : readTest;
    }
    case 'items':
      return itemReaders.get(own.code);
    default:
      return undefined;
  }
}
