import type { TypeInfo, Types } from '../../elements/definitions.ts';
import type { JsonObject } from '../../walk/json.ts';
import { evaluate } from './evaluate.ts';
import { type Item, type Items, Undecided } from './items.ts';
import { type Node, parse } from './parse.ts';

/** A rule of a profile, ready to be asked of any element. */
export interface Rule {
  /** `undecided` where it asks for what is not held here, or for ever. */
  verdict(element: Item, around: Around): 'holds' | 'fails' | 'undecided';
}

/** Where the element stands. */
export interface Around {
  readonly resource: JsonObject;
  readonly root: JsonObject;
  readonly resolve: (reference: string) => JsonObject | undefined;
  readonly types?: Types<TypeInfo>;
}

/** Steps for one rule at one element; the largest published ones take some thousands. */
const budget = 200_000;

/**
 * A rule from its FHIRPath; `undefined` where it is none, or uses what is not held here. As in HL7's
 * validator an empty result is not a pass.
 */
export function ruleOf(expression: string): Rule | undefined {
  let tree: Node;
  try {
    tree = parse(expression);
  } catch {
    return undefined;
  }
  return {
    verdict(element, around) {
      const context = { ...around, element, budget };
      try {
        return verdictOf(evaluate(tree, [element], { context, index: 0, self: element }));
      } catch (error) {
        if (error instanceof Undecided || error instanceof RangeError) return 'undecided';
        throw error;
      }
    },
  };
}

function verdictOf(result: Items): 'holds' | 'fails' {
  return result.length > 0 && result.every(({ value }) => value === true) ? 'holds' : 'fails';
}
