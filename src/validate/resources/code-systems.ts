import { isObject, type JsonObject, listOf, objectsOf, textOf } from '../walk/json.ts';
import { report, type Scope } from '../walk/scope.ts';

/** What a code system says of its own content: how many concepts, which, and of which system. */
export function checkCodeSystem(system: JsonObject, scope: Scope): void {
  const content = textOf(system['content']);
  const supplements = textOf(system['supplements']);
  const { fhirVersion } = scope.definitions;
  checkCount(system, content, scope);
  if (content === 'not-present' && system['concept'] !== undefined) {
    const said = { rule: 'https://hl7.org/fhir/R4/codesystem-codesystem-content-mode.html' };
    report(scope, 'contradiction', { reason: 'no-concepts' }, said, ['concept']);
  }
  const rule = 'https://hl7.org/fhir/R4/codesystem-definitions.html#CodeSystem.supplements';
  if (content !== undefined && content !== 'supplement' && supplements !== undefined) {
    report(scope, 'contradiction', { reason: 'supplement' }, { rule }, ['content']);
  } else if (content === 'supplement' && supplements === undefined && fhirVersion !== 'R5') {
    // R5 has csd-4 for it.
    report(scope, 'missing-property', { reason: 'supplements' }, { rule }, ['supplements']);
  } else if (content === 'supplement' && supplements !== undefined) {
    checkSupplement(system, supplements, scope, []);
  }
  // The expression of csd-1 in R5 passes over concepts one level down.
  if (fhirVersion === 'R5') checkDistinct(system, new Map(), scope, []);
}

function checkCount(system: JsonObject, content: string | undefined, scope: Scope): void {
  const { count } = system;
  if (typeof count !== 'number' || system['concept'] === undefined) return;
  const found = conceptsIn(system);
  // A fragment or an example has fewer than the whole, and never more.
  const wrong = content === 'complete' ? found !== count : found > count;
  if (!wrong) return;
  const said = { rule: 'https://hl7.org/fhir/R4/codesystem-definitions.html#CodeSystem.count' };
  report(scope, 'contradiction', { reason: 'concept-count', count: found }, said, ['count']);
}

function conceptsIn(holder: JsonObject): number {
  return objectsOf(holder['concept']).reduce((sum, each) => sum + 1 + conceptsIn(each), 0);
}

/** A supplement defines no concepts: it adds to those that the system has. */
function checkSupplement(
  holder: JsonObject,
  supplements: string,
  scope: Scope,
  below: readonly (string | number)[],
): void {
  const codes = scope.definitions.codeSystems.get(supplements);
  if (codes === undefined) return;
  listOf(holder['concept']).forEach((concept, at) => {
    if (!isObject(concept)) return;
    const code = textOf(concept['code']);
    const place = [...below, 'concept', at];
    if (code !== undefined && !codes.has(code)) {
      const facts = { reason: 'system', system: supplements } as const;
      const rule = 'https://hl7.org/fhir/R4/codesystem.html#supplements';
      report(scope, 'unknown-code', facts, { rule, value: code }, [...place, 'code']);
    }
    checkSupplement(concept, supplements, scope, place);
  });
}

function checkDistinct(
  holder: JsonObject,
  depths: Map<string, number>,
  scope: Scope,
  below: readonly (string | number)[],
): void {
  listOf(holder['concept']).forEach((concept, at) => {
    if (!isObject(concept)) return;
    const code = textOf(concept['code']);
    const place = [...below, 'concept', at];
    const before = code === undefined ? undefined : depths.get(code);
    // Two at the top are told by csd-1.
    if (before !== undefined && before + below.length > 0) {
      report(scope, 'duplicate-key', { reason: 'concept' }, { rule: 'csd-1' }, [...place, 'code']);
    }
    if (code !== undefined && before === undefined) depths.set(code, below.length);
    checkDistinct(concept, depths, scope, place);
  });
}
