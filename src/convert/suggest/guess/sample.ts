import { spend } from '../../../issues/budget.ts';
import { contentOf, isBlank } from '../../exams/note.ts';
import type { LegacyRecord, Reader } from '../../record/record.ts';

/** What a sample shows of one field. */
export interface SampleField {
  readonly name: string;
  /** Texts that are not blank, in order. */
  readonly texts: readonly string[];
  /** The different ones. */
  readonly words: readonly string[];
  readonly blanks: number;
}

export interface Sample {
  readonly fields: ReadonlyMap<string, SampleField>;
  readonly records: readonly LegacyRecord[];
  /** Exams that were looked at, and records that could not be read by their names. */
  readonly exams: number;
  readonly unread: number;
}

/** Exams that are looked at; a sample need not be the whole export. */
const MOST_UNITS = 2000;

/** The fields of a sample text, in the order they are first met. */
export function readSample(text: string, reader: Reader): Sample {
  const splitter = reader.splitter();
  const units = [...splitter.push(text), ...splitter.end()].slice(0, MOST_UNITS);
  const all = reader.read(units).flatMap((group) => group.records);
  for (const { fields } of all) spend(fields.length);
  const records = all.filter(({ malformed }) => malformed === undefined);
  const texts = new Map<string, string[]>();
  const blanks = new Map<string, number>();
  for (const field of records.flatMap(({ fields }) => fields)) {
    const seen = texts.get(field.name) ?? [];
    texts.set(field.name, seen);
    if (isBlank(field)) blanks.set(field.name, (blanks.get(field.name) ?? 0) + 1);
    else seen.push(contentOf(field).trim());
  }
  const fields = new Map(
    [...texts].map(([name, found]): [string, SampleField] => [
      name,
      { name, texts: found, words: [...new Set(found)], blanks: blanks.get(name) ?? 0 },
    ]),
  );
  return { fields, records, exams: units.length, unread: all.length - records.length };
}

/** Most different words, and longest word, of a field whose words can be listed. */
const MOST_WORDS = 12;
const LONGEST_WORD = 24;

/** The words of a field, where they are few and short enough to be a list of answers. */
export function answersOf(field: SampleField): readonly string[] | undefined {
  const few = field.words.length <= MOST_WORDS;
  return few && field.words.every((word) => word.length <= LONGEST_WORD) ? field.words : undefined;
}
