import type { Issue } from '../../issues/issue.ts';
import type { Ledger } from '../exams/ledger.ts';
import { contentOf } from '../exams/note.ts';
import { issue } from '../issue.ts';
import type { LegacyRecord } from './record.ts';

/**
 * Records that repeat an earlier one of the same exam word for word, fields of mere layout apart,
 * each with the one it repeats.
 */
export function repeatedRecords(
  records: readonly LegacyRecord[],
  layout: ReadonlySet<string>,
): ReadonlyMap<LegacyRecord, LegacyRecord> {
  const repeats = new Map<LegacyRecord, LegacyRecord>();
  if (records.length < 2) return repeats;
  const firsts = new Map<string, LegacyRecord>();
  for (const record of records) {
    const said = record.fields.filter(({ name }) => !layout.has(name));
    const text = JSON.stringify([record.kind, ...said.map((one) => [one.name, contentOf(one)])]);
    const first = firsts.get(text);
    if (first === undefined) firsts.set(text, record);
    else repeats.set(record, first);
  }
  return repeats;
}

export function repeatIssue({ at, kind }: LegacyRecord): Issue {
  return issue('duplicate-record', [kind], { reason: 'same' }, { severity: 'warning', source: at });
}

/** A repeated record shares the fate of the one it repeats, field by field. */
export function markAlike(record: LegacyRecord, first: LegacyRecord, ledger: Ledger): void {
  const fates = new Map(
    first.fields.map((field) => [
      JSON.stringify([field.name, contentOf(field)]),
      ledger.fateOf(field),
    ]),
  );
  for (const field of record.fields) {
    const fate = fates.get(JSON.stringify([field.name, contentOf(field)]));
    // Fields of layout are the ones in which the two may differ.
    ledger.mark(field, fate ?? 'layout');
  }
}
