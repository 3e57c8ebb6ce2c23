import fhirpath, { type Model } from 'fhirpath';
import modelOfR4 from 'fhirpath/fhir-context/r4';
import modelOfR5 from 'fhirpath/fhir-context/r5';
import { newInR4b } from '../invariants/contained.ts';
import { expressions as ofR4 } from '../tables/r4-expressions.ts';
import { expressions as ofR4b } from '../tables/r4b-expressions.ts';
import { expressions as ofR5 } from '../tables/r5-expressions.ts';
import { type Compiler, createEngine, createEvaluator, type ExpressionEngine } from './engine.ts';

export type { ExpressionEngine } from './engine.ts';

/**
 * Engines for `level: 'thorough'` of the validators: every invariant as HL7 published it, evaluated by
 * the library fhirpath, which must be installed beside this one.
 */
export const thoroughR4: ExpressionEngine = createEngine(
  'R4',
  createEvaluator('R4', ofR4, compilerOf(modelOfR4)),
);
/** The engine for R4B. */
export const thoroughR4b: ExpressionEngine = createEngine(
  'R4B',
  createEvaluator('R4B', ofR4b, compilerOf(modelOfR4b())),
);
/** The engine for R5. */
export const thoroughR5: ExpressionEngine = createEngine(
  'R5',
  createEvaluator('R5', ofR5, compilerOf(modelOfR5)),
);

/**
 * Gives fhirpath a model of FHIR R4B, which it has none of. R4B changed no type that a path of the
 * published expressions leads through; but dom-r4b names types that R4 does not have.
 *
 * @returns The model of R4 with the resource types that are new in R4B.
 * @example
 * const evaluate = compilerOf(modelOfR4b());
 */
export function modelOfR4b(): Model {
  const parents = Object.fromEntries(newInR4b.map((type) => [type, 'DomainResource']));
  // The library keeps the names of all types in a set of which its own types do not tell.
  const known: Model & { readonly availableTypes?: Iterable<string> } = modelOfR4;
  const added = { availableTypes: new Set([...(known.availableTypes ?? []), ...newInR4b]) };
  return { ...modelOfR4, ...added, type2Parent: { ...modelOfR4.type2Parent, ...parents } };
}

/**
 * Compiles FHIRPath expressions on elements of one FHIR version.
 *
 * @param model Model of the version, from fhirpath or {@link modelOfR4b}.
 * @returns A function that compiles an expression on elements of a type, and resolves references by
 *   a function given to it. What it gives throws where fhirpath does.
 * @example
 * const evaluate = compilerOf(modelOfR4b());
 * @see https://hl7.org/fhirpath/
 */
export function compilerOf(model: Model): Compiler {
  return (expression, base, follow) => {
    const compiled = fhirpath.compile({ base, expression: corrected(expression) }, model, {
      async: false,
      traceFn: () => {},
      userInvocationTable: {
        resolve: {
          fn: (inputs: unknown[]) => inputs.flatMap((input) => typed(follow(plain(input)), model)),
          arity: { 0: [] },
          internalStructures: true,
        },
      },
    });
    // The library takes plain data and does not change it.
    return (element, variables) => compiled(element as object, { ...variables });
  };
}

function plain(node: unknown): unknown {
  return fhirpath.util.valData(node);
}

/** A resource as a node that knows its type; nothing where there is none. */
function typed(resource: unknown, model: Model): unknown[] {
  if (resource === undefined) return [];
  return fhirpath.evaluate(resource, '$this', {}, model, {
    async: false,
    resolveInternalTypes: false,
  });
}

/** R4 wrote `as` on many elements, which FHIRPath allows on one; R5 has `ofType` in the same places. */
function corrected(expression: string): string {
  return expression.replaceAll('.as(', '.ofType(').replaceAll('where(as(', 'where(ofType(');
}
