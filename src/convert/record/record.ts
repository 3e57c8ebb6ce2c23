import type { Issue, SourcePosition } from '../../issues/issue.ts';
import type { CellOperation } from '../mapping/cells.ts';

/**
 * What a field stands in: an element of XML or CDA, a field or repetition of a v2 segment. Fields of a
 * table have none, their row is all there is around them. Two fields speak of one thing only where
 * they stand in the same scopes as far as their names go together.
 */
export interface Scope {
  /** Name of the element, or of the segment or field. */
  readonly name: string;
  readonly parent?: Scope;
}

/** One field of an input: its text and where it stood. Knows no exam and no FHIR. */
export interface Field {
  /**
   * What a mapping calls it: a column heading (`MRD1_R`), a path below the exam element
   * (`skin/cheek/@side`), a segment field (`OBX-5`, `OBX-3.1`). A record may hold a name twice.
   */
  readonly name: string;
  /** The text with the escapes of the syntax undone, otherwise untouched, not trimmed. */
  readonly text: string;
  readonly at: SourcePosition;
  /** The syntax says "explicitly nothing", which is not blank: v2 `""`, xsi:nil, nullFlavor. */
  readonly explicitNull?: string;
  /** The element or repetition that it belongs to. */
  readonly scope?: Scope;
  /** The syntax says "explicitly nothing" beside a text: the two cannot both hold. */
  readonly contradicted?: true;
  /** The sender's words for the code in the same scope: v2 OBX-3.2, CDA displayName. */
  readonly wording?: true;
  /** The field of the input that this is a part of, and the operation of the mapping that made it. */
  readonly of?: Field;
  readonly by?: CellOperation['do'];
  /** A formula, of which this is the value that the file holds. Nothing is evaluated. */
  readonly origin?: 'formula';
  /** The text is not what was entered, so that nothing can be coded from it. */
  readonly refused?: RefusedCell;
  /** About who took part or with what, beside what was found: as `administrative` of a record. */
  readonly administrative?: true;
}

/**
 * Why a cell of a workbook is not taken: an error such as #N/A; a formula without a value; a number with
 * more digits than a spreadsheet keeps; a day or time that its date system does not have, or that it has
 * made up a part of.
 */
export type RefusedCell = 'error-cell' | 'no-result' | 'lost-digits' | 'no-date';

/** What is to be known of a cell besides its text. */
export type CellNote = 'formula' | RefusedCell;

export const cellNotes: readonly CellNote[] = [
  'formula',
  'error-cell',
  'no-result',
  'lost-digits',
  'no-date',
];

/** A note on the cell of a row in this column, counted from 0, as long as it holds the text `of`. */
export interface NotedCell {
  readonly column: number;
  readonly note: CellNote;
  readonly of: string;
}

/** One row, segment group, element or entry. */
export interface LegacyRecord {
  /** Segment, element or entry name; `row` for CSV. */
  readonly kind: string;
  readonly fields: readonly Field[];
  readonly at: SourcePosition;
  /**
   * Set when the record cannot be read by its names, such as a row with too few cells: its fields
   * are kept as text and none is coded.
   */
  readonly malformed?: readonly Issue[];
  /**
   * Set when the record is not part of an exam, such as another section of a document: none of its
   * fields enters the exam, and all of them count as quarantined.
   */
  readonly aside?: readonly Issue[];
  /**
   * Set for a record about the patient, the visit, the order or the document. What the mapping does
   * not take of it is not clinical text: the ledger lists it, and no note holds it.
   */
  readonly administrative?: true;
  /** The syntax does not say what elements side by side have to do with each other. */
  readonly looseSiblings?: true;
}

/** The records of one exam, in input order. */
export interface RecordGroup {
  readonly records: readonly LegacyRecord[];
  readonly at: SourcePosition;
  /** Found while reading, about the group as a whole. An error sends the group to quarantine. */
  readonly issues: readonly Issue[];
}

/** A cell of an earlier row of a table, by the column in which a later one is blank. */
export interface CellAbove {
  readonly column: number;
  readonly text: string;
  readonly line: number;
  readonly note?: CellNote;
}

/**
 * Input text of one exam, cut out by a splitter and not yet read. It is what goes to a worker, to
 * quarantine and, mended, back into a run.
 */
export interface RawUnit {
  /** Text of one exam, as it stands in the input. */
  readonly raw: string;
  /** Where in the input it begins. */
  readonly at: SourcePosition;
  /**
   * What the text needs and does not hold itself: column headings, or the lines of a message that
   * several exams have in common.
   */
  readonly header?: readonly string[];
  /** Line of each row in `raw`, where the rows did not stand one below the other. */
  readonly lines?: readonly number[];
  /** For each row of `raw` the cells above that its blank ones stand for. */
  readonly filled?: readonly (readonly CellAbove[])[];
  /** For each row of `raw` what is to be known of its cells. */
  readonly notes?: readonly (readonly NotedCell[])[];
  /** Character set that the text itself declares: MSH-18, the XML declaration. */
  readonly declaredEncoding?: string;
  /** Found while splitting: an unclosed quote, a text over the limit. An error means quarantine. */
  readonly issues?: readonly Issue[];
}

/**
 * How one syntax is read. Both parts never throw on bad data.
 *
 * Where the input is bytes, the splitter is given text with one character for each byte (U+0000 to
 * U+00FF): all marks that it looks for are ASCII. `decode-unit.ts` then decodes each unit, so that
 * one wrong byte cannot spoil a file, and hands real text to `read`.
 */
export interface Reader {
  /**
   * A fresh splitter for one input. `decode` turns text of one character a byte into real text,
   * where the input is bytes and the splitter must read a part of it, such as column headings.
   */
  readonly splitter: (decode?: Decode) => Splitter;
  /** One group for each unit, in order. Pure. */
  readonly read: (units: readonly RawUnit[]) => readonly RecordGroup[];
}

/** Real text of one character a byte, by the set stated for the input or else the one declared in it. */
export type Decode = (bytes: string, declared?: string) => string;

/** Cuts a text that comes in pieces into units, with bounded memory. */
export interface Splitter {
  /** Units that are complete with this piece. A piece may end anywhere, even between CR and LF. */
  readonly push: (piece: string) => RawUnit[];
  /** What is left at the end of the input. */
  readonly end: () => Iterable<RawUnit>;
}
