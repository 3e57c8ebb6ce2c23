import type { IssueCode } from '../issue.ts';
import { targetConversion } from '../kinds/conversions.ts';
import type { DateField, FieldName, ItemRecords } from './mapping.ts';
import { contentOf, isBlank } from './note.ts';
import type { Roles } from './place.ts';
import type { Plan } from './plan.ts';
import type { Field, LegacyRecord } from './record.ts';
import type { Target } from './target.ts';

export interface FoundRoles {
  readonly roles: Roles;
  /** Fields that the roles come from. */
  readonly fields: readonly Field[];
  readonly note?: Field;
  /** Fields that have a role but can not be read; they are to stand as text. */
  readonly unreadable: readonly Unreadable[];
}

export interface Unreadable {
  readonly field: Field;
  readonly problem: IssueCode;
  readonly message: string;
  readonly expected?: string;
}

/** What the fields beside a value say about it, as the target and the item name them. */
export function rolesOf(
  target: Target,
  item: ItemRecords | undefined,
  record: LegacyRecord,
  plan: Plan,
): FoundRoles {
  const fields: Field[] = [];
  const find = (name: FieldName | undefined): Field | undefined =>
    name === undefined
      ? undefined
      : record.fields.find((field) => field.name === name && !isBlank(field));
  const role = <Name extends Exclude<keyof Roles, 'methods' | 'conditions'>>(
    key: Name,
    name: FieldName | undefined,
  ): { readonly [key in Name]?: string } => {
    const field = find(name);
    if (field === undefined) return {};
    fields.push(field);
    // A computed property has a wider type than its one key.
    return { [key]: contentOf(field).trim() } as { readonly [key in Name]?: string };
  };
  const every = (name: FieldName | undefined): readonly string[] | undefined => {
    const all = record.fields.filter((field) => field.name === name && !isBlank(field));
    fields.push(...all);
    return all.length === 0 ? undefined : all.map((field) => contentOf(field).trim());
  };
  const from = target as Companions; // every target has some of these, and no other use for the names
  const methods = every(from.methodFrom ?? item?.method);
  const conditions = targetConversion(target).conditions ? every(item?.conditions) : undefined;
  const roles = {
    ...(methods !== undefined && { methods }),
    ...(conditions !== undefined && { conditions }),
    ...role('side', from.sideFrom ?? item?.side),
    ...role('region', item?.region),
    ...role('modality', item?.modality),
    ...role('unit', from.unitFrom ?? item?.unit),
    ...role('group', item?.group),
  };
  const status = find(item?.status?.from);
  if (status !== undefined) fields.push(status);
  const note = find(target.noteFrom ?? item?.note);
  const at = item?.at === undefined ? undefined : timeOf(item.at, find, plan);
  if (at?.value !== undefined) fields.push(...at.fields);
  return {
    roles: { ...roles, ...(at?.value !== undefined && { at: at.value }) },
    fields,
    ...(note !== undefined && { note }),
    unreadable: at?.unreadable ?? [],
  };
}

interface Companions {
  readonly sideFrom?: FieldName;
  readonly methodFrom?: FieldName;
  readonly unitFrom?: FieldName;
}

interface Time {
  readonly value?: string;
  readonly fields: readonly Field[];
  readonly unreadable: readonly Unreadable[];
}

function timeOf(
  dateField: DateField,
  find: (name: FieldName | undefined) => Field | undefined,
  plan: Plan,
): Time {
  const { from, time } =
    typeof dateField === 'string' ? { from: dateField, time: undefined } : dateField;
  const fields = [find(from), find(time)].filter((field) => field !== undefined);
  if (fields.length === 0) return { fields, unreadable: [] };
  const text = fields.map((field) => contentOf(field).trim()).join(' ');
  const { value, problem, expected } = plan.dates(dateField)(text);
  if (problem === undefined && value !== undefined) return { value, fields, unreadable: [] };
  const unreadable = fields.map((field) => ({
    field,
    problem: problem ?? ('unreadable-date' as const),
    message: 'the time of the item can not be read; it is kept as text',
    ...(expected !== undefined && { expected }),
  }));
  return { fields, unreadable };
}
