import { fhirVersionNumber } from '../../fhir/version.ts';
import { choiceName, isObject, type JsonObject, listOf, objectsOf, textOf } from '../walk/json.ts';
import { report, type Scope } from '../walk/scope.ts';
import { isType, typesAt } from './element-paths.ts';
import { checkExpression } from './expression-paths.ts';

const page = 'https://hl7.org/fhir/R4/structuredefinition-definitions.html#StructureDefinition';
const elements = 'https://hl7.org/fhir/R4/elementdefinition-definitions.html#ElementDefinition';

/** Whether a definition fits the types of FHIR that it speaks of, beyond its own invariants. */
export function checkStructure(structure: JsonObject, scope: Scope): void {
  const type = textOf(structure['type']) ?? '';
  const context = listOf(structure['context']);
  if (context.length > 0 && type !== 'Extension') {
    report(scope, 'contradiction', { reason: 'context' }, { rule: `${page}.context` }, ['context']);
  } else {
    context.forEach((each, at) => {
      if (isObject(each)) checkContext(each, scope, ['context', at]);
    });
  }
  if (!isOfVersion(structure, scope)) return;
  // A snapshot repeats what the differential says.
  const name = isObject(structure['differential']) ? 'differential' : 'snapshot';
  const view = structure[name];
  const list = isObject(view) ? listOf(view['element']) : [];
  if (structure['kind'] !== 'logical') checkFirstSteps(list, type, scope, name);
  const narrows = isConstraint(structure) && structure['kind'] !== 'logical';
  const known = narrows && scope.definitions.types.get(type) !== undefined;
  list.forEach((element, at) => {
    if (!isObject(element)) return;
    const below = [name, 'element', at];
    if (structure['kind'] !== 'logical') checkTypes(element, scope, below);
    if (known) checkElement(element, type, scope, below);
    if (type === 'Extension') checkUrl(element, structure, scope, below);
  });
}

/** sdf-8a and sdf-8, whose expressions the fast level does not evaluate; the thorough one tells them. */
function checkFirstSteps(
  list: readonly unknown[],
  type: string,
  scope: Scope,
  name: 'differential' | 'snapshot',
): void {
  if (scope.engine !== undefined || type === '') return;
  const astray = objectsOf(list).some(({ path }) => firstStep(path) !== type);
  if (!astray) return;
  const key = name === 'differential' ? 'sdf-8a' : 'sdf-8';
  const facts = { reason: 'published', says: 'a path begins with another type', key } as const;
  report(scope, 'broken-invariant', facts, { rule: key }, [name]);
}

function firstStep(path: unknown): string | undefined {
  return typeof path === 'string' ? path.split('.')[0] : undefined;
}

/**
 * What is no specialization of its base is a constraint on its type, whether that is told or not.
 * @see https://hl7.org/fhir/R4/structuredefinition-definitions.html#StructureDefinition.type
 */
function isConstraint({ derivation, baseDefinition }: JsonObject): boolean {
  if (derivation === undefined) return baseDefinition !== undefined;
  return derivation === 'constraint';
}

/** A definition for another version is held to the types of that one, which are not at hand. */
function isOfVersion(structure: JsonObject, { definitions }: Scope): boolean {
  const version = textOf(structure['fhirVersion']);
  const [major, minor] = fhirVersionNumber[definitions.fhirVersion].split('.');
  return version === undefined || version.startsWith(`${major}.${minor}.`);
}

/** @see https://hl7.org/fhir/R4/defining-extensions.html#context */
function checkContext(
  context: JsonObject,
  scope: Scope,
  below: readonly (string | number)[],
): void {
  const expression = textOf(context['expression']);
  if (expression === undefined || isForSomeVersions(context)) return;
  if (context['type'] === 'fhirpath') {
    checkExpression(expression, 'open', scope, [...below, 'expression']);
    return;
  }
  // The other type of context is the URL of an extension.
  if (context['type'] !== 'element' || /[:#]/.test(expression)) return;
  const [first = ''] = expression.split('.');
  if (isType(first, scope) && typesAt(expression, scope) !== 'unknown') return;
  const said = { rule: 'https://hl7.org/fhir/R4/defining-extensions.html#context' };
  report(scope, 'invalid-value', { reason: 'element-path' }, said, [...below, 'expression']);
}

/** An extension for several versions names places that only some of them have. */
function isForSomeVersions({ extension }: JsonObject): boolean {
  return objectsOf(extension).some(({ url }) => textOf(url)?.endsWith('/version-specific-use'));
}

function checkTypes(element: JsonObject, scope: Scope, below: readonly (string | number)[]): void {
  listOf(element['type']).forEach((each, at) => {
    const code = isObject(each) ? textOf(each['code']) : undefined;
    if (code === undefined || isType(code, scope)) return;
    const said = { rule: `${elements}.type.code` };
    report(scope, 'unknown-code', { reason: 'type' }, said, [...below, 'type', at, 'code']);
  });
}

/** A constraint defines no new elements, and fixes values of the types that they have. */
function checkElement(
  element: JsonObject,
  type: string,
  scope: Scope,
  below: readonly (string | number)[],
): void {
  const path = textOf(element['path']);
  if (path === undefined || firstStep(path) !== type) return;
  const types = typesAt(path, scope);
  if (types === 'unknown') {
    const said = { rule: `${page}.derivation` };
    report(scope, 'invalid-value', { reason: 'element-path' }, said, [...below, 'path']);
    return;
  }
  if (types === 'open') return;
  const own = objectsOf(element['type']).flatMap(({ code }) => textOf(code) ?? []);
  const allowed = own.length > 0 ? own : types;
  for (const word of ['fixed', 'pattern']) {
    const name = choiceName(element, word);
    const given = name?.slice(word.length).toLowerCase();
    if (name === undefined || allowed.some((each) => isSameType(each, given))) continue;
    const facts = { reason: 'fixed-type', types: allowed } as const;
    report(scope, 'wrong-type', facts, { rule: `${elements}.${word}_x_` }, [...below, name]);
  }
}

/** Types of FHIRPath stand for the primitives of ids and urls: `http://hl7.org/fhirpath/System.String`. */
function isSameType(allowed: string, given: string | undefined): boolean {
  return allowed.includes(':') || allowed.toLowerCase() === given;
}

/** The url of an extension is that of its definition. */
function checkUrl(
  element: JsonObject,
  { url }: JsonObject,
  scope: Scope,
  below: readonly (string | number)[],
): void {
  const fixed = textOf(element['fixedUri']);
  if (element['path'] !== 'Extension.url' || fixed === undefined || fixed === url) return;
  const said = { rule: 'https://hl7.org/fhir/R4/extensibility.html#Extension.url' };
  report(scope, 'contradiction', { reason: 'extension-url' }, said, [...below, 'fixedUri']);
}
