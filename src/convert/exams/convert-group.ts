import { append } from '../../data/append.ts';
import { spend } from '../../issues/budget.ts';
import { hasErrors, type Issue } from '../../issues/issue.ts';
import type { Exam } from '../../model/exam.ts';
import { divided } from '../cells/divide.ts';
import { examHead, type HeadResult } from '../head/exam-head.ts';
import { issue } from '../issue.ts';
import type { Plan } from '../mapping/plan.ts';
import type { Draft, TextDraft } from '../record/draft.ts';
import type { Field, RecordGroup } from '../record/record.ts';
import { recordDrafts } from '../record/record-drafts.ts';
import { markAlike, repeatedRecords, repeatIssue } from '../record/repeats.ts';
import { assemble, type Piece } from './assemble.ts';
import { type Ledger, type LedgerEntry, openLedger } from './ledger.ts';
import { isBlank } from './note.ts';
import { settle } from './settle.ts';

/** What became of the records of one exam. */
export interface ConvertedGroup {
  /** None: the records belong in quarantine, for the reasons among the issues. */
  readonly exam?: Exam;
  readonly issues: readonly Issue[];
  /** One entry for each field of the records. */
  readonly ledger: readonly LedgerEntry[];
}

/** The exam that the records of a group make, by the mapping. Every field is accounted for. */
export function convertGroup(all: RecordGroup, plan: Plan): ConvertedGroup {
  for (const { fields } of all.records) spend(fields.length);
  const ledger = openLedger(all.records);
  const told: Issue[] = [];
  const own = all.records.filter(({ aside }) => aside === undefined);
  const group = { ...all, records: divided(own, plan.operations, told) };
  const apart = all.records.flatMap(({ aside }) => aside ?? []);
  const issues: Issue[] = [...group.issues, ...apart, ...told, ...unreadable(group)];
  const found: HeadResult | undefined = hasErrors(issues)
    ? undefined
    : examHead(group.records, plan);
  append(issues, found?.issues ?? []);
  if (found?.head === undefined) return { issues, ledger: setAside(group, ledger) };

  const drafts = draftsOf(group, plan, ledger, issues);
  const pieces = assemble([...found.texts, ...drafts], issues);
  const settled = settle(found.head, pieces, plan.catalogue);
  append(issues, settled.issues);
  if (settled.exam === undefined) return { issues, ledger: setAside(group, ledger) };

  for (const field of found.administrative) ledger.mark(field, 'administrative');
  const inWords = new Set(found.texts.flatMap(({ fields }) => fields));
  for (const field of found.fields) if (!inWords.has(field)) ledger.mark(field, 'coded');
  for (const piece of pieces) markPiece(piece, settled.keys.get(piece), ledger);
  closeLedger(group, plan, ledger);
  return { exam: settled.exam, issues, ledger: ledger.entries() };
}

function unreadable({ records, issues }: RecordGroup): Issue[] {
  // What the splitter has told need not be told again.
  if (hasErrors(issues)) return [];
  if (records.some(({ malformed }) => malformed === undefined)) return [];
  const faults = records.flatMap(({ malformed }) => malformed ?? []);
  if (hasErrors(faults)) return faults;
  return [...faults, issue('malformed-record', [], { reason: 'no-record' })];
}

function setAside({ records }: RecordGroup, ledger: Ledger): LedgerEntry[] {
  for (const { fields } of records) for (const field of fields) ledger.mark(field, 'quarantined');
  return ledger.entries();
}

function draftsOf(
  { records }: RecordGroup,
  plan: Plan,
  ledger: Ledger,
  issues: Issue[],
): (Draft | TextDraft)[] {
  const drafts: (Draft | TextDraft)[] = [];
  const unmapped: Field[] = [];
  const repeats = repeatedRecords(records, plan.layout);
  for (const record of records) {
    if (repeats.has(record)) {
      issues.push(repeatIssue(record));
      continue;
    }
    const made = recordDrafts(record, plan);
    append(drafts, made.drafts);
    append(issues, made.issues);
    append(unmapped, made.unmapped);
    for (const field of made.blank) ledger.mark(field, 'blank');
    for (const field of made.layout) ledger.mark(field, 'layout');
    for (const field of made.administrative) ledger.mark(field, 'administrative');
  }
  append(issues, unmappedIssues(unmapped));
  return drafts;
}

function markPiece(piece: Piece, key: string | undefined, ledger: Ledger): void {
  const isText = 'text' in piece.content;
  for (const field of piece.fields) {
    ledger.mark(field, isText ? textFate(field) : 'coded', key);
  }
  for (const field of piece.told) ledger.mark(field, textFate(field), key);
}

function textFate(field: Field): 'blank' | 'verbatim' {
  return isBlank(field) ? 'blank' : 'verbatim';
}

function closeLedger({ records }: RecordGroup, plan: Plan, ledger: Ledger): void {
  for (const [record, first] of repeatedRecords(records, plan.layout))
    markAlike(record, first, ledger);
  for (const field of records.flatMap(({ fields }) => fields)) {
    if (isBlank(field)) ledger.mark(field, 'blank');
  }
}

/** Fields that a syntax itself names, such as OBX-5.1. */
const ownName = /^[A-Z][A-Z\d]{2}-\d{1,2}(?:\.\d{1,2})*$/;

/**
 * A name that no mapping has written may be a patient's words, as in a table without headings; its
 * place in the text leads to it.
 */
function shownField(name: string, place: number): string {
  return ownName.test(name) ? name : `[unmapped field ${place}]`;
}

/** One issue for each name, at its first place: the ledger has all places. */
function unmappedIssues(fields: readonly Field[]): Issue[] {
  const firsts = new Map<string, Field>();
  for (const field of fields) if (!firsts.has(field.name)) firsts.set(field.name, field);
  return [...firsts.values()].map((field, at) =>
    issue(
      'unmapped-field',
      [shownField(field.name, at + 1)],
      { reason: 'kept' },
      { severity: 'information', source: field.at },
    ),
  );
}
