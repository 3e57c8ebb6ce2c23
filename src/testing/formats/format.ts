import type { FieldName, Mapping } from '../../convert/mapping/mapping.ts';
import type { Source } from '../../convert/mapping/source.ts';
import type { Exam } from '../../model/exam.ts';

/** Formats of older systems that sample exams can be written in. */
export type LegacyFormatName = 'csv' | 'hl7v2' | 'xml' | 'cda';

/**
 * An invented export in one format: how exams are written in it, and the mapping that reads them.
 * The text of several exams is `begin`, each exam, and `end`.
 */
export interface LegacyFormat {
  readonly mapping: () => Mapping;
  readonly begin: string;
  readonly exam: (exam: Exam) => string;
  readonly end: string;
}

/** Where a format has what a mapping asks for. */
export interface FieldNames {
  readonly source: Source;
  readonly head: HeadNames;
  readonly item: ItemNames;
  readonly layout: readonly FieldName[];
  /** Forms of dates, where the format has none of its own. */
  readonly dateForms?: readonly string[];
}

/** Dates and times as the model has them. @see ISO 8601 */
export const isoForms = ['YYYY', 'YYYY-MM', 'YYYY-MM-DD', 'YYYY-MM-DDTHH:mm:ssZ'] as const;

/** Field of each part of the exam head; a format without a place for a part leaves it out. */
export interface HeadNames {
  readonly id: FieldName;
  readonly status: FieldName;
  readonly worker: FieldName;
  /** Second number of the worker. */
  readonly otherNumber?: FieldName;
  /** Field and texts that tell the two numbers apart where both stand in fields of one name. */
  readonly numberKind?: {
    readonly field: FieldName;
    readonly worker: string;
    readonly other: string;
  };
  readonly patient: FieldName;
  readonly family: FieldName;
  readonly given: FieldName;
  readonly name?: FieldName;
  readonly born: FieldName;
  readonly sex: FieldName;
  readonly sexWords: { readonly [word: string]: 'male' | 'female' | 'other' | 'unknown' };
  readonly start: FieldName;
  readonly end: FieldName;
  readonly recorded: FieldName;
  readonly examiner: FieldName;
  readonly examinerNumber: FieldName;
  readonly indication: FieldName;
  readonly conclusion: FieldName;
  readonly concern: FieldName;
}

/** Field of each part of an item. */
export interface ItemNames {
  /** Kinds of record that items are; one where a format has only one kind of record. */
  readonly kind?: string;
  readonly code: FieldName;
  readonly value: FieldName;
  readonly region: FieldName;
  readonly side: FieldName;
  readonly method: FieldName;
  readonly conditions: FieldName;
  readonly unit: FieldName;
  readonly at: FieldName;
  readonly group: FieldName;
  readonly note: FieldName;
}
