import type { RuleTitleId } from '../issues/english/rules.ts';
import type { Key, Side } from '../model/primitive.ts';
import type { Evidence } from '../terminology/types.ts';
import type { CheckContext } from './context.ts';
import type { Urgency } from './prompts/urgency.ts';
import type { RuleSetId } from './rule-sets.ts';

/** Codes that a consistency rule can raise. */
export type RuleIssueCode =
  | 'check-measurement'
  | 'check-statement'
  | 'contradiction'
  | 'copied-text'
  | 'implausible-figure'
  | 'reversed-dates'
  | 'side-conflict'
  | 'total-mismatch';

export type RuleKind = 'consistency' | 'computation' | 'prompt';

/**
 * `error`: two statements cannot both hold. `check`: worth a second look. `information`: said so
 * that it is known. `prompt` and `urgent` belong to prompts alone.
 */
export type RuleSeverity = 'information' | 'check' | 'error' | 'prompt' | 'urgent';

/**
 * `not-evaluable`: something that the rule needs is missing, so nothing is concluded, least of all
 * a negative. `not-applicable`: the exam says nothing that the rule is about.
 */
export type RuleOutcome = 'fires' | 'does-not-fire' | 'not-evaluable' | 'not-applicable';

/** A figure that a rule worked out, as decimal text with its UCUM unit where it has one. */
export interface ComputedValue {
  readonly name: string;
  readonly value: string;
  readonly unit?: string;
}

/** What a rule concluded on one thing: a side, a lesion, the whole exam. */
export interface RuleFinding {
  readonly outcome: RuleOutcome;
  /** The thing it is about: a side, a statement key, a code; none for the whole exam. */
  readonly on?: string;
  readonly side?: Side;
  /** Differs from that of the rule only where the inputs raise or lower it. */
  readonly severity?: RuleSeverity;
  /** Of a prompt: how soon it asks for somebody to act. */
  readonly urgency?: Urgency;
  /** Keys of the statements used, and `subject.birthDate` where the age was. */
  readonly inputsUsed: readonly Key[];
  /** What would have been needed, in words. */
  readonly inputsMissing: readonly string[];
  readonly text: string;
  readonly values?: readonly ComputedValue[];
  /** Issue code where it differs from that of the rule. */
  readonly code?: RuleIssueCode;
}

/** A finding of a rule with what is true of the rule itself. */
export interface RuleResult extends Omit<RuleFinding, 'code' | 'severity'> {
  /** Stable for the same rule and thing, so that a dismissal can name it: `R18:left`. */
  readonly id: string;
  /** Id of the rule, as in RULES.md: `R18`. */
  readonly ruleId: string;
  readonly title: string;
  readonly kind: RuleKind;
  /** Version of the rule. */
  readonly version: string;
  /** Where the advice applies; of prompts. */
  readonly jurisdiction?: string;
  readonly severity: RuleSeverity;
  /** Publication that the rule or its limit rests on, or "common practice, no source". */
  readonly source: string;
  readonly evidence: Evidence;
}

interface RuleBase {
  readonly id: string;
  readonly title: string;
  /** Raised by one when the rule concludes differently on the same exam. */
  readonly version: string;
  readonly severity: RuleSeverity;
  /** Publication that the rule or its limit rests on, or "common practice, no source". */
  readonly source: string;
  readonly evidence: Evidence;
  /** No findings mean that the exam says nothing that the rule is about. */
  readonly run: (context: CheckContext) => readonly RuleFinding[];
}

export interface ConsistencyRule extends RuleBase {
  readonly kind: 'consistency';
  /** Issue that a firing becomes. */
  readonly code: RuleIssueCode;
  readonly id: RuleTitleId;
}

export interface ComputationRule extends RuleBase {
  readonly kind: 'computation';
}

/** Runs only where the caller chose its rule set. */
export interface PromptRule extends RuleBase {
  readonly kind: 'prompt';
  readonly ruleSet: RuleSetId;
}

export type Rule = ConsistencyRule | ComputationRule | PromptRule;
