import { spend } from '../../issues/budget.ts';
import { type BundleIndex, createIndex } from '../bundles/bundle-index.ts';
import { checkContainedIds } from '../bundles/references.ts';
import { bareResources, type Property, rootProperty } from '../elements/definitions.ts';
import {
  checkChoices,
  checkContent,
  checkElementId,
  checkExtra,
  checkNull,
} from '../elements/elements.ts';
import { checkInvariants, checkUnheld } from '../invariants/invariants.ts';
import { checkClaims } from '../profiles/claims.ts';
import { isObject, type JsonObject, textOf } from './json.ts';
import type { Plan, PlannedProperty, PlannedType } from './plan.ts';
import type { Scope } from './scope.ts';

/**
 * Looks once at every element of a resource and of those in it, in the order in which they stand.
 * @param property what the resource stands under
 */
export function visitResource(
  resource: JsonObject,
  scope: Scope,
  plan: Plan,
  property: Property,
): void {
  const name = textOf(resource['resourceType']) ?? '';
  const type = scope.resourceTypes.has(name) ? plan.types.get(name) : undefined;
  const { resource: outer, root, depth, index, entry } = scope;
  const { elementIds, contained, idsInRoot, open } = scope;
  const start = scope.issues.length;
  scope.resource = resource;
  const inside = property.path.endsWith('.contained');
  if (!inside) {
    scope.root = resource;
    scope.contained = undefined;
    scope.idsInRoot = undefined;
  }
  scope.depth = scope.path.length;
  scope.elementIds = undefined;
  scope.open = type === undefined;
  if (name === 'Bundle') scope.index = indexOf(resource, scope);
  if (resource['contained'] !== undefined) checkContainedIds(resource, scope);
  if (type === undefined) visitOpenResource(resource, name, scope, plan);
  else visitObject(resource, type, scope, plan, property);
  if (resource['meta'] !== undefined || name === 'Observation') checkClaims(resource, scope, start);
  scope.resource = outer;
  scope.root = root;
  scope.depth = depth;
  scope.index = index;
  scope.entry = entry;
  scope.elementIds = elementIds;
  scope.open = open;
  // What was looked up for one contained resource holds for those after it.
  if (inside) return;
  scope.contained = contained;
  scope.idsInRoot = idsInRoot;
}

/** Looks at one entry of a bundle, whose number stands in the path of `scope`. */
export function visitEntry(entry: unknown, scope: Scope, plan: Plan): void {
  const known = plan.types.get('Bundle')?.properties.get('entry');
  if (known !== undefined) visitElement(entry, known, scope, plan);
}

/** What is done at a bundle whose entries were looked at one by one before. */
export function withoutEntries(plan: Plan): Plan {
  const bundle = plan.types.get('Bundle');
  if (bundle === undefined) return plan;
  const properties = new Map(bundle.properties);
  const entry = properties.get('entry');
  if (entry !== undefined) properties.set('entry', { ...entry, idle: true });
  const around = { ...bundle, properties };
  return { ...plan, types: { get: (name) => (name === 'Bundle' ? around : plan.types.get(name)) } };
}

/**
 * A resource whose type is not known, or not held (the stage of structure has told so): what every
 * resource has is looked at, and extensions, ids and references wherever they stand.
 */
function visitOpenResource(resource: JsonObject, name: string, scope: Scope, plan: Plan): void {
  const base = plan.types.get(bareResources.has(name) ? 'Resource' : 'DomainResource');
  if (base === undefined) return;
  const why = 'the definition of the type is not held by this entry';
  scope.unchecked.push({ rule: name, path: [...scope.path], why });
  visitOpen(resource, base, scope, plan);
  checkInvariants(resource, base.invariants, scope);
}

function visitOpen(value: JsonObject, base: PlannedType, scope: Scope, plan: Plan): void {
  for (const name in value) {
    scope.path.push(name);
    const common = value === scope.resource || isExtensions(name);
    const known = common ? base.properties.get(name) : undefined;
    if (known !== undefined) visitProperty(value, name, known, scope, plan);
    else if (name !== 'id') visitOpenValue(value[name], base, scope, plan);
    scope.path.pop();
  }
  if (value !== scope.resource && value['id'] !== undefined) checkElementId(value['id'], scope);
}

function isExtensions(name: string): boolean {
  return name === 'extension' || name === 'modifierExtension';
}

function visitOpenValue(value: unknown, base: PlannedType, scope: Scope, plan: Plan): void {
  if (Array.isArray(value)) {
    for (let at = 0; at < value.length; at++) {
      scope.path.push(at);
      visitOpenValue(value[at], base, scope, plan);
      scope.path.pop();
    }
  } else if (isObject(value)) {
    const reference = plan.types.get('Reference');
    if (typeof value['resourceType'] === 'string') {
      visitResource(value, scope, plan, openResource);
    } else if (reference !== undefined && isReference(value, reference)) {
      scope.trail.push(openReference);
      visitObject(value, reference, scope, plan, openReference);
      scope.trail.pop();
    } else {
      visitOpen(value, base, scope, plan);
    }
  }
}

const openResource = rootProperty('', 'Resource');
const openReference = rootProperty('Reference', 'Reference');

/** No other type of FHIR has a text `reference` and nothing that a Reference could not have. */
function isReference(value: JsonObject, { properties }: PlannedType): boolean {
  return (
    typeof value['reference'] === 'string' &&
    Object.keys(value).every((name) => name === 'id' || properties.has(name))
  );
}

/** The outermost bundle was indexed before the walk. */
function indexOf(bundle: JsonObject, { index }: Scope): BundleIndex {
  return index?.bundle === bundle ? index : createIndex(bundle);
}

function visitObject(
  value: JsonObject,
  type: PlannedType,
  scope: Scope,
  plan: Plan,
  property: Property,
): void {
  spend(1);
  const { path } = scope;
  let content = false;
  let choices: readonly Property[] = none;
  // Own names come first, and a name that is not a property of the type is passed over.
  for (const name in value) {
    const known = type.properties.get(name);
    if (known === undefined) {
      // Differential and snapshot of a definition name the same elements.
      const named = property.type !== 'Resource' && property.type !== 'ElementDefinition';
      if (name === 'id' && named) checkElementId(value['id'], scope);
      continue;
    }
    content = true;
    if (known.property.choice !== undefined) choices = withChoice(choices, known.property);
    if (known.idle && scope.engine === undefined) continue;
    path.push(name);
    visitProperty(value, name, known, scope, plan);
    path.pop();
  }
  checkWhole(value, type, property, scope, content, choices);
}

/** What is looked at once all properties of an object are known. */
function checkWhole(
  value: JsonObject,
  type: PlannedType,
  property: Property,
  scope: Scope,
  content: boolean,
  choices: readonly Property[],
): void {
  if (!content && property.type !== 'Resource') checkContent(value, scope);
  if (choices.length > 1 || type.info.requiredChoices.length > 0) {
    checkChoices(choices, type.info, scope);
  }
  for (const check of type.checks) check(value, scope, property);
  if (type.invariants.length > 0) checkInvariants(value, type.invariants, scope);
  if (type.unheld.length > 0) checkUnheld(value, type.info.name, type.unheld, scope);
  scope.engine?.look(value, placesOf(type.info.name, property), scope);
}

/** A resource is not an element. */
function placesOf(type: string, property: Property): string[] {
  return property.type === 'Resource' ? [type] : ['Element', type];
}

const none: readonly Property[] = [];

function withChoice(before: readonly Property[], property: Property): readonly Property[] {
  return before.length === 0 ? property.alone : [...before, property];
}

function visitProperty(
  value: JsonObject,
  name: string,
  known: PlannedProperty,
  scope: Scope,
  plan: Plan,
): void {
  if (name.charCodeAt(0) === underscore) visitExtras(value, name, known, scope, plan);
  else if (known.property.primitive) visitPrimitives(value, name, known, scope);
  else visitElements(value[name], known, scope, plan);
}

/** `_` before a name: the ids and extensions of a primitive. */
const underscore = 0x5f;

function visitPrimitives(
  holder: JsonObject,
  name: string,
  known: PlannedProperty,
  scope: Scope,
): void {
  const value = holder[name];
  const { property } = known;
  if (!property.list) {
    visitPrimitive(value, known, scope, holder);
    return;
  }
  if (!Array.isArray(value)) return;
  for (let at = 0; at < value.length; at++) {
    scope.path.push(at);
    const item: unknown = value[at];
    if (item === null) checkNull(holder, name, at, scope);
    else visitPrimitive(item, known, scope, holder);
    scope.path.pop();
  }
}

function visitPrimitive(
  value: unknown,
  { property, check, invariants, unheld }: PlannedProperty,
  scope: Scope,
  holder: JsonObject,
): void {
  if (check !== undefined && isPrimitiveValue(value)) check(value, scope, property, holder);
  if (invariants.length > 0) checkInvariants(value, invariants, scope);
  if (unheld.length > 0) checkUnheld(value, property.type, unheld, scope);
  scope.engine?.look(value, ['Element', property.type, property.path], scope);
}

function isPrimitiveValue(value: unknown): value is string | number | boolean {
  return typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean';
}

function visitExtras(
  holder: JsonObject,
  name: string,
  known: PlannedProperty,
  scope: Scope,
  plan: Plan,
): void {
  const extras = holder[name];
  const value = holder[name.slice(1)];
  if (!known.property.list) {
    visitExtra(extras, value, known.property, scope, plan);
    return;
  }
  if (!Array.isArray(extras)) return;
  for (let at = 0; at < extras.length; at++) {
    scope.path.push(at);
    const item: unknown = Array.isArray(value) ? value[at] : undefined;
    visitExtra(extras[at], item, known.property, scope, plan);
    scope.path.pop();
  }
}

function visitExtra(
  extra: unknown,
  value: unknown,
  property: Property,
  scope: Scope,
  plan: Plan,
): void {
  checkExtra(extra, value, property, scope);
  if (!isObject(extra)) return;
  if (extra['id'] !== undefined) checkElementId(extra['id'], scope);
  const extension = plan.extension;
  scope.trail.push(property);
  scope.path.push('extension');
  visitElements(extra['extension'], extension, scope, plan);
  scope.path.pop();
  scope.trail.pop();
}

function visitElements(value: unknown, known: PlannedProperty, scope: Scope, plan: Plan): void {
  if (!Array.isArray(value)) {
    // One where a list must stand was told by the schema stage, and so was the reverse.
    if (!known.property.list) visitElement(value, known, scope, plan);
    return;
  }
  if (!known.property.list) return;
  for (let at = 0; at < value.length; at++) {
    scope.path.push(at);
    if (known.property.type === 'Bundle.entry') scope.entry = at;
    visitElement(value[at], known, scope, plan);
    scope.path.pop();
  }
}

function visitElement(value: unknown, known: PlannedProperty, scope: Scope, plan: Plan): void {
  if (!isObject(value)) return;
  const { property, invariants, unheld } = known;
  scope.trail.push(property);
  if (property.type === 'Resource') {
    visitResource(value, scope, plan, property);
  } else {
    known.target ??= plan.types.get(property.type);
    if (known.target !== undefined) visitObject(value, known.target, scope, plan, property);
  }
  if (invariants.length > 0) checkInvariants(value, invariants, scope);
  if (unheld.length > 0) checkUnheld(value, property.type, unheld, scope);
  // A part of a resource has its place for type, and was looked at as that.
  if (property.path !== property.type) scope.engine?.look(value, [property.path], scope);
  scope.trail.pop();
}
