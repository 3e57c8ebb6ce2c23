import type { Key } from '../../model/primitive.ts';
import type { Statement, StatementKind } from '../../model/statement.ts';
import { lookAt, peek } from '../../read/bundle/element.ts';
import type { Entry } from '../../read/bundle/entries.ts';
import { ownTable } from '../../read/observation/concept.ts';
import {
  baseOf,
  claimInterpretation,
  type Observed,
  observe,
  type Read,
  type Reader,
} from '../../read/observation/observation.ts';
import type { ExamReading } from '../../read/reading.ts';
import type { TableName } from '../../terminology/built-in.ts';
import { findingReader } from '../finding/read.ts';
import { functionTestReader } from '../function-test/read.ts';
import { imageReader } from '../image/read.ts';
import { measurementReader } from '../measurement/read.ts';
import { movementReader } from '../movement/read.ts';
import { noteReader } from '../note/read.ts';
import { regionStateReader } from '../region-state/read.ts';
import { scaleScoreReader } from '../scale-score/read.ts';
import { sensationReader } from '../sensation/read.ts';
import { comparisonReader } from '../sensation-comparison/read.ts';
import { symptomReader } from '../symptom/read.ts';
import { sayingsOf } from './meanings.ts';
import { subjectTables } from './subject-tables.ts';

const readers: { readonly [K in StatementKind]: Reader<Extract<Statement, { kind: K }>> } = {
  finding: findingReader,
  'region-state': regionStateReader,
  sensation: sensationReader,
  'sensation-comparison': comparisonReader,
  movement: movementReader,
  'function-test': functionTestReader,
  measurement: measurementReader,
  'scale-score': scaleScoreReader,
  symptom: symptomReader,
  note: noteReader,
  image: imageReader,
};

/** Each reader gives and takes the kind under which the record files it. */
const all: readonly Reader<Statement>[] = Object.values(readers);

/** Tables whose codes name statements. */
const tables: readonly TableName[] = [
  ...new Set<TableName>([...Object.values(subjectTables), 'items']),
];

/**
 * The statement that an observation with our codes makes; undefined, and nothing claimed, where it
 * lacks what its kind must have. `name` is the name under which the exam identifies it, if any.
 */
export function fromObservation(
  reading: ExamReading,
  entry: Entry,
  { key, name }: { readonly key: Key; readonly name: string | undefined },
): Statement | undefined {
  const { resource } = entry;
  return resource.claims.attempt(() => {
    const concept = lookAt(resource, 'code');
    const own = concept && ownTable(reading, concept, tables);
    const reader = own && all.find((one) => one.of(own, reading.catalogue));
    if (reader === undefined) return undefined;
    const observed = observe(reading, entry);
    const read = reader.read(observed, name);
    if (read === undefined || isWithdrawn(observed, reader, read, name ?? '')) return undefined;
    const statement = { key, ...baseOf(observed), ...read };
    claimInterpretation(resource, sayingsOf(statement, reading.catalogue));
    return statement;
  });
}

/** Withdrawn or cancelled by itself, and not with the exam as a whole or because it was not done. */
function isWithdrawn(
  { reading, element }: Observed,
  reader: Reader<Statement>,
  read: Read<Statement>,
  name: string,
): boolean {
  const status = peek(element, 'status');
  if (status !== 'entered-in-error' && status !== 'cancelled') return false;
  if (status === reading.statusOf(name)) return false;
  return status === 'entered-in-error' || reader.undone?.(read) !== true;
}

/** Address of the picture that a statement refers to. */
export function pictureUrlOf(statement: Statement): string | undefined {
  const reader: Reader<Statement> = readers[statement.kind];
  return reader.pictureUrl?.(statement);
}
