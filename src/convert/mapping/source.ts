import type { FhirVersion } from '../../fhir/version.ts';
import type { Uri } from '../../model/primitive.ts';
import type { FhirIdentity } from './fhir-mapping.ts';

/** How the text of an export is cut into exams. */
export type Source =
  | CsvSource
  | XlsxSource
  | FixedSource
  | Hl7v2Source
  | XmlSource
  | CdaSource
  | JsonSource;

/** The same with what needs no meaning of fields, since its codes are published. */
export type AnySource = Source | FhirSource;

export type TableSource = CsvSource | XlsxSource | FixedSource;

/** Whether an export is a table, whose columns have names. */
export function isTable(source: AnySource): source is TableSource {
  return source.syntax === 'csv' || source.syntax === 'xlsx' || source.syntax === 'fixed';
}

/** Names of character sets; `auto` tries strict UTF-8 first and then Windows-1252 with a warning. */
export type Encoding =
  | 'auto'
  | 'utf-8'
  | 'utf-16le'
  | 'utf-16be'
  | 'windows-1252'
  | 'iso-8859-1'
  | 'iso-8859-15';

/** How the rows of a table are taken. */
export interface TableRules {
  /**
   * Lines at the beginning that are not part of the table, such as a title. A line `sep=;` needs no
   * mention.
   * @asType integer
   * @minimum 1
   * @maximum 100
   */
  readonly skip?: number;
  /**
   * Columns, most general first, in which a blank cell means the one above, as in a table made of merged
   * cells. Only below an equal row: a cell is filled where those of the columns before it in this list
   * are blank or the same as above. Its place in the ledger is that of the cell above.
   * @minItems 1
   */
  readonly fillDown?: readonly string[];
  /**
   * Columns whose texts tell the exams apart, for a table with several rows for an exam. Left out:
   * each row is an exam.
   * @minItems 1
   */
  readonly groupBy?: readonly string[];
  /** `anywhere`: rows of one exam may stand apart; they are held in memory. Default: `adjacent`. */
  readonly rows?: 'adjacent' | 'anywhere';
}

/** The same of a table whose columns are named by headings. */
export interface TableRows extends TableRules {
  /** Column headings where the file has none; otherwise the first row holds them. */
  readonly header?: readonly string[];
  /**
   * Rows of headings. With two each column is named by both, joined by a space, and a blank cell of the
   * upper row means the one to the left. Default: 1.
   */
  readonly headingRows?: 1 | 2;
  /**
   * Names of columns and the headings that mean each, compared without case, spaces and signs. A
   * heading keeps its own name where two columns would get one name.
   */
  readonly headings?: { readonly [name: string]: readonly string[] };
}

/** @see https://www.rfc-editor.org/rfc/rfc4180 */
export interface CsvSource extends TableRows {
  readonly syntax: 'csv';
  readonly encoding?: Encoding;
  /** Default: `,` */
  readonly delimiter?: ',' | ';' | '\t' | '|';
  /** Each row ends with a delimiter, so that a blank cell stands behind the last column. */
  readonly trailingDelimiter?: boolean;
}

/**
 * One sheet of a workbook. No formula is evaluated: the value that the file holds is taken, and the
 * ledger says so. Dates are read as ISO 8601, as far as their format shows them.
 * @see https://ecma-international.org/publications-and-standards/standards/ecma-376/
 */
export interface XlsxSource extends TableRows {
  readonly syntax: 'xlsx';
  /** Which sheet: its name, or its place from 1. May be left out where one alone holds anything. */
  readonly sheet?: SheetName | SheetPlace;
}

/**
 * @minLength 1
 * @maxLength 100
 */
export type SheetName = string;

/**
 * @asType integer
 * @minimum 1
 * @maximum 10000
 */
export type SheetPlace = number;

/** Lines in which each column has its place, counted in characters from 1. */
export interface FixedSource extends TableRules {
  readonly syntax: 'fixed';
  readonly encoding?: Encoding;
  /**
   * Text between columns is kept under its place, such as `#9-12`.
   * @minItems 1
   */
  readonly columns: readonly FixedColumn[];
  /**
   * Spaces at the end of lines are left off, so that a line may end early. Otherwise a line that ends
   * before the last column does was cut, and its exam is set aside.
   */
  readonly trimmed?: boolean;
}

/** A column by its first character, and either its length or its last character. */
export interface FixedColumn {
  readonly name: ColumnName;
  readonly start: LinePlace;
  readonly length?: LinePlace;
  readonly end?: LinePlace;
}

/**
 * @minLength 1
 * @maxLength 500
 */
export type ColumnName = string;

/**
 * @asType integer
 * @minimum 1
 * @maximum 100000
 */
export type LinePlace = number;

export interface Hl7v2Source {
  readonly syntax: 'hl7v2';
  readonly encoding?: Encoding;
  /**
   * What the orders of a message are (each OBR with its OBX): parts of one exam, or exams, one for
   * each filler order number (OBR-3) and patient. Default: `parts`.
   */
  readonly orders?: 'parts' | 'exams';
}

export interface XmlSource {
  readonly syntax: 'xml';
  /**
   * Path of the element that holds one exam, from the root: `export/exam`.
   * @minLength 1
   */
  readonly exam: string;
  /**
   * Paths below the exam of elements that are records of their own: `findings/finding`. Fields of
   * an item are named by their path from the item on (`finding/@code`), all others by their path
   * below the exam. An item also has the attributes of the elements around it: `../@side`.
   * @minItems 1
   */
  readonly items?: readonly string[];
  /**
   * Names of this mapping for namespaces, whatever prefix the export writes: with
   * \`{"w": "urn:harbour:exam"}\` the path \`w:export/w:exam\` means elements of that namespace. The name
   * \`""\` stands for one whose elements have no prefix here. Left out: names are as written.
   */
  readonly namespaces?: { readonly [name: string]: string };
}

/** @see https://www.rfc-editor.org/rfc/rfc8259 */
export interface JsonSource {
  readonly syntax: 'json';
  readonly encoding?: Encoding;
  /**
   * Path of the objects that hold one exam each, from the root and through lists: `clinic/exams`. Left out:
   * the root, or each member of the list that it is.
   */
  readonly exam?: string;
  /** Each line is JSON of its own and one exam (NDJSON, JSON Lines); `exam` is not looked at. */
  readonly lines?: boolean;
  /**
   * Paths below the exam of objects that are records of their own: `findings`. Fields of an item are named
   * by their path from the item on (`findings/code`), all others by their path below the exam. An item also
   * has the values of the objects around it: `../side`.
   * @minItems 1
   */
  readonly items?: readonly string[];
}

export interface CdaSource {
  readonly syntax: 'cda';
  /**
   * LOINC codes of sections that are part of the exam, besides the physical exam section and what
   * stands inside it.
   * @minItems 1
   */
  readonly sections?: readonly string[];
  /**
   * What becomes of all other sections: set aside, or their narratives kept as records of the kind
   * `other-section`. Their entries are set aside either way. Default: `aside`.
   */
  readonly otherSections?: 'aside' | 'narrative';
}

/** @see https://hl7.org/fhir/R4/bundle.html */
export interface FhirSource {
  readonly syntax: 'fhir';
  readonly encoding?: Encoding;
  /**
   * `bundles`: Bundles one after the other or in a list. `lines`: each line is a Bundle, so that a broken
   * one costs itself alone. `resources`: each line is a resource, as in a bulk export, with all files of a
   * run as one; they are put together by report, or by person, visit and day where no report leads to
   * them. `xml`: the file is a Bundle in XML. A Bundle of JSON that holds several reports becomes an exam
   * for each. Default: `bundles`.
   * @see https://hl7.org/fhir/uv/bulkdata/export.html
   */
  readonly form?: 'bundles' | 'lines' | 'resources' | 'xml';
  /**
   * Address of the server that wrote `resources`, where their references begin with it:
   * `https://server.example/fhir`.
   */
  readonly serverBase?: Uri;
  /** Version whose elements the XML has. Default: `R4`. JSON needs none. */
  readonly fhirVersion?: FhirVersion;
  /** As at the export of bundles that this library wrote. */
  readonly canonicalBase?: Uri;
  readonly identity?: FhirIdentity;
}
