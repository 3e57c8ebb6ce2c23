import type { Code, Side, Text, UnitCode } from '../../model/primitive.ts';
import type { CellOperation } from './cells.ts';
import type { ExamFields } from './exam-fields.ts';
import type { FhirMapping } from './fhir-mapping.ts';
import type { PresetName } from './presets/names.ts';
import type { CdaSource, CsvSource, Hl7v2Source, Source, XlsxSource } from './source.ts';
import type { NoteTarget, SidedTarget, Target } from './target.ts';
import type { MappingTest } from './test.ts';

/**
 * Name of a field of the input, exactly as the reader gives it.
 * @minLength 1
 * @maxLength 500
 */
export type FieldName = string;

/** A mapping as it is written: whole, or what a preset of the library leaves open. */
export type WrittenMapping = Mapping | PresetMapping;

/** A mapping of fields, or one of FHIR, whose codes are published. */
export type AnyMapping = WrittenMapping | FhirMapping;

/**
 * A mapping that uses a preset of the library, which says what this one leaves out. Objects are joined
 * part by part; anything else that this mapping says stands instead of what the preset says.
 */
export type PresetMapping = Pick<Mapping, 'format'> &
  Partial<Omit<Mapping, 'exam' | 'source'>> & {
    readonly use: PresetName;
    readonly source?:
      | Partial<CsvSource>
      | Partial<XlsxSource>
      | Partial<Hl7v2Source>
      | Partial<CdaSource>;
    readonly exam?: Parts<ExamFields>;
  };

/** The same with every part left open, lists apart. */
type Parts<T> = T extends readonly unknown[] | string
  ? T
  : { readonly [Name in keyof T]?: Parts<T[Name]> };

/** What the fields of an old export mean. Plain data; nothing in it is guessed when it is left out. */
export interface Mapping {
  readonly $schema?: string;
  readonly format: 'face-neck-mapping/1';
  readonly title?: Text;
  readonly source: Source;
  readonly exam: ExamFields;
  /** What is done with the texts of fields before anything is read from them, in this order. */
  readonly cells?: readonly CellOperation[];
  /** Meaning of single fields: one for each column of a wide table, each path of an XML exam. */
  readonly fields?: { readonly [name: string]: Target };
  /**
   * Meaning of fields that differ in their side alone, said once for both.
   * @minItems 1
   */
  readonly pairs?: readonly FieldPair[];
  /**
   * Meaning of records that say in one field what another field means: rows of a long table, OBX
   * segments, repeated elements.
   * @minItems 1
   */
  readonly items?: readonly ItemRecords[];
  /**
   * Fields that only order or type other fields, such as set ids. They are counted and listed in
   * the ledger but not kept in the exam. Any field that is named nowhere is kept as text.
   */
  readonly layout?: readonly FieldName[];
  /** Fields kept as text on purpose: no issue is raised for them. */
  readonly text?: readonly FieldName[];
  /** Word tables that targets name. */
  readonly words?: { readonly [table: string]: WordTable };
  /** Words that stand for "no value" in every field: `""` is blank. Other tables go first. */
  readonly noValue?: { readonly [word: string]: NoValue };
  /** Side words. A word that is not listed is not a side. */
  readonly sides?: { readonly [word: string]: Side | SideWithin };
  /** Method words. */
  readonly methods?: { readonly [word: string]: Code };
  /** Words for the conditions of a measurement, for items with a conditions field. */
  readonly measureConditions?: { readonly [word: string]: Code };
  /** Region words, for items with a region field. */
  readonly regions?: { readonly [word: string]: Code };
  /** Modality words, for items with a modality field. */
  readonly modalities?: { readonly [word: string]: Code };
  /** Unit words and the UCUM code each stands for. A unit that is not listed is never assumed. */
  readonly units?: { readonly [word: string]: UnitCode };
  /** What headings mean, besides those that are known, where a note is cut at them. Case does not count. */
  readonly headings?: { readonly [heading: string]: HeadingPlace };
  readonly dates?: DateRules;
  /** Decimal mark of numbers. Default: `.` */
  readonly decimalMark?: '.' | ',';
  /** Words match without regard to case. Default: false. */
  readonly ignoreCase?: boolean;
  /**
   * Pieces of an export with what must become of them, which `testMapping` runs.
   * @minItems 1
   */
  readonly tests?: readonly MappingTest[];
}

/**
 * What a word says. For a finding `present`, `absent` or `indeterminate`, and `suspected` or
 * `confirmed` for one that is present with this certainty; for a region `normal` or `abnormal`; for a symptom `yes`, `no`, `unsure`, `declined` or `not-asked`; for a comparison
 * `equal`, `right-less`, `left-less` or `not-compared`; for sensations, movements, tests, scales,
 * attributes and conditions a code of their own list; for an attribute that is true or false `yes`
 * or `no`. For all: `not-stated`, `text`, or a state with its reason.
 */
export type Meaning = Code | StateWithReason;

/** What the text below a heading is about. */
export interface HeadingPlace {
  /** Left out: it is of no one region. */
  readonly region?: Code;
  readonly side?: 'right' | 'left' | 'both';
}

/** A field for each side, with one meaning. */
export interface FieldPair {
  readonly right: FieldName;
  readonly left: FieldName;
  /** Without a side of its own. */
  readonly target: SidedTarget;
}

export interface WordTable {
  readonly [word: string]: Meaning;
}

/** A word that stands for no value. */
export type NoValue = NoValueWord | StateWithReason;

/** `not-stated`: the source says nothing. `text`: keep as text, with no issue. */
export type NoValueWord = 'not-stated' | 'text';

export interface StateWithReason {
  /** `partial` only for a region. */
  readonly state: 'not-examined' | 'not-applicable' | 'partial';
  /** Code of terminology/reasons.json. */
  readonly reason: Code;
  readonly text?: Text;
}

/** A side word that holds in one part of the body only: table 0163 `RE` is the right ear. */
export interface SideWithin {
  readonly side: Side;
  /** Code of a section or of a region (and all below it). */
  readonly within: Code;
}

export interface DateRules {
  /**
   * Accepted forms, such as `DD/MM/YYYY` or `YYYY-MM-DD HH:mm`. Parts: YYYY, YY, MM, DD, MMM, HH,
   * mm, ss, Z. Two forms that could read one text in two ways are refused. Whole dates and times of
   * ISO 8601 and of HL7 are read beside them, where none of them reads such a text in another way.
   * Default: the forms of HL7 v2 and CDA times for these two, ISO 8601 for others.
   * @minItems 1
   */
  readonly formats?: readonly string[];
  /** Offset such as `+01:00` or `Z`, or an IANA zone such as `Europe/Lisbon`, for times without one. */
  readonly zone?: string;
  /**
   * First year of the hundred years that two-digit years fall in; without it they are refused.
   * @asType integer
   * @minimum 1800
   * @maximum 2100
   */
  readonly centuryFrom?: number;
  /** Day numbers of a spreadsheet are accepted, counted from this base. Without it they are refused. */
  readonly serial?: '1900' | '1904';
}

/** @minItems 1 */
export type FieldNames = readonly FieldName[];

/** One field, or several in order of preference: the first that holds anything is taken. */
export type FieldChoice = FieldName | FieldNames;

/** A text: one field or several joined; of a list the first that holds anything. */
export type TextSource = TextPart | TextParts;

/** @minItems 1 */
export type TextParts = readonly TextPart[];

export type TextPart = FieldName | JoinedFields;

/** The texts of fields of one element, row or segment, blank ones left out: given name and family name. */
export interface JoinedFields {
  readonly join: FieldNames;
  /** What stands between them. Default: a space. */
  readonly with?: string;
}

/** A date field, or a date and a time field, with their own forms where these differ. */
export type DateField = FieldName | DateFields;

export interface DateFields {
  readonly from: FieldChoice;
  readonly time?: FieldName;
  /**
   * Forms for this field instead of those in `dates`; with `time`, of the two joined by one space.
   * The standard ones are read beside them as there.
   * @minItems 1
   */
  readonly formats?: readonly string[];
}

/**
 * A field that must stand beside another, in the same element, repetition or row, and the text or one
 * of the texts that it must hold: `PID-3.5` is `MR`.
 */
export interface Where {
  readonly field: FieldName;
  readonly is: Text | WhereTexts;
}

/** @minItems 1 */
export type WhereTexts = readonly Text[];

/** A field, where need be only the one of several that has something beside it. */
export type SourceField = FieldName | FieldWhere;

export interface FieldWhere {
  readonly from: FieldName;
  readonly where: Where;
}

/** What a status field of an item says: a word, or that nothing was sought or obtained and why. */
export type ItemStatus = ItemStatusWord | StateWithReason;

/**
 * `stated`: the value holds. `withdrawn`: it is deleted or of the wrong patient; it is kept as text
 * with an issue and never coded. `text`: it is not to be coded for another reason.
 */
export type ItemStatusWord = 'stated' | 'withdrawn' | 'text';

/**
 * Records whose `code` fields say what the `value` field means. Of several that fit a record, the first
 * whose `map` lists its code is taken.
 */
export interface ItemRecords {
  /** Records of this kind only (`OBX`, an element name); any record with the code fields otherwise. */
  readonly kind?: string;
  /** Records only in which a field says this: `OBX-2` is `TX`. */
  readonly where?: Where;
  /**
   * Fields that name the item; their texts joined by `|` are looked up in `map`.
   * @minItems 1
   */
  readonly code: readonly FieldName[];
  /** Of several code fields of a name those of the element or repetition that says this. */
  readonly codeWhere?: Where;
  readonly value: FieldName;
  /** Of several values those of the element or repetition that says this. */
  readonly valueWhere?: Where;
  /** May stand several times beside one value: what it says holds on each of the sides. */
  readonly side?: SourceField;
  readonly region?: SourceField;
  /** May stand several times in a record: each is a method used. */
  readonly method?: SourceField;
  /** Conditions of a measurement; may stand several times in a record. */
  readonly conditions?: SourceField;
  readonly modality?: SourceField;
  readonly unit?: SourceField;
  readonly note?: SourceField;
  /**
   * Tells several things of one kind at one place apart, such as lesions that OBX-4 numbers: findings
   * of different groups stand beside each other, and attributes and measurements go to the finding
   * of their own group.
   */
  readonly group?: SourceField;
  /** When this was done, where it differs from the exam. */
  readonly at?: DateField;
  readonly status?: {
    readonly from: FieldName;
    readonly words: { readonly [word: string]: ItemStatus };
  };
  readonly map: { readonly [code: string]: Target };
  /** What a record is whose code `map` does not list, or that has no code: a note and nothing else. */
  readonly otherwise?: NoteTarget;
}
