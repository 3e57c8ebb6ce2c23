import type { SourcePosition } from '../../issues/issue.ts';
import type { CellOperation } from '../mapping/cells.ts';
import type { Field, LegacyRecord } from '../record/record.ts';

/**
 * What became of a field. `coded`: it is in a coded statement or in the head of the exam.
 * `verbatim`: its text stands in a note. `blank`: it is empty, or a word that the mapping says stands
 * for nothing. `layout`: the mapping names it as mere order or type. `administrative`: it is about
 * the patient, the visit, the order or the document, and the exam has no place for it; only this
 * ledger tells it. `quarantined`: its record was set aside whole.
 */
export type Fate = 'coded' | 'verbatim' | 'blank' | 'layout' | 'administrative' | 'quarantined';

export interface LedgerEntry {
  readonly name: string;
  readonly at: SourcePosition;
  readonly fate: Fate;
  /** Key of the statement that holds it. */
  readonly statement?: string;
  /** A formula of a workbook, of which the value that the file holds was taken. */
  readonly origin?: Field['origin'] & {};
  /** Operations of the mapping that took it apart: what holds its parts is told for the first of them. */
  readonly operations?: readonly CellOperation['do'][];
}

export type LedgerCounts = { readonly [F in Fate]: number } & { readonly fields: number };

/** Of two fates of one field the higher counts: a field that is coded may stand in a note as well. */
const ranks: { readonly [F in Fate]: number } = {
  blank: 0,
  layout: 1,
  administrative: 2,
  verbatim: 3,
  coded: 4,
  quarantined: 5,
};

/** Keeps account of the fields of one exam. */
export interface Ledger {
  readonly mark: (field: Field, fate: Fate, statement?: string) => void;
  readonly fateOf: (field: Field) => Fate | undefined;
  readonly entries: () => LedgerEntry[];
}

export function openLedger(records: readonly LegacyRecord[]): Ledger {
  const fates = new Map<Field, { fate: Fate; statement?: string }>();
  const operations = new Map<Field, Set<CellOperation['do']>>();
  return {
    mark: (part, fate, statement) => {
      const field = part.of ?? part;
      if (part.by !== undefined) {
        operations.set(field, (operations.get(field) ?? new Set()).add(part.by));
      }
      const before = fates.get(field);
      if (before !== undefined && ranks[before.fate] >= ranks[fate]) return;
      fates.set(field, { fate, ...(statement !== undefined && { statement }) });
    },
    fateOf: (field) => fates.get(field.of ?? field)?.fate,
    entries: () =>
      records.flatMap(({ fields }) =>
        fields.map((field) => ({
          name: field.name,
          at: field.at,
          // A field that nobody took account of must not count as converted.
          ...(fates.get(field) ?? { fate: 'quarantined' }),
          ...(field.origin !== undefined && { origin: field.origin }),
          ...operationsOf(operations.get(field)),
        })),
      ),
  };
}

function operationsOf(
  used: ReadonlySet<CellOperation['do']> | undefined,
): Pick<LedgerEntry, 'operations'> {
  return used === undefined ? {} : { operations: [...used] };
}

export const noFields: LedgerCounts = {
  fields: 0,
  coded: 0,
  verbatim: 0,
  blank: 0,
  layout: 0,
  administrative: 0,
  quarantined: 0,
};

/** How many fields met each fate; the fates sum to `fields`. */
export function countFates(entries: readonly { readonly fate: Fate }[]): LedgerCounts {
  const counts = { ...noFields, fields: entries.length };
  for (const { fate } of entries) counts[fate] += 1;
  return counts;
}

export function addCounts(one: LedgerCounts, other: LedgerCounts): LedgerCounts {
  return {
    fields: one.fields + other.fields,
    coded: one.coded + other.coded,
    verbatim: one.verbatim + other.verbatim,
    blank: one.blank + other.blank,
    layout: one.layout + other.layout,
    administrative: one.administrative + other.administrative,
    quarantined: one.quarantined + other.quarantined,
  };
}
