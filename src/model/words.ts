import type { FormWord } from '../issues/forms.ts';

/** What the primitive types of the exam accept. */
export const examForms: ReadonlyMap<string, FormWord> = new Map([
  ['Decimal', 'decimal-text'],
  ['DateTime', 'date-or-time'],
  ['Instant', 'time-with-zone'],
  ['PartialDate', 'partial-date'],
  ['Key', 'key'],
  ['Code', 'code'],
  ['Text', 'text-not-blank'],
  ['UnitCode', 'ucum-unit'],
  ['Uri', 'absolute-uri'],
  ['ExistingReference', 'reference'],
  ['Count', 'count'],
  ['ThresholdSetting', 'threshold'],
  ['Coding.code', 'coding-code'],
  ['Image.contentType', 'media-type'],
]);
