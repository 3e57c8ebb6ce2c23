import { type FieldNames, type HeadNames, isoForms, type LegacyFormat } from './format.ts';
import { type Head, headOf } from './head.ts';
import type { Item, ItemValue } from './item.ts';
import { itemsOfExam } from './items-of-exam.ts';
import { legacyMapping } from './legacy-mapping.ts';

const names: FieldNames = {
  source: { syntax: 'csv', groupBy: ['exam'] },
  head: {
    id: 'exam',
    status: 'status',
    worker: 'worker',
    otherNumber: 'worker_2',
    patient: 'patient',
    family: 'family',
    given: 'given',
    name: 'name',
    born: 'born',
    sex: 'sex',
    sexWords: { male: 'male', female: 'female', other: 'other', unknown: 'unknown' },
    start: 'start',
    end: 'end',
    recorded: 'recorded',
    examiner: 'examiner',
    examinerNumber: 'examiner_no',
    indication: 'indication',
    conclusion: 'conclusion',
    concern: 'concern',
  },
  item: {
    code: 'item',
    value: 'value',
    region: 'region',
    side: 'side',
    method: 'method',
    conditions: 'condition',
    unit: 'unit',
    at: 'at',
    group: 'lesion',
    note: 'note',
  },
  layout: [],
  dateForms: isoForms,
};

const columns = [
  'id',
  'status',
  'worker',
  'otherNumber',
  'patient',
  'family',
  'given',
  'name',
  'born',
  'sex',
  'start',
  'end',
  'recorded',
  'examiner',
  'examinerNumber',
  'indication',
  'conclusion',
  'concern',
] as const satisfies (keyof Head & keyof HeadNames)[];

const headings = [...columns.map((part) => names.head[part] ?? ''), ...Object.values(names.item)];

/**
 * A long table: a row for each item, the head repeated in each, as reporting tools write it.
 * @see https://www.rfc-editor.org/rfc/rfc4180
 */
export const csvFormat: LegacyFormat = {
  mapping: () => legacyMapping(names),
  begin: row(headings),
  end: '',
  exam: (exam) => {
    const texts = headOf(exam);
    const head = columns.map((part) => texts[part]);
    const items = itemsOfExam(exam);
    // An exam in which nothing is stated still has a row.
    const rows = items.length === 0 ? [[]] : items.map(itemCells);
    return rows.map((cells) => row([...head, ...cells], headings.length)).join('');
  },
};

function itemCells(item: Item): (string | undefined)[] {
  const { code, value, region, side, methods, conditions, at, group, note } = item;
  const unit = 'number' in value ? value.unit : undefined;
  // A cell holds one word.
  return [
    code,
    valueText(value),
    region,
    side,
    methods?.[0],
    conditions?.[0],
    unit,
    at,
    group,
    note,
  ];
}

/** A value as one text, without its unit. */
export function valueText(value: ItemValue): string {
  if ('word' in value) return value.word;
  if ('text' in value) return value.text;
  if ('count' in value) return String(value.count);
  return `${value.comparator ?? ''}${value.number}`;
}

function row(cells: readonly (string | undefined)[], length: number = cells.length): string {
  const all = Array.from({ length }, (_none, at) => cells[at] ?? '');
  return `${all.map(cell).join(',')}\r\n`;
}

function cell(text: string): string {
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
