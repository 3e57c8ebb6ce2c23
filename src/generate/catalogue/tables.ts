import { readFileSync } from 'node:fs';
import type { LexiconTable } from '../../terminology/lexicon.ts';
import type { Concept, Evidence, SnomedConcept } from '../../terminology/types.ts';

const folder = new URL('../../../terminology/', import.meta.url);

/** A row as the tables have it, with its source. What a kind of row has besides is read by name. */
export type Row = Concept & Readonly<Record<string, unknown>>;

// Our own files, whose form the generator of the tables has checked.
function read(name: string): Readonly<Record<string, unknown>> {
  return JSON.parse(readFileSync(new URL(`${name}.json`, folder), 'utf8'));
}

/** The rows of a table of /terminology, in its order. */
export function rowsOf(table: string): readonly Row[] {
  return read(table)['concepts'] as readonly Row[];
}

interface Words {
  readonly en?: readonly string[];
  readonly de?: readonly string[];
  readonly short?: readonly string[];
}

/** What people call the codes of a table besides its display; none for a table without a lexicon. */
export function wordsOf(table: string): ReadonlyMap<string, Words> {
  if (!lexicons.includes(table as LexiconTable)) return new Map();
  return new Map(Object.entries(read(`lexicon/${table}`)['words'] as Record<string, Words>));
}

const lexicons: readonly string[] = [
  'regions',
  'findings',
  'test-points',
  'measures',
  'scales',
  'symptoms',
  'reasons',
];

/** German displays of a table by code. */
export function germanOf(table: string): ReadonlyMap<string, string> {
  const displays = read('languages/de')['displays'] as Record<string, Record<string, string>>;
  return new Map(Object.entries(displays[table] ?? {}));
}

/** Names of the SNOMED CT ids that may leave under the free set; those outside it are not named. */
export function freeSnomed(): ReadonlyMap<string, string> {
  const rows = read('snomed')['concepts'] as readonly SnomedConcept[];
  return new Map(
    rows.flatMap(({ id, fsn, set }) => (set === 'gps-2020-09' ? [[id, fsn ?? id] as const] : [])),
  );
}

export const evidenceWords: Readonly<Record<Evidence, string>> = {
  read: 'source read',
  'second-hand': 'read second-hand',
  memory: 'from memory',
  'common-practice': 'common practice, no source',
};
