import { append } from '../../data/append.ts';
import type { Problem } from '../build/built.ts';
import { contentOf, fieldText, isBlank, recordText } from '../exams/note.ts';
import type { ItemRecords, Where } from '../mapping/mapping.ts';
import type { ItemPlan, Plan, PlannedTarget } from '../mapping/plan.ts';
import { fits } from './context.ts';
import type { Drafts } from './draft.ts';
import { fieldIssue, readTarget, type TargetInput, type TargetResult } from './read-target.ts';
import type { Field, LegacyRecord } from './record.ts';
import { type FoundRoles, filled, isWordingOf, rolesOf } from './roles.ts';

/** Everything that a record becomes, besides what the exam head takes from it. */
export interface RecordResult extends Drafts {
  readonly blank: Field[];
  readonly layout: Field[];
  /** About the patient, visit, order or document, and held by nothing in the exam. */
  readonly administrative: Field[];
  /** Fields that the mapping does not name. */
  readonly unmapped: Field[];
}

export function recordDrafts(record: LegacyRecord, plan: Plan): RecordResult {
  const result: RecordResult = {
    drafts: [],
    issues: [],
    blank: [],
    layout: [],
    administrative: [],
    unmapped: [],
  };
  if (record.malformed !== undefined) {
    const told = record.fields.filter((field) => !isApart(field, plan));
    append(
      result.administrative,
      record.fields.filter((field) => isApart(field, plan)),
    );
    result.drafts.push({ text: recordText(record, told), name: record.kind, fields: told });
    append(
      result.issues,
      record.malformed.map((found) => ({ ...found, severity: 'warning' as const })),
    );
    return result;
  }
  const free = record.fields.filter((field) => {
    if (plan.head.has(field.name)) return false;
    if (plan.layout.has(field.name)) result.layout.push(field);
    else if (isApart(field, plan)) result.administrative.push(field);
    else return true;
    return false;
  });
  const item = itemOf(record, free, plan);
  if (item === undefined) wideFields(record, free, plan, result);
  else itemFields(record, free, item, plan, result);
  return result;
}

/** The item that a record is, and whether a map lists it; none where it is no item. */
export function itemCodeOf(
  record: LegacyRecord,
  plan: Plan,
): { readonly code: string; readonly isListed: boolean } | undefined {
  const item = itemOf(record, record.fields, plan);
  if (item === undefined) return undefined;
  const code = codeOf(record, record.fields, item.records);
  return code === '' ? undefined : { code, isListed: item.map.has(code) };
}

/** A field about who took part, which the mapping takes for nothing. */
function isApart({ administrative, name }: Field, plan: Plan): boolean {
  return administrative === true && !plan.named.has(name);
}

/** Of several items that fit, the first that lists the code; else the first, to tell that it is not listed. */
function itemOf(record: LegacyRecord, free: readonly Field[], plan: Plan): ItemPlan | undefined {
  const fitting = plan.items.filter((one) => isItem(record, one.records));
  return fitting.find((one) => one.map.has(codeOf(record, free, one.records))) ?? fitting[0];
}

function codeOf(record: LegacyRecord, fields: readonly Field[], items: ItemRecords): string {
  const meant = fields.filter((field) => !isBlank(field) && isMeant(field, items, record));
  return items.code
    .map((name) => meant.find((field) => field.name === name)?.text.trim() ?? '')
    .join('|');
}

/** Whether the element or repetition of a field says what the item asks of it. */
function isMeant(
  field: Field,
  { codeWhere, valueWhere }: ItemRecords,
  record: LegacyRecord,
): boolean {
  return [codeWhere, valueWhere].every(
    (where) => where === undefined || !isBeside(field.name, where) || fits(field, where, record),
  );
}

/** Two attributes or components of one element or repetition. */
function isBeside(name: string, { field }: Where): boolean {
  return holderOf(name) === holderOf(field);
}

function holderOf(name: string): string {
  return name.replace(/(?:\/@[^/]*|\.\d+)$/, '');
}

function isItem(record: LegacyRecord, items: ItemRecords): boolean {
  const { kind, code, where, otherwise } = items;
  if (kind !== undefined && kind !== record.kind) return false;
  if (where !== undefined && !says(record, where)) return false;
  // A note needs no code, where the kind of its record is named.
  if (kind !== undefined && otherwise !== undefined) return true;
  return record.fields.some(
    (field) => code.includes(field.name) && !isBlank(field) && isMeant(field, items, record),
  );
}

function says(record: LegacyRecord, { field, is }: Where): boolean {
  const accepted = typeof is === 'string' ? [is] : is;
  const said = record.fields.filter(({ name }) => name === field);
  return said.length > 0 && said.every((one) => accepted.includes(contentOf(one).trim()));
}

function take(result: RecordResult, found: TargetResult): void {
  append(result.drafts, found.drafts);
  append(result.issues, found.issues);
  append(result.blank, found.blank);
}

/** Fields of their own: each is what its name says. */
function wideFields(
  record: LegacyRecord,
  free: readonly Field[],
  plan: Plan,
  result: RecordResult,
): void {
  const used = new Set<Field>();
  for (const field of free) {
    const planned = plan.fields.get(field.name);
    if (planned === undefined) continue;
    const input = wideInput(field, planned, record, plan);
    take(result, readTarget(input, plan));
    for (const one of [field, ...input.beside, ...input.notes]) used.add(one);
  }
  for (const field of free) {
    if (used.has(field)) continue;
    if (isBlank(field)) {
      result.blank.push(field);
      continue;
    }
    if (record.administrative && !plan.text.has(field.name) && !isClinical(field.name)) {
      result.administrative.push(field);
      continue;
    }
    result.drafts.push({ text: fieldText(field), name: field.name, fields: [field] });
    if (!plan.text.has(field.name) && !plan.companions.has(field.name)) result.unmapped.push(field);
  }
}

/**
 * Fields of administrative records that can hold what a clinician wrote: comments, relevant clinical
 * information and the reason for the study (HL7 v2 chapter 4, OBR-13 and OBR-31).
 */
function isClinical(name: string): boolean {
  return /^(?:NTE-3|OBR-(?:13|31)(?:\.|$))/.test(name);
}

function wideInput(
  value: Field,
  planned: PlannedTarget,
  record: LegacyRecord,
  plan: Plan,
): TargetInput {
  const found = rolesOf(planned.target, undefined, value, record, plan);
  const { roles, fields, notes } = found;
  return {
    planned,
    value,
    name: value.name,
    roles,
    beside: isBlank(value) ? [] : fields,
    notes,
    extras: [],
    text: () => [...new Set([value, ...fields, ...notes])].map(fieldText).join('\n'),
    isItem: false,
    ...refusals(value, found),
  };
}

/** Reasons in the fields around a value, and in those beside it, for which nothing can be coded. */
function refusals(
  value: Field,
  { unclear, wordings }: FoundRoles,
): Pick<TargetInput, 'refused' | 'wordings' | 'valueWordings'> {
  const own = value.contradicted || value.refused ? value : unclear;
  const refused = own && refusalOf(own);
  if (wordings.length === 0) return refused === undefined ? {} : { refused };
  const words = wordings.filter((field) => !isBlank(field)).map(contentOf);
  const valueWords = wordings.filter((field) => isWordingOf(field, value)).map(contentOf);
  return { ...(refused && { refused }), wordings: words, valueWordings: valueWords };
}

function refusalOf(field: Field): Problem {
  if (field.contradicted) return nullBeside;
  if (field.refused) return { problem: 'damaged-value', facts: { reason: field.refused } };
  return {
    problem: 'conflicting-fields',
    facts: { reason: 'several-fields' },
  };
}

const nullBeside: Problem = {
  problem: 'contradiction',
  facts: { reason: 'null-beside-value' },
};

/** A record that says in one field what another field means. */
function itemFields(
  record: LegacyRecord,
  free: readonly Field[],
  item: ItemPlan,
  plan: Plan,
  result: RecordResult,
): void {
  const present = free.filter((field) => {
    const said = !isBlank(field) || item.records.value === field.name;
    if (!said) result.blank.push(field);
    return said;
  });
  const isOfItem = (field: Field): boolean => isMeant(field, item.records, record);
  const codes = present.filter(
    (field) => item.records.code.includes(field.name) && isOfItem(field),
  );
  const code = codeOf(record, free, item.records);
  const said = present.filter((field) => !isBlank(field));
  const text = (): string => recordText(record, said);
  const planned = item.map.get(code) ?? item.otherwise;
  if (planned === undefined) {
    result.drafts.push({ text: text(), name: code, fields: said });
    append(result.blank, present.filter(isBlank));
    const [first] = codes;
    if (first !== undefined) {
      result.issues.push(fieldIssue('unmapped-item', first.name, first, { reason: 'kept' }));
    }
    return;
  }
  const values = present.filter((field) => field.name === item.records.value && isOfItem(field));
  const missing: Field = { name: item.records.value, text: '', at: record.at };
  const status = statusOf(item, record);
  if (status.unknown !== undefined) {
    result.issues.push(
      fieldIssue('unknown-word', status.unknown.name, status.unknown, { reason: 'item-status' }),
    );
  }
  const ambiguous =
    otherCode(codes, record) ??
    codes.find(({ contradicted, refused }) => contradicted ?? refused) ??
    // What was asked for by its place is one thing said once: two that differ cannot both be it.
    (item.records.valueWhere &&
      values.find((one) => contentOf(one) !== contentOf(values[0] ?? one)));
  const all = (values.length === 0 ? [missing] : values).map((value) => ({
    value,
    found: rolesOf(planned.target, item.records, value, record, plan),
  }));
  const used = all.map(({ found }) => found);
  const unreadable = new Map(
    used.flatMap((found) => found.unreadable.map((one) => [one.field, one] as const)),
  );
  for (const { field, problem, facts } of unreadable.values()) {
    result.issues.push(fieldIssue(problem, field.name, field, facts));
  }
  const beside = new Set(used.flatMap((found) => found.fields));
  const notes = new Set(used.flatMap((found) => found.notes));
  const known = new Set([...codes, ...beside, ...values, ...notes]);
  const extras = said.filter((field) => !known.has(field));
  append(
    result.unmapped,
    extras.filter(({ name }) => !plan.text.has(name)).filter((one) => !unreadable.has(one)),
  );
  // Several values that are each said of several sides: which goes with which is not told.
  const crossed =
    values.length > 1 && all.some(({ found }) => new Set(found.roles.sides).size > 1)
      ? values[0]
      : undefined;
  all.forEach(({ value, found }, at) => {
    const first = at === 0;
    const unclear = ambiguous ?? crossed ?? found.unclear;
    const input: TargetInput = {
      planned,
      value,
      name: code,
      roles: found.roles,
      ...(status.status !== undefined && { status: status.status }),
      beside: first ? [...codes, ...beside] : [],
      notes: first ? [...notes] : [],
      extras: first ? extras : [],
      text,
      isItem: true,
      ...refusals(value, { ...found, ...(unclear && { unclear }) }),
    };
    take(result, readTarget(input, plan));
  });
}

/** A second field of the name that says what the record is about, with another text. */
function otherCode(codes: readonly Field[], record: LegacyRecord): Field | undefined {
  if (record.kind === 'row') return undefined;
  return codes.find((field) =>
    codes.some((other) => other.name === field.name && contentOf(other) !== contentOf(field)),
  );
}

function statusOf(
  item: ItemPlan,
  record: LegacyRecord,
): { status?: TargetInput['status'] & {}; unknown?: Field } {
  const [field, ...more] = filled(record, item.records.status?.from);
  if (field === undefined) return {};
  const status = item.statuses.get(contentOf(field));
  const differs = more.some((other) => contentOf(other) !== contentOf(field));
  return status === undefined || differs || field.refused
    ? { status: 'text', unknown: field }
    : { status };
}
