import type { FhirVersion } from '../../fhir/version.ts';
import { resolve } from '../bundles/resolve.ts';
import { rulesOf } from '../invariants/invariants.ts';
import { isObject, type JsonObject, textOf } from '../walk/json.ts';
import { report, type Scope } from '../walk/scope.ts';
import type { Expression, ExpressionTable } from './expressions.ts';

/** Evaluates published invariants; made by `face-neck-fhir/validate/thorough`. */
export interface ExpressionEngine {
  /** Version of FHIR whose expressions it holds. */
  readonly fhirVersion: FhirVersion;
  /**
   * Looks at one element by every expression that stands at its place or type.
   * @param places `Element` where it is one, its type, and its path in HL7's definitions
   */
  look(value: unknown, places: readonly string[], scope: Scope): void;
  /** The verdict on a rule of a profile, for an element of a type. */
  evaluate(rule: Expression, base: string, value: unknown, scope: Scope): Verdict;
  /** Whether a text is an expression of FHIRPath. */
  parses(expression: string): boolean;
}

/** A compiled expression. @throws whatever the FHIRPath library throws on data that it cannot take */
export type Compiled = (
  element: unknown,
  variables: { readonly resource: JsonObject; readonly rootResource: JsonObject },
) => readonly unknown[];

/** Compiles an expression on elements of a type; `follow` is what `resolve()` means in it. */
export type Compiler = (
  expression: string,
  base: string,
  follow: (reference: unknown) => unknown,
) => Compiled;

export type Verdict = 'holds' | 'fails' | 'undecided';

/**
 * HL7's validator takes an empty result for a failure. These are empty where the element that they
 * speak of is not there at all; later editions of FHIR corrected them so that they hold there.
 */
const holdsWhenEmpty: ReadonlySet<string> = new Set([
  'bdl-8 R4',
  'ref-1 R4',
  'ref-1 R4B',
  // A composition without observations has none that a report could lack.
  'dgr-1 R5',
]);

/** Values that the library fhirpath cannot take on their own; that one has a value, ele-1, is plain. */
const notTaken: ReadonlySet<string> = new Set([
  'decimal',
  'integer',
  'positiveInt',
  'unsignedInt',
  'xhtml',
]);

export interface Evaluation {
  readonly rule: Expression;
  readonly verdict: Verdict;
}

/** Verdicts of FHIRPath on one element: on one rule, or on all that are published for it. */
export interface Evaluator {
  one(rule: Expression, base: string, value: unknown, scope: Scope): Verdict;
  all(value: unknown, places: readonly string[], scope: Scope): readonly Evaluation[];
  parses(expression: string): boolean;
}

export function createEvaluator(
  fhirVersion: FhirVersion,
  table: ExpressionTable,
  compile: Compiler,
): Evaluator {
  const rows = new Map(Object.entries(table));
  const compiled = new Map<string, Compiled>();
  let current: Scope | undefined;
  const follow = (reference: unknown): unknown => {
    const text = isObject(reference) ? textOf(reference['reference']) : textOf(reference);
    if (text === undefined || current === undefined) return undefined;
    return resolve(text, current)?.resource;
  };
  const compiledOf = ({ expression }: Expression, place: string): Compiled => {
    const key = `${place} ${expression}`;
    const known = compiled.get(key) ?? compile(expression, place, follow);
    compiled.set(key, known);
    return known;
  };
  const verdictOn = (
    rule: Expression,
    place: string,
    value: unknown,
    scope: Scope,
    whenEmpty: Verdict,
  ): Verdict => {
    current = scope;
    try {
      const variables = { resource: scope.resource, rootResource: scope.root };
      return verdictOf(compiledOf(rule, place)(value, variables), whenEmpty);
    } catch {
      // An expression that does not parse, or data that the library does not take.
      return 'undecided';
    } finally {
      current = undefined;
    }
  };
  const all: Evaluator['all'] = (value, places, scope) =>
    places.flatMap((place) => {
      // What holds of every element is asked of this one as what it is.
      const base = place === 'Element' ? (places[1] ?? place) : place;
      if (place === 'Element' && notTaken.has(base)) return [];
      return (rows.get(place) ?? [])
        .filter(({ key }) => key !== 'dom-6' || scope.root === scope.resource)
        .map((rule) => {
          const whenEmpty = holdsWhenEmpty.has(`${rule.key} ${fhirVersion}`) ? 'holds' : 'fails';
          return { rule, verdict: verdictOn(rule, base, value, scope, whenEmpty) };
        });
    });
  // As in HL7's validator an empty result is not a pass.
  const one: Evaluator['one'] = (rule, base, value, scope) =>
    verdictOn(rule, base, value, scope, 'fails');
  const parses = (expression: string): boolean => {
    try {
      compile(expression, 'Element', follow);
      return true;
    } catch {
      return false;
    }
  };
  return { one, all, parses };
}

function verdictOf(result: readonly unknown[], whenEmpty: Verdict): Verdict {
  if (result.length === 0) return whenEmpty;
  return result.every((item) => item === true) ? 'holds' : 'fails';
}

/** An engine that reports what the other stages have not. */
export function createEngine(fhirVersion: FhirVersion, evaluator: Evaluator): ExpressionEngine {
  return {
    fhirVersion,
    evaluate: evaluator.one,
    parses: evaluator.parses,
    look(value, places, scope) {
      for (const { rule, verdict } of evaluator.all(value, places, scope)) {
        // `htmlChecks()` is not an expression but a name for the stage that reads narratives.
        if (rule.expression === 'htmlChecks()') continue;
        if (verdict === 'fails') sayFailed(rule, scope);
        // Where a function of ours has the verdict, nothing stays open.
        else if (verdict === 'undecided' && !isHeld(rule, fhirVersion)) sayUndecided(rule, scope);
      }
    },
  };
}

function sayFailed({ key, severity }: Expression, scope: Scope): void {
  if (isTold(key, scope)) return;
  report(
    scope,
    'broken-invariant',
    { reason: 'expression' },
    {
      severity,
      rule: key,
    },
  );
}

/** Compares boundaries of Quantities, which fhirpath does not have. */
function isHeld({ key }: Expression, version: FhirVersion): boolean {
  return key === 'rng-2' && rulesOf([key], version).invariants.length > 0;
}

/** Whether another stage has told it of this element: what is said of one thing stands together. */
function isTold(key: string, { issues, path }: Scope): boolean {
  for (let at = issues.length - 1; at >= 0; at--) {
    const found = issues[at];
    if (found === undefined || !path.every((step, depth) => step === found.path[depth]))
      return false;
    if (found.rule === key && found.path.length === path.length) return true;
  }
  return false;
}

function sayUndecided({ key }: Expression, scope: Scope): void {
  const why = 'the published expression could not be evaluated';
  scope.unchecked.push({ rule: key, path: [...scope.path], why });
  if (scope.saidOnce.has(`undecided ${key}`)) return;
  scope.saidOnce.add(`undecided ${key}`);
  report(
    scope,
    'unchecked-rule',
    { reason: 'expression' },
    {
      severity: 'information',
      rule: key,
    },
  );
}
