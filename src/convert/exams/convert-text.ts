import { append } from '../../data/append.ts';
import { bounds } from '../../issues/budget.ts';
import type { Issue } from '../../issues/issue.ts';
import type { Exam } from '../../model/exam.ts';
import { issue } from '../issue.ts';
import type { Plan } from '../mapping/plan.ts';
import type { RawUnit, Reader } from '../record/record.ts';
import { type ConvertedGroup, convertGroup } from './convert-group.ts';
import { addCounts, countFates, type LedgerCounts, type LedgerEntry, noFields } from './ledger.ts';
import { type QuarantineEntry, quarantineEntry } from './quarantine.ts';

/** An exam made from an export, with what is to be said about it. */
export interface ConvertedExam {
  readonly exam: Exam;
  /** About this exam alone. */
  readonly issues: readonly Issue[];
  /** One entry for each field of its records: what became of it. */
  readonly ledger: readonly LedgerEntry[];
}

/** Everything that became of a text. Each of its exams is in `exams` or in `quarantine`. */
export interface ConvertResult {
  readonly exams: readonly ConvertedExam[];
  /** Texts that could not become an exam, whole and with the reason. */
  readonly quarantine: readonly QuarantineEntry[];
  /** About the mapping and the text as a whole; those of single exams stand with them. */
  readonly issues: readonly Issue[];
  /** Fields of the text by what became of them: the fates sum to `fields`. */
  readonly ledger: LedgerCounts;
}

/** What became of units, one for one and in order. */
export function convertUnits(
  units: readonly RawUnit[],
  reader: Reader,
  plan: Plan,
): ConvertedGroup[] {
  return reader.read(units).map((group) => convertGroup(group, plan));
}

/** UTF-16 units of a text that are cut at once. */
const CUT = 1_000_000;

/**
 * Values of the budget that a record counts for: what an exam, its issues and its ledger have at least.
 * All of them stand in memory at once; `convert` of the command line takes any number.
 */
const VALUES_PER_RECORD = 40;

/** The units of a whole text in memory, or the issue that it has more than the budget has room for. */
export function unitsIn(
  text: string,
  cutter: Pick<Reader, 'splitter'>,
): readonly RawUnit[] | Issue {
  const maximum = Math.floor(bounds().values / VALUES_PER_RECORD);
  const splitter = cutter.splitter();
  const units: RawUnit[] = [];
  const isFull = (more: Iterable<RawUnit>): boolean => {
    append(units, more);
    return units.length > maximum;
  };
  const large = issue('too-large', [], { reason: 'records', maximum });
  for (let from = 0; from < text.length; from += CUT) {
    if (isFull(splitter.push(text.slice(from, from + CUT)))) return large;
  }
  return isFull(splitter.end()) ? large : units;
}

/**
 * Converts a whole text in memory, unless it has more records than the budget has room for.
 * @param further What is to be said of the records as a whole.
 */
export function convertRecords(
  text: string,
  cutter: Pick<Reader, 'splitter'>,
  convert: (units: readonly RawUnit[]) => readonly ConvertedGroup[],
  further: (units: readonly RawUnit[]) => readonly Issue[] = () => [],
): ConvertResult {
  const units = unitsIn(text, cutter);
  if ('code' in units) return { exams: [], quarantine: [], ledger: noFields, issues: [units] };
  return { ...collect(units, convert(units)), issues: further(units) };
}

/** The same by a reader and what its fields mean. */
export function convertText(text: string, reader: Reader, plan: Plan): ConvertResult {
  return convertRecords(text, reader, (units) => convertUnits(units, reader, plan));
}

/** What units became, as a whole; a second exam with an id of an earlier one goes to quarantine. */
export function collect(units: readonly RawUnit[], all: readonly ConvertedGroup[]): ConvertResult {
  const exams: ConvertedExam[] = [];
  const quarantine: QuarantineEntry[] = [];
  const ids = new Set<string>();
  let ledger = noFields;
  all.forEach((converted, at) => {
    const unit = units[at];
    if (unit === undefined) return;
    const { exam, issues, ledger: entries } = converted;
    const isRepeat = exam !== undefined && ids.has(exam.id);
    if (exam !== undefined && !isRepeat) {
      ids.add(exam.id);
      exams.push({ exam, issues, ledger: entries });
      ledger = addCounts(ledger, countFates(entries));
      return;
    }
    const told = isRepeat ? [...issues, repeatedExam(unit)] : issues;
    quarantine.push(quarantineEntry(unit, told, entries.length));
    ledger = addCounts(ledger, {
      ...noFields,
      fields: entries.length,
      quarantined: entries.length,
    });
  });
  return { exams, quarantine, issues: [], ledger };
}

/** Taking it too would overwrite the first, since resource ids come from exam ids. */
export function repeatedExam(unit: RawUnit): Issue {
  return issue(
    'duplicate-exam',
    ['id'],
    { reason: 'id' },
    {
      source: unit.at,
    },
  );
}
