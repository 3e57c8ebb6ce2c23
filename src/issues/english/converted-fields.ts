import type { SentenceTable } from '../facts.ts';

/** Sentences about fields of older exports and what a mapping makes of them. By code and reason. */
export const convertedFields = {
  'unattached-attribute': {
    finding: 'this does not describe exactly one present finding; it is kept as text',
  },
  'conflicting-fields': {
    names: 'the record has several names of the person, and does not mark one as the legal name',
    measure: 'the exam has different values for one measure; each is kept',
    head: 'the records of one exam differ in a field that must be the same in all of them',
    region: 'the region field and the mapping name different regions',
    'obr-final': ['OBR-25 is final and OBX-11 is not', 'F or C'],
    'several-fields': [
      'it cannot be determined which of several fields belongs to this value; it is kept as text',
      'the value and what belongs to it in one element, row or segment of their own',
    ],
  },
  'missing-field': {
    region: 'the record does not say which region this is about',
    modality: [
      'the record does not say how sensation was tested',
      'a modality in the mapping or a word for one in the modality field',
    ],
    'mapped-column': 'the mapping names a column that the table does not have',
    'exam-id': ['the record does not say which exam it belongs to', '{codes}'],
    'exam-status': 'the record does not state its status',
    subject: 'the record does not say who was examined',
    examiner: 'the record does not say who examined',
    'obx-11': ['OBX-11 does not say whether the value holds', 'OBX-11'],
    'performed-start': [
      'the record does not say when the exam started, in a form that the mapping states',
      '{codes?}',
    ],
    'recorded-missing': [
      'the record does not say when it was written, to the second and with its zone',
      '{codes?}',
    ],
  },
  'missing-property': {
    proposal: [
      'a confirmed proposal leaves this open',
      'what the sentence says, by whoever confirms it',
    ],
    'system-name': [
      'no name of the system stands before the id of the exam; another system may use the same id',
      'exam.prefix in the mapping',
    ],
    'resource-id': [
      'the report, or the first observation if there is no report, has no id; so the exam has none',
      'an id, or a fullUrl that ends in one',
    ],
    confirmed: ['a confirmation does not say who confirmed it, or when', 'by and at'],
    'item-kind': [
      'items of a CDA document need a kind, so that negated entries stay apart',
      'observation, negated-observation or another kind of entry',
    ],
    'exam-value': ['nothing states this', '{codes}'],
    region: 'neither the target nor a field states the region',
    modality: 'neither the target nor a field states the modality',
    'exam-element': [
      'the mapping must say which element of the export holds one exam',
      'the path of the element from the root, such as export/exam',
    ],
  },
  'other-section': {
    'set-aside': [
      'a section that is not a physical exam was set aside',
      'template {code} or LOINC {system}',
    ],
  },
  'unmapped-field': {
    kept: 'the mapping does not name this field; it is kept as text',
    'nothing-near-field': [
      'the catalogue has nothing with this name',
      'a target in fields, or the name in text or layout; perhaps {codes?}',
      'a target in fields, or the name in text or layout',
    ],
    'nothing-near-item': [
      'the catalogue has nothing with this name',
      'a target in the map of the items; perhaps {codes?}',
      'a target in the map of the items',
    ],
  },
  'unmapped-item': {
    kept: 'the mapping does not list this item; its record is kept as text',
  },
  'ambiguous-mapping': {
    column: [
      'an earlier column has the same name or overlaps this one',
      'one column for each place',
    ],
    'date-form': [
      'an earlier form reads a date in this form differently',
      'forms that cannot be mistaken for each other',
    ],
    'field-use': [
      'the mapping uses this field in {property} and in {code}',
      'one use for each field',
    ],
    word: 'this word matches another one of the table',
    'day-or-month': ['the sample does not tell the day from the month', '{codes} in dates.formats'],
  },
  'unresolved-key': {
    proposal: 'the sentence of a confirmed proposal is not at this place in a note of the exam',
    'proposal-exam': 'no exam of this run has the id that a confirmed proposal names',
    'word-table': 'the mapping has no word table with this name',
  },
  'blank-field': {
    unstated: [
      'the field is blank and the mapping does not say what that means',
      'the word "" in the words of the field or in noValue',
    ],
  },
} as const satisfies SentenceTable;
