import modelOfR4 from 'fhirpath/fhir-context/r4';
import modelOfR5 from 'fhirpath/fhir-context/r5';
import type { FhirVersion } from '../../../src/fhir/version.ts';
import { pathPointer } from '../../../src/issues/path.ts';
import { hasContent } from '../../../src/validate/elements/elements.ts';
import { hasValueOrExtensions } from '../../../src/validate/elements/extensions.ts';
import { type Invariant, rulesOf } from '../../../src/validate/invariants/invariants.ts';
import { expressions as ofR4 } from '../../../src/validate/tables/r4-expressions.ts';
import { expressions as ofR4b } from '../../../src/validate/tables/r4b-expressions.ts';
import { expressions as ofR5 } from '../../../src/validate/tables/r5-expressions.ts';
import { createEvaluator, type ExpressionEngine } from '../../../src/validate/thorough/engine.ts';
import { compilerOf, modelOfR4b } from '../../../src/validate/thorough/thorough.ts';
import { validateBundle as r4 } from '../../../src/validate/versions/r4.ts';
import { validateBundle as r4b } from '../../../src/validate/versions/r4b.ts';
import { validateBundle as r5 } from '../../../src/validate/versions/r5.ts';
import { isObject } from '../../../src/validate/walk/json.ts';
import type { Scope } from '../../../src/validate/walk/scope.ts';

/** How the library's own functions and FHIRPath on the published expressions see the same elements. */
export interface VerdictCount {
  /** Pairs of verdicts, by key of the invariant. */
  readonly compared: Map<string, number>;
  /** Key and place where they differ, or where FHIRPath has no verdict. */
  readonly differences: string[];
}

const versions = {
  R4: { validate: r4, table: ofR4, model: modelOfR4 },
  R4B: { validate: r4b, table: ofR4b, model: modelOfR4b() },
  R5: { validate: r5, table: ofR5, model: modelOfR5 },
} as const;

export type ComparedVersion = keyof typeof versions;

/** Compares the verdicts on every element of a bundle with every invariant published for it. */
export function verdictCounter(version: ComparedVersion): {
  readonly count: VerdictCount;
  readonly look: (name: string, bundle: unknown) => void;
} {
  const { validate, table, model } = versions[version];
  const evaluator = createEvaluator(version, table, compilerOf(model));
  const count: VerdictCount = { compared: new Map(), differences: [] };
  let current = '';
  const engine: ExpressionEngine = {
    fhirVersion: version,
    evaluate: evaluator.one,
    parses: evaluator.parses,
    look(value, places, scope) {
      for (const { rule, verdict } of evaluator.all(value, places, scope)) {
        // No expression, but a name for the stage that reads narratives.
        if (rule.expression === 'htmlChecks()') continue;
        count.compared.set(rule.key, (count.compared.get(rule.key) ?? 0) + 1);
        const ours = nativeVerdict(rule.key, version, value, scope) ? 'holds' : 'fails';
        if (ours === verdict) continue;
        if (verdict === 'undecided' && isRefused(rule.key, version, scope)) continue;
        const place = `${places.at(-1)} ${scope.path.join('.')}`;
        count.differences.push(
          `${current}: ${rule.key} at ${place}: ${ours}, published ${verdict}`,
        );
      }
    },
  };
  return {
    count,
    look(name, bundle) {
      current = name;
      validate(bundle, { level: 'thorough', engine });
    },
  };
}

/** Expressions that the library fhirpath cannot evaluate, where they come to their last part. */
const refused: ReadonlySet<string> = new Set([
  // It asks for boundaries of a Quantity; those of decimals, dates and times alone are defined:
  // https://hl7.org/fhirpath/2025Jan/#lowboundaryprecision-integer-decimal--date--datetime--time
  'rng-2 R5',
]);

/** A number where text must stand has no verdict either; the schema stage has told of it. */
function isRefused(key: string, version: FhirVersion, { told, path }: Scope): boolean {
  return refused.has(`${key} ${version}`) || told.has(pathPointer(path));
}

const found = new Map<string, Invariant | undefined>();

function nativeVerdict(key: string, version: FhirVersion, value: unknown, scope: Scope): boolean {
  // These two are held by the stages of elements and extensions.
  if (key === 'ele-1') return isObject(value) ? hasContent(value) : value !== null;
  if (key === 'ext-1') return isObject(value) && hasValueOrExtensions(value, scope);
  const name = `${key} ${version}`;
  if (!found.has(name)) found.set(name, rulesOf([key], version).invariants[0]);
  return found.get(name)?.holds(value, scope) ?? false;
}

/** How many verdicts were compared, of how many invariants. */
export function countText({ compared, differences }: VerdictCount): string {
  const total = [...compared.values()].reduce((sum, each) => sum + each, 0);
  return `${total} pairs of verdicts on ${compared.size} invariants, ${differences.length} differ`;
}
