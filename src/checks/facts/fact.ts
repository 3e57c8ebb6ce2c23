import type { Key } from '../../model/primitive.ts';
import type { RuleFinding, RuleOutcome } from '../rule.ts';

/**
 * Whether something holds, with three answers: `undefined` means that the exam does not say. What
 * is missing is never taken for a no.
 */
export interface Fact {
  readonly holds: boolean | undefined;
  /** Keys of the statements it rests on. */
  readonly used: readonly Key[];
  /** What would settle it, in words. */
  readonly missing: readonly string[];
}

export function known(holds: boolean, ...used: readonly Key[]): Fact {
  return { holds, used, missing: [] };
}

/** The same, by however many. */
export function knownBy(holds: boolean, used: readonly Key[]): Fact {
  return { holds, used, missing: [] };
}

export function unknown(...missing: readonly string[]): Fact {
  return { holds: undefined, used: [], missing };
}

/** True when all hold; false as soon as one does not; otherwise not known. */
export function every(facts: readonly Fact[]): Fact {
  const refuted = facts.filter((fact) => fact.holds === false);
  if (refuted.length > 0) return joined(false, refuted);
  return joined(facts.some((fact) => fact.holds === undefined) ? undefined : true, facts);
}

/** True as soon as one holds, whatever the others lack; false when none does; otherwise not known. */
export function some(facts: readonly Fact[]): Fact {
  const holding = facts.filter((fact) => fact.holds === true);
  if (holding.length > 0) return joined(true, holding);
  return joined(facts.some((fact) => fact.holds === undefined) ? undefined : false, facts);
}

export function not(fact: Fact): Fact {
  return { ...fact, holds: fact.holds === undefined ? undefined : !fact.holds };
}

/**
 * The fact, held to be true where the exam leaves it open, with what is missing kept: for a
 * judgement that only the clinician can make and that the text then states as a condition.
 */
export function ifNotDenied(fact: Fact): Fact {
  return fact.holds === undefined ? { ...fact, holds: true } : fact;
}

/** Adds what would have made the answer fuller, without changing it. */
export function alsoMissing(fact: Fact, ...others: readonly Fact[]): Fact {
  const open = others.filter((other) => other.holds === undefined);
  return joined(fact.holds, [fact, ...open]);
}

export function outcomeOf(fact: Fact): RuleOutcome {
  if (fact.holds === undefined) return 'not-evaluable';
  return fact.holds ? 'fires' : 'does-not-fire';
}

/** The part of a rule finding that a fact gives. */
export function inputsOf(
  fact: Fact,
): Pick<RuleFinding, 'outcome' | 'inputsUsed' | 'inputsMissing'> {
  return { outcome: outcomeOf(fact), inputsUsed: fact.used, inputsMissing: fact.missing };
}

function joined(holds: boolean | undefined, facts: readonly Fact[]): Fact {
  return {
    holds,
    used: [...new Set(facts.flatMap((fact) => fact.used))],
    missing: [...new Set(facts.flatMap((fact) => fact.missing))],
  };
}
