import type { Conclusion } from '../../model/conclusion.ts';
import type { Organization } from '../../model/people.ts';
import type { Code, Instant, Key, Text, Uri } from '../../model/primitive.ts';
import type { RecordStatus } from '../../model/record-event.ts';
import type { DateField, FieldChoice, FieldName, TextSource, Where } from './mapping.ts';

export interface ExamFields {
  readonly id: ExamId;
  readonly status: StatusField;
  readonly subject: SubjectFields;
  readonly performed: { readonly start: DateField; readonly end?: DateField };
  readonly recorded: RecordedField;
  readonly examiner: ExaminerFields;
  readonly organization?: Organization;
  readonly protocol: { readonly id: Code; readonly version: Text };
  /** Why the exam was done, in the words of the export. */
  readonly indication?: TextSource;
  readonly conclusion?: ConclusionFields;
}

/** The exam id is `prefix` and the fields' texts, joined by `.`; other characters are escaped. */
export interface ExamId {
  /** Name of the exporting system, so that ids of two systems never meet. */
  readonly prefix: Key;
  /** @minItems 1 */
  readonly from: readonly FieldChoice[];
  /**
   * Further parts, each where the export has it.
   * @minItems 1
   */
  readonly also?: readonly FieldChoice[];
}

/** Status of the record: a field and what its words mean, or one for the whole export. */
export interface StatusField {
  readonly from?: FieldChoice;
  readonly words?: { readonly [word: string]: RecordStatus };
  /** Used where the field is blank or not given. */
  readonly value?: RecordStatus;
}

/** When the record was written: a field, or one time for the whole export. */
export interface RecordedField {
  readonly from?: DateField;
  /** Used where the field is blank or not given. */
  readonly value?: Instant;
  /**
   * Time of day for a date alone, such as `00:00`, at the offset or in the zone of `dates`. Each exam
   * that it was used for says so.
   * @pattern ^([01]\d|2[0-3]):[0-5]\d$
   */
  readonly timeOfDay?: string;
}

export interface IdentifierField {
  readonly from: FieldName;
  /** Name space of the number; with `oidFrom` what stands before the OID: `urn:oid:`. */
  readonly system: Uri;
  /**
   * Field beside the number with the OID of its name space: each of several
   * numbers is taken, under its own name space.
   */
  readonly oidFrom?: FieldName;
  /** Regular expression that the whole text must match: finds lost leading zeros. */
  readonly pattern?: string;
  /** Of several repetitions, the one that has this beside it. */
  readonly where?: Where;
}

export interface SubjectFields {
  /** @minItems 1 */
  readonly identifiers?: readonly IdentifierField[];
  /** Reference to a Patient that the receiver has: `prefix` and the field's text. */
  readonly reference?: { readonly from: FieldName; readonly prefix: string };
  readonly family?: FieldName;
  /** Of several fields each is a given name, in their order. */
  readonly given?: FieldChoice;
  /** The whole name in one text. */
  readonly name?: TextSource;
  readonly birthDate?: DateField;
  readonly gender?: GenderField;
}

export interface GenderField {
  readonly from: FieldChoice;
  readonly words: { readonly [word: string]: 'male' | 'female' | 'other' | 'unknown' };
}

/** Who examined: fields of the export, or one fixed name for the whole export. */
export interface ExaminerFields {
  readonly identifier?: IdentifierField;
  readonly name?: TextSource;
  readonly role?: Text;
  /** Used where the fields are blank or not given. */
  readonly fixed?: { readonly name?: Text; readonly reference?: Text };
}

export interface ConclusionFields {
  readonly text: TextSource;
  readonly concern: ConcernField;
}

/** Level of concern: a field and what its words mean, or one for the whole export. */
export interface ConcernField {
  readonly from?: FieldName;
  readonly words?: { readonly [word: string]: Concern };
  /** Used where the field is blank or not given. */
  readonly value?: Concern;
}

export type Concern = Conclusion['concern'];
