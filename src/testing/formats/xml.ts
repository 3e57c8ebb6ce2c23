import { valueText } from './csv.ts';
import { type FieldNames, isoForms, type LegacyFormat } from './format.ts';
import { headOf } from './head.ts';
import type { Item } from './item.ts';
import { itemsOfExam } from './items-of-exam.ts';
import { legacyMapping } from './legacy-mapping.ts';
import { element } from './markup.ts';

const names: FieldNames = {
  source: { syntax: 'xml', exam: 'export/exam', items: ['item'] },
  head: {
    id: '@id',
    status: '@status',
    worker: 'worker/@no',
    otherNumber: 'worker/@no2',
    patient: 'worker/@patient',
    family: 'worker/family',
    given: 'worker/given',
    name: 'worker/name',
    born: 'worker/@born',
    sex: 'worker/@sex',
    sexWords: { male: 'male', female: 'female', other: 'other', unknown: 'unknown' },
    start: 'start',
    end: 'end',
    recorded: 'recorded',
    examiner: 'examiner',
    examinerNumber: 'examiner/@no',
    indication: 'indication',
    conclusion: 'conclusion',
    concern: 'conclusion/@concern',
  },
  item: {
    kind: 'item',
    code: 'item/@code',
    value: 'item/value',
    region: 'item/@region',
    side: 'item/@side',
    method: 'item/method',
    conditions: 'item/condition',
    unit: 'item/@unit',
    at: 'item/@at',
    group: 'item/@lesion',
    note: 'item/note',
  },
  layout: [],
  dateForms: isoForms,
};

/** An `export` of `exam` elements, with an `item` for each thing stated. */
export const xmlFormat: LegacyFormat = {
  mapping: () => legacyMapping(names),
  begin: '<?xml version="1.0" encoding="UTF-8"?>\n<export>\n',
  end: '</export>\n',
  exam: (exam) => {
    const head = headOf(exam);
    const worker = {
      no: head.worker,
      no2: head.otherNumber,
      patient: head.patient,
      born: head.born,
      sex: head.sex,
    };
    const parts = [
      element('worker', worker, [
        element('family', {}, head.family),
        element('given', {}, head.given),
        element('name', {}, head.name),
      ]),
      element('start', {}, head.start),
      element('end', {}, head.end),
      element('recorded', {}, head.recorded),
      element('examiner', { no: head.examinerNumber }, head.examiner),
      element('indication', {}, head.indication),
      element('conclusion', { concern: head.concern }, head.conclusion),
      ...itemsOfExam(exam).map(itemElement),
    ];
    return `${element('exam', { id: head.id, status: head.status }, parts)}\n`;
  },
};

function itemElement(item: Item): string {
  const { code, value, region, side, methods = [], conditions = [], at, group, note } = item;
  const unit = 'number' in value ? value.unit : undefined;
  return element('item', { code, region, side, unit, at, lesion: group }, [
    element('value', {}, valueText(value)),
    ...methods.map((method) => element('method', {}, method)),
    ...conditions.map((condition) => element('condition', {}, condition)),
    element('note', {}, note),
  ]);
}
