import type { ExamCondition } from '../../model/exam.ts';
import type { Code, DateTime, Side } from '../../model/primitive.ts';
import type { Attribute, Statement } from '../../model/statement.ts';
import type { ConversionFacts, ConversionProblem } from '../issue.ts';
import type { Meaning, StateWithReason } from '../mapping/mapping.ts';
import type { Plan, PlannedTarget } from '../mapping/plan.ts';
import type { Target } from '../mapping/target.ts';

/** A value with everything that the record says about it, words already looked up. */
export interface Reading {
  /** The value, trimmed. */
  readonly text: string;
  /** What its word means; undefined for a number, and for a word that no table lists. */
  readonly meaning: Meaning | undefined;
  readonly region?: Code;
  readonly side?: Side;
  readonly methods?: readonly [Code, ...Code[]];
  readonly conditions?: readonly [Code, ...Code[]];
  readonly modality?: Code;
  /** Text of the unit field, trimmed; blank is the same as none. */
  readonly unitText?: string;
  readonly at?: DateTime;
}

/** A statement that has no key yet. */
export type Unkeyed = Statement extends infer Member
  ? Member extends Statement
    ? Omit<Member, 'key'>
    : never
  : never;

export type Problem = ConversionProblem;

/** What a value became. */
export type Built =
  | { readonly statements: readonly Unkeyed[] }
  | { readonly attribute: AttributeOf }
  | { readonly condition: ExamCondition }
  | Problem;

/** An attribute, and the present finding that it is to be put on. */
export interface AttributeOf {
  readonly finding: Code;
  readonly region: Code;
  readonly side?: Side;
  readonly value: Attribute;
}

/** Turns one reading into what its target says. */
export type Builder<T extends Target> = (
  planned: PlannedTarget<T>,
  reading: Reading,
  plan: Plan,
) => Built;

/** The word has no meaning for this field. */
export function unknownWord(facts: ConversionFacts<'unknown-word'>): Problem {
  return { problem: 'unknown-word', facts };
}

export const noRegion: Problem = {
  problem: 'missing-field',
  facts: { reason: 'region' },
};

export function isState(meaning: Meaning | undefined): meaning is StateWithReason {
  return typeof meaning === 'object';
}

/** The parts that every statement of a place has. */
export function placed(
  region: Code,
  { side, at, methods }: Reading,
): {
  region: Code;
  side?: Side;
  at?: DateTime;
  methods?: readonly [Code, ...Code[]];
} {
  return {
    region,
    ...(side !== undefined && { side }),
    ...(at !== undefined && { at }),
    ...(methods !== undefined && { methods }),
  };
}

export function reasonOf(state: StateWithReason): { code: Code; text?: string } {
  return { code: state.reason, ...(state.text !== undefined && { text: state.text }) };
}
