import { append } from '../../data/append.ts';
import { isPlainObject } from '../../data/plain-data.ts';
import { within } from '../../issues/budget.ts';
import { failure, hasErrors, type Issue, type Outcome, success } from '../../issues/issue.ts';
import { cutIssues, endedIssue } from '../../issues/issue-list.ts';
import { nearest } from '../../issues/nearest.ts';
import { builtInCatalogue, type Catalogue } from '../../terminology/catalogue.ts';
import { units } from '../../terminology/tables/units.ts';
import { issue } from '../issue.ts';
import type { Mapping, StateWithReason } from '../mapping/mapping.ts';
import type { LegacyRecord } from '../record/record.ts';
import type { CsvCodeMapOptions } from './from-csv.ts';
import { meaningsOf } from './meanings.ts';
import { tableRows } from './table-rows.ts';

/** Parts of a mapping that say what the words of cells mean. */
export type WordTables = Pick<Mapping, 'words' | (typeof ownTables)[number]>;

/** Tables that a mapping has by these names; any other is one of its `words`. */
const ownTables = [
  ...['sides', 'methods', 'measureConditions', 'regions', 'modalities', 'units', 'noValue'],
] as const satisfies readonly (keyof Mapping)[];

const required = ['table', 'word', 'meaning'] as const;
const optional = ['reason', 'text'] as const;

/** How the table is read. */
export interface CsvWordOptions extends Pick<CsvCodeMapOptions, 'delimiter' | 'budget'> {
  /** Default: the built-in catalogue. */
  readonly catalogue?: Catalogue;
}

/**
 * Reads tables of words from delimited text with the columns table, word and meaning, and where needed
 * reason and text for a state such as `not-examined`. A table is named as targets of the mapping name it,
 * or as the mapping has it: `sides`, `methods`, `regions`, `units`, `modalities`, `measureConditions`,
 * `noValue`. A blank word is a blank cell.
 *
 * @param text The table, decoded, with its header line.
 * @param options `delimiter` (default a comma), `catalogue`, `budget`.
 * @returns The tables, to stand in a mapping. It fails where a column is missing or unknown, a word stands
 *   twice in a table, or a meaning is none that a field could have; issues hold the line, and the nearest
 *   meaning. Whether a target takes a meaning is told when the mapping is prepared.
 * @example
 * const tables = wordsFromCsv('table,word,meaning\nseen,Y,present\nseen,N,absent\nsides,re,right\n');
 */
export function wordsFromCsv(text: string, options: CsvWordOptions = {}): Outcome<WordTables> {
  return within(
    'codeMap',
    options.budget,
    () => readWords(text, options),
    (why) => failure([endedIssue(why)]),
  );
}

function readWords(
  text: string,
  { delimiter, catalogue = builtInCatalogue }: CsvWordOptions,
): Outcome<WordTables> {
  const rows = tableRows(text, { delimiter, required, optional });
  if (!rows.ok) return rows;
  const tables = new Map<string, Map<string, string | StateWithReason>>();
  const known = meaningsOf(catalogue);
  const issues: Issue[] = [];
  for (const record of rows.value) {
    const { table, word, meaning, reason, text: words } = rowOf(record);
    const found = meaningIssues(table, meaning, known, record);
    append(issues, found);
    const entries = tables.get(table) ?? new Map<string, string | StateWithReason>();
    tables.set(table, entries);
    if (entries.has(word)) {
      issues.push(issue('ambiguous-mapping', ['word'], { reason: 'word' }, { source: record.at }));
    }
    const state = { state: meaning, reason, ...(words !== '' && { text: words }) };
    // Whether it is a state, and its reason one, is told when the mapping is prepared.
    entries.set(word, reason === '' ? meaning : (state as StateWithReason));
  }
  return hasErrors(issues) ? failure(cutIssues(issues)) : success(asParts(tables), issues);
}

type Row = { readonly [Name in (typeof required)[number] | (typeof optional)[number]]: string };

function rowOf({ fields }: LegacyRecord): Row {
  const cells = new Map(fields.map(({ name, text }) => [name.toLowerCase(), text.trim()] as const));
  const cell = (name: keyof Row): string => cells.get(name) ?? '';
  return {
    table: cell('table'),
    word: cell('word'),
    meaning: cell('meaning'),
    reason: cell('reason'),
    text: cell('text'),
  };
}

function meaningIssues(
  table: string,
  meaning: string,
  known: ReturnType<typeof meaningsOf>,
  { at }: LegacyRecord,
): Issue[] {
  if (table === '') {
    return [
      issue(
        'missing-property',
        ['table'],
        { reason: 'exam-value', codes: ownTables },
        { source: at },
      ),
    ];
  }
  const allowed = table === 'units' ? unitCodes : (known.get(table) ?? known.get('words'));
  if (allowed === undefined || allowed.has(meaning)) return [];
  const near = nearest(meaning, allowed);
  return [issue('unknown-code', ['meaning'], { reason: 'meaning', near }, { source: at })];
}

const unitCodes: ReadonlySet<string> = new Set(units.map(({ code }) => code));

function asParts(
  tables: ReadonlyMap<string, ReadonlyMap<string, string | StateWithReason>>,
): WordTables {
  const own = new Set<string>(ownTables);
  const parts: { [name: string]: unknown } = {};
  const words: { [name: string]: unknown } = {};
  for (const [name, table] of tables) {
    (own.has(name) ? parts : words)[name] = Object.fromEntries(table);
  }
  // Held to the types of a mapping when it is prepared.
  return { ...parts, ...(Object.keys(words).length > 0 && { words }) } as WordTables;
}

/**
 * Puts tables of words into a mapping.
 *
 * @param mapping The mapping, whole or with a preset.
 * @param tables From `wordsFromCsv`.
 * @returns The mapping with the words; where both say what a word means, the mapping does.
 * @example
 * const whole = withWords(mapping, orThrow('read the words', wordsFromCsv(text)));
 */
export function withWords<Written extends object>(mapping: Written, tables: WordTables): Written {
  const joined: { [name: string]: unknown } = Object.fromEntries(Object.entries(mapping));
  for (const [name, table] of Object.entries(tables)) {
    joined[name] = merged(table, joined[name], name === 'words' ? 2 : 1);
  }
  return joined as object as Written; // the same with more words
}

function merged(below: unknown, above: unknown, depth: number): unknown {
  if (depth === 0 || !isPlainObject(below) || !isPlainObject(above)) return above ?? below;
  const result: { [name: string]: unknown } = { ...below };
  for (const [name, value] of Object.entries(above)) {
    result[name] = Object.hasOwn(below, name) ? merged(below[name], value, depth - 1) : value;
  }
  return result;
}
