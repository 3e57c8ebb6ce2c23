import type { BudgetOption } from '../../issues/budget.ts';
import type { Exam } from '../../model/exam.ts';
import type { Decimal, Instant, Key, Text } from '../../model/primitive.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { Lean, Protocol } from '../../terminology/types.ts';
import type { RuleSetId } from '../rule-sets.ts';
import type { CheckWords } from '../words/check-words.ts';
import type { ThresholdSettings } from './thresholds.ts';

/** What a check is held to, as plain data that a file can hold; `parseCheckSettings` reads it. */
export interface CheckSettings {
  /** Protocol to hold the exam to in place of the one it names: an adopter's own, or another edition. */
  readonly protocol?: Lean<Protocol>;
  /** Limits in place of those of the table `thresholds`. */
  readonly thresholds?: ThresholdSettings;
  /** Side difference from which a paired measure is flagged, in its own unit; for measures that the thresholds leave out. */
  readonly sideDifferences?: { readonly [measure: string]: Decimal };
  /** Populations whose reference ranges apply, as the measures table names them. Default: all, and only a value outside every range is flagged. */
  readonly populations?: readonly string[];
  /** Let limits and ranges that are known only from memory raise flags too. Default: no. */
  readonly memoryValues?: boolean;
  /** Rule sets that prompts may come from. Default: none, so no prompts. */
  readonly ruleSets?: readonly RuleSetId[];
  /** Lists of pertinent negatives that the exam was to go through. Default: those of the sections that the protocol asks for. */
  readonly negatives?: readonly string[];
  /** What only the clinician can judge and the exam has no field for. */
  readonly judgements?: readonly Judgement[];
  readonly dismissals?: readonly Dismissal[];
}

export interface CheckOptions extends CheckSettings {
  /** Words of prompts and of what they lack; with a catalogue in the same language. Default English. */
  readonly words?: CheckWords;
  /** Default: the tables published with the library. */
  readonly catalogue?: Catalogue;
  /** The exam to compare with. Without it nothing is called new, gone or unchanged. */
  readonly prior?: Exam;
  /**
   * Set where the caller knows that both exams are of one person although their records do not say
   * so. Default: the two must share an identifier or a reference, and must not disagree in one.
   */
  readonly samePatient?: 'assumed';
  /** The present, for the one check that needs it: an exam cannot lie ahead. The library never reads a clock. */
  readonly now?: Instant;
  /** What the call may take; default `budgets.exam`. */
  readonly budget?: BudgetOption;
}

/** A clinician's judgement on one symptom or finding. What is left out stays open. */
export interface Judgement {
  /** Key of the symptom or finding. */
  readonly statement: Key;
  /** No cause has been found for it. */
  readonly unexplained?: boolean;
  /** It has not gone away; guidelines that give no number of days leave this to the clinician. */
  readonly persistent?: boolean;
  /** History or signs of an infection account for it. */
  readonly infectious?: boolean;
}

/** A prompt that the clinician set aside. The prompt stays in the result, with this beside it. */
export interface Dismissal {
  /** Id of the prompt, as the result gives it: `R18:left`. */
  readonly prompt: string;
  readonly reason: Text;
  /** Key of the examiner. */
  readonly by: Key;
  readonly at: Instant;
}
