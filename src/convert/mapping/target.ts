import type { ExceptedPlace } from '../../kinds/facets/base.ts';
import type { Code, Side, Text, UnitCode } from '../../model/primitive.ts';
import type { SourceField, WordTable } from './mapping.ts';

/** The statement that a field or item becomes. Codes are those of the catalogue. */
export type Target =
  | FindingTarget
  | AttributeTarget
  | RegionStateTarget
  | SensationTarget
  | ComparisonTarget
  | MovementTarget
  | FunctionTestTarget
  | MeasurementTarget
  | ScaleTarget
  | SymptomTarget
  | NoteTarget
  | ConditionTarget;

/** What can be said of one side: a comparison speaks of both. */
export type SidedTarget = Exclude<Target, ComparisonTarget>;

export type TargetKind = Target['kind'];

/** Name of a table in `words`, or a table written out. */
export type Words = string | WordTable;

interface TargetBase {
  readonly kind: string;
  /** Field beside the value, or around it, with the examiner's words for this statement. */
  readonly noteFrom?: SourceField;
}

interface Sided extends TargetBase {
  readonly side?: Side;
  /**
   * Field with a side word, beside the value or around it: of the same element, row or segment, or of
   * one that holds it. It must agree with `side` where both are given.
   */
  readonly sideFrom?: SourceField;
}

interface SitedTarget extends Sided {
  /** May be left out only where the items have a region field. */
  readonly region?: Code;
}

interface ExaminedTarget extends SitedTarget {
  /** @minItems 1 */
  readonly methods?: readonly Code[];
  readonly methodFrom?: SourceField;
}

interface ExceptingTarget {
  /**
   * Members of the region of which the export never speaks: a field for the neck that leaves the
   * thyroid to another. What is absent or normal is then not said of them.
   * @minItems 1
   */
  readonly except?: readonly ExceptedPlace[];
}

/**
 * Words: present, absent, indeterminate, suspected, confirmed. Without `finding` each word is the code of a finding that is
 * present: midline is `septum.midline`, dev R is `septum.deviated-right`.
 */
export interface FindingTarget extends ExaminedTarget, ExceptingTarget {
  readonly kind: 'finding';
  readonly finding?: Code;
  /** Words that say that nothing amiss was found there at all, such as NAD or WNL. */
  readonly normal?: NormalWords;
  /** Without `finding`: what is said of the finding that the word names. Default: `present`. */
  readonly presence?: 'present' | 'absent';
  readonly words: Words;
}

/** Words by which a region is normal, and how it was examined: no word says that by itself. */
export interface NormalWords {
  /** @minItems 1 */
  readonly words: readonly string[];
  /** @minItems 1 */
  readonly methods: readonly Code[];
}

/** An attribute of a finding that the same exam states as present, at the same region and side. */
export interface AttributeTarget extends SitedTarget {
  readonly kind: 'attribute';
  readonly finding: Code;
  readonly attribute: Code;
  /** For codes and yes/no. */
  readonly words?: Words;
  /** For quantities without a unit of their own. */
  readonly unit?: UnitCode;
  readonly unitFrom?: SourceField;
}

/** Words: normal, abnormal, or a state with reason. */
export interface RegionStateTarget extends ExaminedTarget, ExceptingTarget {
  readonly kind: 'region-state';
  readonly words: Words;
}

/** Words: codes of sensation results. Several modalities of a point and side become one statement. */
export interface SensationTarget extends Sided {
  readonly kind: 'sensation';
  readonly point: Code;
  /** May be left out only where the items have a modality field. */
  readonly modality?: Code;
  readonly words: Words;
}

/** Words: equal, right-less, left-less, not-compared. */
export interface ComparisonTarget extends TargetBase {
  readonly kind: 'sensation-comparison';
  readonly point: Code;
  readonly modality?: Code;
  readonly words: Words;
}

/** Words: the grades of the test. */
export interface MovementTarget extends Sided {
  readonly kind: 'movement';
  readonly test: Code;
  readonly words: Words;
}

/** Words: the results of the test. */
export interface FunctionTestTarget extends Sided {
  readonly kind: 'function-test';
  readonly test: Code;
  readonly words: Words;
}

/** A number. The unit stands in the value, in the field `unitFrom`, or is `unit` for all of them. */
export interface MeasurementTarget extends SitedTarget {
  readonly kind: 'measurement';
  readonly measure: Code;
  /** Said by whoever made the export, for values without a unit of their own. */
  readonly unit?: UnitCode;
  readonly unitFrom?: SourceField;
  /** @minItems 1 */
  readonly methods?: readonly Code[];
  readonly methodFrom?: SourceField;
  /** @minItems 1 */
  readonly conditions?: readonly Code[];
  /** A value outside, in `unit`, is kept as text with an issue: it finds a column of mixed units. */
  readonly expect?: { readonly low?: string; readonly high?: string };
  /** For words that stand for no value here. */
  readonly words?: Words;
}

/** A grade by its words, or the total of a summed scale as a number. */
export interface ScaleTarget extends SitedTarget {
  readonly kind: 'scale-score';
  readonly scale: Code;
  readonly version: Text;
  readonly words?: Words;
}

/** Words: yes, no, unsure, declined, not-asked. */
export interface SymptomTarget extends SitedTarget {
  readonly kind: 'symptom';
  readonly symptom: Code;
  readonly words: Words;
  readonly toldBy?: 'patient' | 'relative' | 'carer' | 'interpreter' | 'other';
}

/** Free text, kept verbatim and never parsed. */
export interface NoteTarget extends SitedTarget {
  readonly kind: 'note';
  /**
   * The text is cut at its headings into a note for each, of the region that its heading names. All notes
   * together are the whole text, without the white space between them.
   */
  readonly cut?: 'headings';
}

/** Something that could limit the exam. Words: the values of the condition. */
export interface ConditionTarget extends SitedTarget {
  readonly kind: 'condition';
  readonly condition: Code;
  readonly words: Words;
}
