import { conversion } from '../issues/english/conversion.ts';
import type { FactsFor } from '../issues/facts.ts';
import { issuesOf } from '../issues/issue.ts';

export type ConversionCode = keyof typeof conversion;
export type ConversionFacts<Code extends ConversionCode = ConversionCode> = FactsFor<
  typeof conversion,
  Code
>;

/** Issues about the conversion of older exports. Severity: `error` unless told. */
export const issue = /*@__PURE__*/ issuesOf(conversion);

/** Why a value is kept as text, before it is known where it stands. */
export type ConversionProblem = {
  [Code in ConversionCode]: { readonly problem: Code; readonly facts: ConversionFacts<Code> };
}[ConversionCode];
