import { isObject, type JsonObject, listOf, textOf } from '../walk/json.ts';
import { report, type Scope } from '../walk/scope.ts';
import { isType } from './element-paths.ts';
import { checkExpression } from './expression-paths.ts';

const page = 'https://hl7.org/fhir/R4/searchparameter-definitions.html#SearchParameter';

/** What a parameter looks at, and what a composite one is made of. */
export function checkSearchParameter(parameter: JsonObject, scope: Scope): void {
  if (parameter['type'] === 'composite' && parameter['component'] === undefined) {
    // HL7's validator asks for it in R5 alone, and R4 says it in no words.
    const severity = scope.definitions.fhirVersion === 'R5' ? 'error' : 'warning';
    const said = { severity, rule: `${page}.component` } as const;
    report(scope, 'missing-property', { reason: 'search-components' }, said, ['component']);
  }
  checkExpressions(parameter, scope);
}

/** @see https://hl7.org/fhir/R4/searchparameter-definitions.html#SearchParameter.expression */
function checkExpressions(parameter: JsonObject, scope: Scope): void {
  const bases = listOf(parameter['base']).flatMap((each) => textOf(each) ?? []);
  const from = bases.length > 0 && bases.every((each) => isType(each, scope)) ? bases : 'open';
  const expression = textOf(parameter['expression']);
  const found =
    expression === undefined ? 'open' : checkExpression(expression, from, scope, ['expression']);
  listOf(parameter['component']).forEach((component, at) => {
    const inner = isObject(component) ? textOf(component['expression']) : undefined;
    if (inner !== undefined) {
      checkExpression(inner, found, scope, ['component', at, 'expression']);
    }
  });
}
