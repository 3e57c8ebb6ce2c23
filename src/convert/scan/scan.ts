import { type BudgetOption, within } from '../../issues/budget.ts';
import type { Issue } from '../../issues/issue.ts';
import { endedIssue, longTextIssues } from '../../issues/issue-list.ts';
import { builtInCatalogue, type Catalogue } from '../../terminology/catalogue.ts';
import type { Source } from '../mapping/source.ts';
import { readerFor } from '../reader-for.ts';
import { guessSource } from '../suggest/guess/guess-source.ts';
import { readSample, type Sample } from '../suggest/guess/sample.ts';
import { itemNamesOf } from '../suggest/names/head-names.ts';
import { phraseIndex } from '../suggest/names/phrase-index.ts';
import type { Proposal } from '../suggest/proposal.ts';
import {
  itemsOf,
  type Suggestion,
  suggestFor,
  withoutExamElement,
} from '../suggest/suggest-mapping.ts';
import { type LanguageCount, languagesOf } from './languages.ts';
import { hasNoHeadings } from './no-headings.ts';
import { type ScannedField, scanField } from './scan-field.ts';

export interface ScanOptions {
  /** How the export is read. Default: as its beginning shows, with delimiter and grouping of CSV. */
  readonly source?: Source;
  /** List the most frequent values of fields: they can be patient data. Default false. */
  readonly values?: boolean;
  /** Default: the built-in catalogue. */
  readonly catalogue?: Catalogue;
  /** What the call may take; default `budgets.legacy`. */
  readonly budget?: BudgetOption;
}

/** What an export holds, before anything is mapped. */
export interface Scan {
  readonly source: Source;
  /** Exams and records that were looked at, and records that could not be read. */
  readonly exams: number;
  readonly records: number;
  readonly unread: number;
  /** The first row of the table looks like data: columns are called by their place, `#1`. */
  readonly headless: boolean;
  /** In the order of the export; the items of a table of items behind them. */
  readonly fields: readonly ScannedField[];
  /** Words of names and answers that the lexicon has in one language alone. */
  readonly languages: readonly LanguageCount[];
  /** What each field and item could be, with score, reasons and questions. */
  readonly proposals: readonly Proposal[];
  /** Names of fields and items that hold something and for which nothing is proposed. */
  readonly leftovers: readonly string[];
  readonly issues: readonly Issue[];
}

/**
 * Looks at an export before there is a mapping: its fields, how they are filled, what their values look
 * like and how often the commonest come, likely dates and sides, languages, and a proposal for each
 * field. Values stand in the result only where that is asked for, and never those of fields that say who
 * somebody is. A side, a denial, a unit or the order of day and month is never decided.
 *
 * @param text The export or its beginning, decoded.
 * @param options How it is read, and whether values are listed.
 * @returns What was found. A text that holds nothing readable gives no fields.
 * @example
 * const { fields, leftovers } = scanExport(text);
 * console.log(fields.length, 'fields,', leftovers.length, 'without a proposal');
 */
export function scanExport(text: string, options: ScanOptions = {}): Scan {
  const source = options.source ?? { syntax: 'csv' };
  return within(
    'legacy',
    options.budget,
    () => scanned(text, options),
    (why) => ({ ...nothing(source), issues: [endedIssue(why)] }),
  );
}

function scanned(text: string, options: ScanOptions): Scan {
  const long = longTextIssues(text);
  if (long.length > 0) return { ...nothing(options.source ?? { syntax: 'csv' }), issues: long };
  const source = options.source ?? guessSource(text);
  if (source.syntax === 'xml' && source.exam === '') {
    return { ...nothing(source), issues: withoutExamElement(source).issues };
  }
  const first = readSample(text, readerFor(source));
  const headless = hasNoHeadings(source, first);
  if (!headless) return scanOf(first, source, false, options);
  // Read again with places as names, so that the row counts as the data that it is.
  const places = [...first.fields.keys()].map((_, at) => `#${at + 1}`);
  const numbered = { ...source, header: places } as Source; // only a table has no headings
  return scanOf(readSample(text, readerFor(numbered)), numbered, true, options);
}

function scanOf(sample: Sample, source: Source, headless: boolean, options: ScanOptions): Scan {
  const catalogue = options.catalogue ?? builtInCatalogue;
  const show = options.values ?? false;
  const suggestion = suggestFor(sample, source, { catalogue });
  const { proposals, issues } = show ? suggestion : withoutWords(suggestion);
  const known = new Map(proposals.map((one) => [`${one.of} ${one.name}`, one]));
  const fields = [...sample.fields.values()];
  const { respell } = phraseIndex(catalogue);
  const items = itemNamesOf(source, fields, respell).flatMap((roles) =>
    [...itemsOf(roles, sample)].map(([name, { words }]) => ({
      ...{ name, texts: words, words: [...new Set(words)], blanks: 0 },
    })),
  );
  const scannedFields = [
    ...fields.map((field) => scanField(field, 'field', known.get(`field ${field.name}`), show)),
    ...items.map((item) => scanField(item, 'item', known.get(`item ${item.name}`), show)),
  ];
  return {
    source,
    exams: sample.exams,
    records: sample.records.length,
    unread: sample.unread,
    headless,
    fields: scannedFields,
    languages: languagesOf([...fields, ...items], catalogue),
    proposals,
    leftovers: scannedFields
      .filter(({ filled, placed }) => filled > 0 && !placed)
      .map(({ name }) => name),
    issues,
  };
}

/** Without the answers of the export: these are values too. */
function withoutWords({ proposals, issues }: Suggestion): Pick<Scan, 'proposals' | 'issues'> {
  const fieldIssues = issues.map((one) =>
    one.code === 'unknown-word' ? { ...one, path: one.path.slice(0, 1) } : one,
  );
  const seen = new Set<string>();
  return {
    proposals: proposals.map((one) =>
      one.target !== undefined && 'words' in one.target
        ? { ...one, target: { ...one.target, words: {} } }
        : one,
    ),
    issues: fieldIssues.filter(({ code, path }) => {
      const key = JSON.stringify([code, path]);
      return !seen.has(key) && seen.add(key) !== undefined;
    }),
  };
}

function nothing(source: Source): Omit<Scan, 'issues'> {
  return {
    source,
    ...{ exams: 0, records: 0, unread: 0, headless: false },
    ...{ fields: [], languages: [], proposals: [], leftovers: [] },
  };
}
