import type { Exam } from '../../model/exam.ts';
import type { RecordStatus } from '../../model/record-event.ts';
import { compactTime } from './compact-time.ts';
import { valueText } from './csv.ts';
import type { FieldNames, LegacyFormat } from './format.ts';
import { type Head, headOf } from './head.ts';
import type { Item, ItemValue } from './item.ts';
import { itemsOfExam } from './items-of-exam.ts';
import { legacyMapping } from './legacy-mapping.ts';

const names: FieldNames = {
  source: { syntax: 'hl7v2' },
  head: {
    id: 'OBR-3',
    status: 'ZEX-1',
    worker: 'PID-3',
    otherNumber: 'PID-3',
    numberKind: { field: 'PID-3.4', worker: 'WORKERS', other: 'CARDS' },
    patient: 'PID-2',
    family: 'PID-5',
    given: 'PID-5.2',
    born: 'PID-7',
    sex: 'PID-8',
    // Table 0001 (code system v2-0001 of HL7 terminology 7.0.1).
    sexWords: { M: 'male', F: 'female', O: 'other', U: 'unknown' },
    start: 'OBR-7',
    end: 'OBR-8',
    recorded: 'MSH-7',
    examiner: 'OBR-32.1.2',
    examinerNumber: 'OBR-32',
    indication: 'OBR-13',
    conclusion: 'ZEX-2',
    concern: 'ZEX-3',
  },
  item: {
    kind: 'OBX',
    code: 'OBX-3',
    value: 'OBX-5',
    region: 'OBX-20',
    side: 'OBX-20.4',
    method: 'OBX-17',
    conditions: 'OBX-17.4',
    unit: 'OBX-6',
    at: 'OBX-14',
    group: 'OBX-4',
    note: 'NTE-3',
  },
  layout: ['OBR-4', 'OBR-4.2', 'OBR-4.3', 'OBR-25', 'PID-3.5', 'OBX-3.3'],
};

/** The nearest code of table 0123; the status itself stands in the local segment ZEX. */
const reportStatus: { readonly [Status in RecordStatus]: string } = {
  draft: 'P',
  preliminary: 'P',
  final: 'F',
  amended: 'C',
  corrected: 'C',
  appended: 'C',
  cancelled: 'X',
  'entered-in-error': 'C',
};

/**
 * An ORU^R01 message for each exam: PID, OBR, a local segment ZEX for what no standard segment has a
 * field for, and an OBX for each item with its remark as NTE.
 */
export const hl7v2Format: LegacyFormat = {
  mapping: () => legacyMapping(names),
  begin: '',
  end: '',
  exam: (exam) => {
    const segments = [
      ...headSegments(exam, headOf(exam)),
      ...itemsOfExam(exam).flatMap(itemSegments),
    ];
    return segments.map((one) => `${one}\r`).join('');
  },
};

function headSegments(exam: Exam, head: Head): string[] {
  const recorded = compactTime(head.recorded);
  const numbers = [
    head.worker && `${escaped(head.worker)}^^^WORKERS^PI`,
    head.otherNumber && `${escaped(head.otherNumber)}^^^CARDS^PI`,
  ];
  const examiner = `${escaped(head.examinerNumber)}&${escaped(head.examiner)}`;
  return [
    // MSH-1 is the separator itself, so that MSH-2 stands right behind the name.
    segment('MSH', {
      2: '^~\\&',
      3: 'CHECKS',
      4: 'HARBOUR',
      7: recorded,
      9: 'ORU^R01^ORU_R01',
      10: escaped(head.id),
      11: 'P',
      12: '2.5.1',
      18: 'UNICODE UTF-8',
    }).replace('MSH||', 'MSH|'),
    segment('PID', {
      1: '1',
      2: escaped(head.patient),
      3: numbers.filter(Boolean).join('~'),
      5: [head.family, head.given].some((part) => part !== undefined)
        ? `${escaped(head.family)}^${escaped(head.given)}`
        : undefined,
      7: head.born && compactTime(head.born),
      8: sexCode(head.sex),
    }),
    segment('OBR', {
      1: '1',
      3: escaped(head.id),
      4: '29545-1^Physical findings^LN',
      7: compactTime(head.start),
      8: head.end && compactTime(head.end),
      13: escaped(head.indication),
      25: reportStatus[exam.status],
      32: examiner === '&' ? '' : examiner,
    }),
    segment('ZEX', { 1: head.status, 2: escaped(head.conclusion), 3: head.concern }),
  ];
}

function sexCode(sex: string | undefined): string | undefined {
  return Object.entries(names.head.sexWords).find(([, meaning]) => meaning === sex)?.[0];
}

function itemSegments(item: Item, at: number): string[] {
  const { code, value, region, side, methods = [], conditions = [], group, note } = item;
  const number = String(at + 1);
  const observation = segment('OBX', {
    1: number,
    2: valueType(value),
    3: `${code}^^L`,
    4: group,
    5: observedValue(value),
    6: 'number' in value ? escaped(value.unit) : undefined,
    11: 'F',
    14: item.at && compactTime(item.at),
    17: [...methods, ...conditions.map((condition) => `^^^${condition}`)].join('~'),
    20: side === undefined ? region : `${region ?? ''}^^^${side}`,
  });
  return note === undefined ? [observation] : [observation, `NTE|1||${escaped(note)}`];
}

function valueType(value: ItemValue): string {
  if ('word' in value) return 'CWE';
  if ('text' in value) return 'FT';
  return 'number' in value && value.comparator !== undefined ? 'SN' : 'NM';
}

function observedValue(value: ItemValue): string {
  if ('number' in value && value.comparator !== undefined) {
    return `${value.comparator}^${value.number}`;
  }
  return escaped(valueText(value));
}

/** A segment with these fields; those after the last are left away. */
function segment(
  name: string,
  fields: { readonly [position: number]: string | undefined },
): string {
  const cells = [name];
  for (const [position, text] of Object.entries(fields)) cells[Number(position)] = text ?? '';
  return Array.from(cells, (text) => text ?? '')
    .join('|')
    .replace(/\|+$/, '');
}

const escapes: ReadonlyMap<string, string> = new Map([
  ['\\', '\\E\\'],
  ['|', '\\F\\'],
  ['^', '\\S\\'],
  ['&', '\\T\\'],
  ['~', '\\R\\'],
]);

/** A text as it may stand in a field. */
function escaped(text = ''): string {
  // Two quotation marks alone would say that the value is to be deleted.
  if (text.trim() === '""') return text.replace('""', '\\X2222\\');
  return text
    .replace(/[\\|^&~]/g, (mark) => escapes.get(mark) ?? mark)
    .replace(/\r\n?|\n/g, '\\.br\\');
}
