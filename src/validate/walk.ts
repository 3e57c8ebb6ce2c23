import { type BundleIndex, createIndex } from './bundle-index.ts';
import type { Property } from './definitions.ts';
import { checkChoices, checkContent, checkElementId, checkExtra, checkNull } from './elements.ts';
import { checkInvariants } from './invariants.ts';
import { isObject, type JsonObject, textOf } from './json.ts';
import type { Plan, PlannedProperty, PlannedType } from './plan.ts';
import { checkClaims } from './profiles/claims.ts';
import { checkContainedIds, keepLinksOf } from './references.ts';
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
  const type = plan.types.get(textOf(resource['resourceType']) ?? '');
  if (type === undefined) {
    // That it is not known, or not held, was told by the schema stage.
    keepLinksOf(resource, scope);
    if (scope.profiles !== undefined) checkClaims(resource, scope, scope.issues.length);
    return;
  }
  const { resource: outer, root, depth, index, entry, elementIds, contained, idsInRoot } = scope;
  const start = scope.issues.length;
  scope.resource = resource;
  if (!property.path.endsWith('.contained')) {
    scope.root = resource;
    scope.contained = undefined;
    scope.idsInRoot = undefined;
  }
  scope.depth = scope.path.length;
  scope.elementIds = undefined;
  if (type.info.name === 'Bundle') scope.index = indexOf(resource, scope);
  if (resource['contained'] !== undefined) checkContainedIds(resource, scope);
  visitObject(resource, type, scope, plan, property);
  if (resource['meta'] !== undefined) checkClaims(resource, scope, start);
  scope.resource = outer;
  scope.root = root;
  scope.depth = depth;
  scope.index = index;
  scope.entry = entry;
  scope.elementIds = elementIds;
  scope.contained = contained;
  scope.idsInRoot = idsInRoot;
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
  const { path } = scope;
  let content = false;
  let choices: readonly Property[] = none;
  // Own names come first, and a name that is no property of the type is passed over.
  for (const name in value) {
    const known = type.properties.get(name);
    if (known === undefined) {
      if (name === 'id' && property.type !== 'Resource') checkElementId(value['id'], scope);
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
  scope.engine?.look(value, placesOf(type.info.name, property), scope);
}

/** A resource is no element. */
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
  { property, check, invariants }: PlannedProperty,
  scope: Scope,
  holder: JsonObject,
): void {
  if (check !== undefined && isPrimitiveValue(value)) check(value, scope, property, holder);
  if (invariants.length > 0) checkInvariants(value, invariants, scope);
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
  checkExtra(extra, value, scope);
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

function visitElement(
  value: unknown,
  { property, invariants, target }: PlannedProperty,
  scope: Scope,
  plan: Plan,
): void {
  if (!isObject(value)) return;
  scope.trail.push(property);
  if (target !== undefined) visitObject(value, target, scope, plan, property);
  else if (property.type === 'Resource') visitResource(value, scope, plan, property);
  if (invariants.length > 0) checkInvariants(value, invariants, scope);
  // A part of a resource has its place for type, and was looked at as that.
  if (property.path !== property.type) scope.engine?.look(value, [property.path], scope);
  scope.trail.pop();
}
