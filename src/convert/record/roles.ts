import { append } from '../../data/append.ts';
import { targetConversion } from '../../kinds/registries/conversions.ts';
import { contentOf, isBlank } from '../exams/note.ts';
import type { ConversionFacts } from '../issue.ts';
import type { DateField, ItemRecords, SourceField } from '../mapping/mapping.ts';
import type { Plan } from '../mapping/plan.ts';
import type { Target } from '../mapping/target.ts';
import type { DateProblem } from '../values/date.ts';
import { type Beside, besideValue, isAround } from './context.ts';
import type { Roles } from './place.ts';
import type { Field, LegacyRecord } from './record.ts';

export interface FoundRoles {
  readonly roles: Roles;
  /** Fields that the roles come from. */
  readonly fields: readonly Field[];
  readonly notes: readonly Field[];
  /** Fields that have a role but cannot be read; they are to stand as text. */
  readonly unreadable: readonly Unreadable[];
  /** It cannot be told which of several fields belongs to the value: nothing is coded. */
  readonly unclear?: Field;
  /** The sender's words for the codes that were taken. */
  readonly wordings: readonly Field[];
}

export interface Unreadable {
  readonly field: Field;
  readonly problem: DateProblem;
  readonly facts: ConversionFacts<DateProblem>;
}

/**
 * What the fields around a value say about it, as the target and the item name them. Sides, methods
 * and conditions can be several; of all others one is taken, and none where they differ.
 */
export function rolesOf(
  target: Target,
  item: ItemRecords | undefined,
  value: Field,
  record: LegacyRecord,
  plan: Plan,
): FoundRoles {
  const from = target as Companions; // every target has some of these, and no other use for the names
  if (item === undefined && isAlone(from, record)) return noRoles;
  const fields: Field[] = [];
  let unclear: Field | undefined;
  const beside = (name: SourceField | undefined, many?: 'many'): Beside => {
    const found = name === undefined ? nothing : besideValue(name, value, record, many);
    const wrong = found.unclear ? found.fields[0] : found.fields.find(cannotBeTaken);
    unclear ??= wrong;
    append(fields, found.fields);
    append(fields, found.tests);
    return found;
  };
  const one = (name: SourceField | undefined): Field | undefined => {
    const found = beside(name);
    const [first, ...more] = found.fields;
    const text = first && contentOf(first).trim();
    if (more.some((other) => contentOf(other).trim() !== text)) unclear ??= first;
    return first;
  };
  const role = <Name extends 'region' | 'modality' | 'unit' | 'group'>(
    key: Name,
    name: SourceField | undefined,
  ): { readonly [key in Name]?: string } => {
    const field = one(name);
    if (field === undefined) return {};
    // A computed property has a wider type than its one key.
    return { [key]: contentOf(field).trim() } as { readonly [key in Name]?: string };
  };
  const every = (name: SourceField | undefined, many?: 'many'): readonly string[] | undefined => {
    const found = beside(name, many).fields;
    return found.length === 0 ? undefined : found.map((field) => contentOf(field).trim());
  };
  const methods = every(from.methodFrom ?? item?.method, 'many');
  const takesConditions = targetConversion(target).conditions;
  const conditions = takesConditions ? every(item?.conditions, 'many') : undefined;
  const sides = every(from.sideFrom ?? item?.side);
  const roles = {
    ...(methods !== undefined && { methods }),
    ...(conditions !== undefined && { conditions }),
    ...(sides !== undefined && { sides }),
    ...role('region', item?.region),
    ...role('modality', item?.modality),
    ...role('unit', from.unitFrom ?? item?.unit),
    ...role('group', item?.group),
  };
  one(item?.status?.from);
  const asked = record.fields.filter(({ name }) => item?.code.includes(name));
  const coded = [value, ...fields, ...asked];
  const wordings = record.fields.filter(
    (field) => field.wording && coded.some((code) => isWordingOf(field, code)),
  );
  const noteName = from.noteFrom ?? item?.note;
  const notes = noteName === undefined ? nothing : besideValue(noteName, value, record, 'many');
  if (notes.unclear) unclear ??= notes.fields[0];
  const at = item?.at === undefined ? undefined : timeOf(item.at, one, plan);
  // A time that cannot be read is told as text, not as a part of what is stated.
  const untold = new Set((at?.unreadable ?? []).map(({ field }) => field));
  return {
    roles: { ...roles, ...(at?.value !== undefined && { at: at.value }) },
    fields: fields.filter((field) => !untold.has(field)),
    notes: notes.fields,
    unreadable: at?.unreadable ?? [],
    wordings,
    ...(unclear !== undefined && { unclear }),
  };
}

const noRoles: FoundRoles = { roles: {}, fields: [], notes: [], unreadable: [], wordings: [] };

/** Whether nothing in the record can say more about a value of this target, as in most tables. */
function isAlone(target: Companions, { fields }: LegacyRecord): boolean {
  return (
    companionNames.every((name) => target[name] === undefined) &&
    !fields.some(({ wording }) => wording)
  );
}

const nothing: Beside = { fields: [], tests: [], unclear: false };

/** Words in the scope of a code, around it, or in an element just below it. */
export function isWordingOf(words: Field, code: Field): boolean {
  if (words.scope === undefined || code.scope === undefined) return false;
  return isAround(words.scope, code.scope) || words.scope.parent === code.scope;
}

interface Companions {
  readonly sideFrom?: SourceField;
  readonly methodFrom?: SourceField;
  readonly unitFrom?: SourceField;
  readonly noteFrom?: SourceField;
}

/** A record of all of them, so that none can be read above and forgotten here. */
const companions: { readonly [Name in keyof Companions]-?: true } = {
  sideFrom: true,
  methodFrom: true,
  unitFrom: true,
  noteFrom: true,
};
const companionNames = Object.keys(companions) as readonly (keyof Companions)[]; // its own keys

interface Time {
  readonly value?: string;
  readonly unreadable: readonly Unreadable[];
}

function timeOf(
  dateField: DateField,
  find: (name: SourceField | undefined) => Field | undefined,
  plan: Plan,
): Time {
  const { from, time } =
    typeof dateField === 'string' ? { from: dateField, time: undefined } : dateField;
  const dates = typeof from === 'string' ? [from] : from;
  const date = dates.map((name) => find(name)).find((found) => found !== undefined);
  const fields = [date, find(time)].filter((field) => field !== undefined);
  if (fields.length === 0) return { unreadable: [] };
  const text = fields.map((field) => contentOf(field).trim()).join(' ');
  const { value, problem, codes } = plan.dates(dateField)(text);
  if (problem === undefined && value !== undefined) return { value, unreadable: [] };
  const unreadable = fields.map((field) => ({
    field,
    problem: problem ?? ('unreadable-date' as const),
    facts: { reason: 'item' as const, codes },
  }));
  return { unreadable };
}

/** Fields of a record that hold something, by their name. */
export function filled(record: LegacyRecord, name: string | undefined): Field[] {
  return name === undefined
    ? []
    : record.fields.filter((field) => field.name === name && !isBlank(field));
}

function cannotBeTaken({ contradicted, refused }: Field): boolean {
  return contradicted === true || refused !== undefined;
}
