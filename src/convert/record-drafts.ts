import type { Drafts } from './draft.ts';
import type { ItemRecords } from './mapping.ts';
import { contentOf, fieldText, isBlank, recordText } from './note.ts';
import type { ItemPlan, Plan, PlannedTarget } from './plan.ts';
import { fieldIssue, readTarget, type TargetInput, type TargetResult } from './read-target.ts';
import type { Field, LegacyRecord } from './record.ts';
import { rolesOf } from './roles.ts';

/** Everything that a record becomes, besides what the exam head takes from it. */
export interface RecordResult extends Drafts {
  readonly blank: Field[];
  readonly layout: Field[];
  /** Fields that the mapping does not name. */
  readonly unmapped: Field[];
}

export function recordDrafts(record: LegacyRecord, plan: Plan): RecordResult {
  const result: RecordResult = { drafts: [], issues: [], blank: [], layout: [], unmapped: [] };
  if (record.malformed !== undefined) {
    const text = recordText(record, record.fields);
    result.drafts.push({ text, name: record.kind, fields: record.fields });
    result.issues.push(
      ...record.malformed.map((found) => ({ ...found, severity: 'warning' as const })),
    );
    return result;
  }
  const free = record.fields.filter((field) => {
    if (plan.layout.has(field.name)) result.layout.push(field);
    return !plan.layout.has(field.name) && !plan.head.has(field.name);
  });
  const item = itemOf(record, free, plan);
  if (item === undefined) wideFields(record, free, plan, result);
  else itemFields(record, free, item, plan, result);
  return result;
}

/** Of several items that fit, the first that lists the code; else the first, to tell that it is not listed. */
function itemOf(record: LegacyRecord, free: readonly Field[], plan: Plan): ItemPlan | undefined {
  const fitting = plan.items.filter((one) => isItem(record, one.records));
  return fitting.find((one) => one.map.has(codeOf(free, one.records))) ?? fitting[0];
}

function codeOf(fields: readonly Field[], { code }: ItemRecords): string {
  return code
    .map(
      (name) => fields.find((field) => field.name === name && !isBlank(field))?.text.trim() ?? '',
    )
    .join('|');
}

function isItem(record: LegacyRecord, { kind, code }: ItemRecords): boolean {
  if (kind !== undefined && kind !== record.kind) return false;
  return record.fields.some((field) => code.includes(field.name) && !isBlank(field));
}

function take(result: RecordResult, found: TargetResult): void {
  result.drafts.push(...found.drafts);
  result.issues.push(...found.issues);
  result.blank.push(...found.blank);
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
    for (const one of [field, ...input.beside, ...(input.note ? [input.note] : [])]) used.add(one);
  }
  for (const field of free) {
    if (used.has(field)) continue;
    if (isBlank(field)) {
      result.blank.push(field);
      continue;
    }
    result.drafts.push({ text: fieldText(field), name: field.name, fields: [field] });
    if (!plan.text.has(field.name) && !plan.companions.has(field.name)) result.unmapped.push(field);
  }
}

function wideInput(
  value: Field,
  planned: PlannedTarget,
  record: LegacyRecord,
  plan: Plan,
): TargetInput {
  const { roles, fields, note } = rolesOf(planned.target, undefined, record, plan);
  return {
    planned,
    value,
    name: value.name,
    roles,
    beside: isBlank(value) ? [] : fields,
    ...(note !== undefined && { note }),
    extras: [],
    text: [value, ...fields, ...(note ? [note] : [])].map(fieldText).join('\n'),
    isItem: false,
  };
}

/** A record that says in one field what another field means. */
function itemFields(
  record: LegacyRecord,
  free: readonly Field[],
  item: ItemPlan,
  plan: Plan,
  result: RecordResult,
): void {
  const filled = free.filter((field) => {
    const said = !isBlank(field) || item.records.value === field.name;
    if (!said) result.blank.push(field);
    return said;
  });
  const codes = filled.filter((field) => item.records.code.includes(field.name));
  const code = codeOf(free, item.records);
  const said = filled.filter((field) => !isBlank(field));
  const text = recordText(record, said);
  const planned = item.map.get(code);
  if (planned === undefined) {
    result.drafts.push({ text, name: code, fields: said });
    result.blank.push(...filled.filter(isBlank));
    const [first] = codes;
    if (first !== undefined) {
      const message = 'the mapping does not list this item; its record is kept as text';
      result.issues.push(fieldIssue('unmapped-item', first.name, first, message));
    }
    return;
  }
  const { roles, fields, note, unreadable } = rolesOf(planned.target, item.records, record, plan);
  for (const { field, message, problem, expected } of unreadable) {
    result.issues.push(fieldIssue(problem, field.name, field, message, expected));
  }
  const values = filled.filter((field) => field.name === item.records.value);
  const known = new Set([...codes, ...fields, ...values, ...(note ? [note] : [])]);
  const extras = said.filter((field) => !known.has(field));
  const told = new Set([...unreadable.map(({ field }) => field)]);
  result.unmapped.push(
    ...extras.filter(({ name }) => !plan.text.has(name)).filter((one) => !told.has(one)),
  );
  const missing: Field = { name: item.records.value, text: '', at: record.at };
  const status = statusOf(item, record);
  if (status.unknown !== undefined) {
    const message = 'the mapping does not list this status; the record is kept as text';
    result.issues.push(fieldIssue('unknown-word', status.unknown.name, status.unknown, message));
  }
  (values.length === 0 ? [missing] : values).forEach((value, at) => {
    const first = at === 0;
    const input: TargetInput = {
      planned,
      value,
      name: code,
      roles,
      ...(status.status !== undefined && { status: status.status }),
      beside: first ? [...codes, ...fields] : [],
      ...(first && note !== undefined && { note }),
      extras: first ? extras : [],
      text,
      isItem: true,
    };
    take(result, readTarget(input, plan));
  });
}

function statusOf(
  item: ItemPlan,
  record: LegacyRecord,
): { status?: TargetInput['status'] & {}; unknown?: Field } {
  const name = item.records.status?.from;
  const field = record.fields.find((one) => one.name === name && !isBlank(one));
  if (field === undefined) return {};
  const status = item.statuses.get(contentOf(field));
  return status === undefined ? { status: 'text', unknown: field } : { status };
}
