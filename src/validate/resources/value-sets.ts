import { checkSystem } from '../terminology/terminology.ts';
import { isObject, type JsonObject, listOf, textOf } from '../walk/json.ts';
import type { Scope } from '../walk/scope.ts';

/**
 * The systems of which a value set takes codes are named by absolute URIs.
 * @see https://hl7.org/fhir/R4/valueset-definitions.html#ValueSet.compose.include.system
 */
export function checkValueSet(valueSet: JsonObject, scope: Scope): void {
  const compose = isObject(valueSet['compose']) ? valueSet['compose'] : {};
  for (const name of ['include', 'exclude']) {
    listOf(compose[name]).forEach((part, at) => {
      const system = isObject(part) ? textOf(part['system']) : undefined;
      if (system !== undefined) checkSystem(system, scope, ['compose', name, at, 'system']);
    });
  }
}
