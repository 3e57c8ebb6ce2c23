import type { SchemaError, SchemaValidator } from '../../data/schema-errors.ts';
import type { SchemaNode } from '../../data/schema-words.ts';
import { pathPointer } from '../../issues/path.ts';
import { isObject, type JsonObject } from '../walk/json.ts';
import { type Definitions, onDemand, type Property, type TypeInfo } from './definitions.ts';
import type { PrimitiveRow } from './table-types.ts';

/**
 * First stage: whether objects have the properties of their types, lists and primitives the form of
 * theirs, and nothing required is missing. It speaks as a compiled JSON Schema does, so that both are
 * put into words in one place. A resource of a type that is not held is looked at as far as what
 * every resource has: id, meta, narrative, contained resources, extensions, nothing empty.
 * @see https://hl7.org/fhir/R4/json.html
 */
export function structureValidator(
  definitions: Definitions,
  resourceTypes: readonly string[],
): SchemaValidator {
  const forms = onDemand((name) => {
    const info = definitions.types.get(name);
    return info && typeForm(info, definitions);
  });
  const known: ReadonlySet<unknown> = new Set(resourceTypes);
  const validate: SchemaValidator = (data) => {
    const errors: SchemaError[] = [];
    visitResource(data, { forms, known, errors, path: [], tags: resourceTypes });
    if (errors.length === MOST_FAULTS) errors.unshift(furtherFaults);
    validate.errors = errors.length > 0 ? errors : null;
    return errors.length === 0;
  };
  return validate;
}

/** Faults that are kept in memory: some hundred bytes each, until the list of issues is cut. */
const MOST_FAULTS = 100_000;

const furtherFaults: SchemaError = {
  instancePath: '',
  keyword: 'x-faults',
  params: { limit: MOST_FAULTS },
};

/** What is known of a type, ready for the walk. */
interface TypeForm {
  readonly properties: ReadonlyMap<string, Form>;
  readonly required: readonly RequiredForm[];
  readonly node: SchemaNode;
  /** With the names of all properties, for what is told of another one. */
  readonly names: SchemaNode;
}

interface RequiredForm {
  readonly name: string;
  /** Name of its extensions; none where it can have none. */
  readonly extra: string | undefined;
  readonly node: SchemaNode;
}

type Kind = 'primitive' | 'object' | 'resource';

interface Form {
  readonly kind: Kind;
  readonly list: boolean;
  readonly max: number;
  /** Type of an object. */
  readonly type: string;
  readonly node: SchemaNode;
  readonly primitive: PrimitiveForm | undefined;
}

interface PrimitiveForm {
  readonly row: PrimitiveRow;
  readonly pattern: RegExp | undefined;
  /** Longer texts than a pattern can take are right as well. */
  readonly endless: boolean;
  readonly codes: ReadonlySet<string> | undefined;
}

interface Walk {
  readonly forms: { get(name: string): TypeForm | undefined };
  readonly known: ReadonlySet<unknown>;
  readonly tags: readonly string[];
  readonly errors: SchemaError[];
  readonly path: (string | number)[];
}

function typeForm(info: TypeInfo, definitions: Definitions): TypeForm {
  const properties = new Map<string, Form>();
  // One pattern is compiled once for a type, and not for each of its elements.
  const primitives = new Map<string, PrimitiveForm>();
  const primitiveOf = (type: string, codes?: ReadonlySet<string>): PrimitiveForm => {
    const found = primitives.get(type) ?? newPrimitive(type, definitions);
    primitives.set(type, found);
    return codes === undefined ? found : { ...found, codes };
  };
  properties.set('id', attribute(primitiveOf(info.isResource ? 'id' : 'string'), info.isResource));
  for (const [name, property] of info.properties) {
    properties.set(name, formOf(name, property, primitiveOf));
  }
  const required = info.required.map(([name, property]): RequiredForm => {
    const extra = info.properties.has(`_${name}`) ? `_${name}` : undefined;
    return { name, extra, node: nodeOf(property) };
  });
  const title = info.name;
  const names = Object.fromEntries([...properties.keys()].map((each) => [each, {}]));
  return { properties, required, node: { title }, names: { title, properties: names } };
}

function newPrimitive(type: string, { primitives }: Definitions): PrimitiveForm {
  const row = primitives[type] ?? { type: 'string' };
  const pattern = row.pattern === undefined ? undefined : new RegExp(row.pattern, 'u');
  // Base64 has no longest length; the stage of the data types reads it without such a pattern.
  return { row, pattern, endless: type === 'base64Binary', codes: undefined };
}

/** A longer text is of no type that has a pattern with repetitions in it, which would need a stack. */
const longestPatterned = 1024 * 1024;

function attribute(primitive: PrimitiveForm, isResource: boolean): Form {
  const type = isResource ? 'id' : 'string';
  const max = Number.POSITIVE_INFINITY;
  return { kind: 'primitive', list: false, max, type, node: { title: type }, primitive };
}

function formOf(
  name: string,
  property: Property,
  primitiveOf: (type: string, codes?: ReadonlySet<string>) => PrimitiveForm,
): Form {
  const { type, list, max, listed } = property;
  if (name.startsWith('_')) {
    const node = { title: 'Element' };
    return { kind: 'object', list, max, type: 'Element', node, primitive: undefined };
  }
  const primitive = property.primitive ? primitiveOf(type, listed) : undefined;
  const kind = property.primitive ? 'primitive' : type === 'Resource' ? 'resource' : 'object';
  return { kind, list, max, type, node: itemNode(property), primitive };
}

function itemNode({ type, listed }: Property): SchemaNode {
  if (listed !== undefined) return { type: 'string', enum: [...listed] };
  return { title: type === 'Resource' ? 'ResourceList' : type };
}

function nodeOf(property: Property): SchemaNode {
  return property.list ? { type: 'array' } : itemNode(property);
}

function say(
  walk: Walk,
  keyword: string,
  parentSchema: SchemaNode,
  data: unknown,
  params: SchemaError['params'] = {},
): void {
  if (walk.errors.length === MOST_FAULTS) return;
  const at = pathPointer(walk.path);
  walk.errors.push({ instancePath: at, keyword, params, parentSchema: { ...parentSchema }, data });
}

function visitResource(value: unknown, walk: Walk): void {
  if (!isObject(value)) {
    say(walk, 'type', { title: 'ResourceList' }, value);
    return;
  }
  const { resourceType: tagValue } = value;
  const form = typeof tagValue === 'string' ? walk.forms.get(tagValue) : undefined;
  if (form !== undefined && walk.known.has(tagValue)) {
    visitObject(value, form, walk, true);
    return;
  }
  const words = { 'x-tags': walk.tags };
  say(walk, 'discriminator', words, value, { tag: 'resourceType', tagValue });
  const base = walk.forms.get('DomainResource');
  if (base !== undefined) visitOpen(value, base, walk);
}

function visitObject(value: JsonObject, form: TypeForm, walk: Walk, resource: boolean): void {
  let any = false;
  for (const name in value) {
    any = true;
    const property = form.properties.get(name);
    if (property !== undefined) {
      walk.path.push(name);
      visitProperty(value[name], property, walk);
      walk.path.pop();
    } else if (!resource || name !== 'resourceType') {
      say(walk, 'additionalProperties', form.names, value, { additionalProperty: name });
    }
  }
  if (!any && !resource) say(walk, 'minProperties', form.node, value);
  for (const { name, extra, node } of form.required) {
    if (value[name] !== undefined || (extra !== undefined && value[extra] !== undefined)) continue;
    say(walk, 'required', { properties: { [name]: node } }, value, { missingProperty: name });
  }
}

function visitProperty(value: unknown, form: Form, walk: Walk): void {
  if (!form.list) {
    visitItem(value, form, walk);
  } else if (!Array.isArray(value)) {
    say(walk, 'type', { type: 'array' }, value);
  } else if (value.length === 0) {
    say(walk, 'minItems', {}, value);
  } else {
    if (value.length > form.max) say(walk, 'maxItems', {}, value, { limit: form.max });
    // In the two lists of a primitive, null keeps the place of what only the other has.
    const nullable = form.kind === 'primitive' || form.type === 'Element';
    for (let at = 0; at < value.length; at++) {
      const item: unknown = value[at];
      if (item === null && nullable) continue;
      walk.path.push(at);
      visitItem(item, form, walk);
      walk.path.pop();
    }
  }
}

function visitItem(value: unknown, form: Form, walk: Walk): void {
  if (form.primitive !== undefined) {
    visitPrimitive(value, form.primitive, form.node, walk);
  } else if (form.kind === 'resource') {
    visitResource(value, walk);
  } else if (!isObject(value)) {
    say(walk, 'type', form.node, value);
  } else {
    visitObject(value, walk.forms.get(form.type) ?? noForm(form.type), walk, false);
  }
}

/** A type that the tables lack would be a fault of theirs; tests hold that there is none. */
function noForm(name: string): never {
  throw new Error(`no definition of ${name}`);
}

function visitPrimitive(
  value: unknown,
  primitive: PrimitiveForm,
  node: SchemaNode,
  walk: Walk,
): void {
  const wrong = faultOf(value, primitive);
  if (wrong !== undefined) say(walk, wrong, node, value);
}

/** The keyword of JSON Schema that a value breaks, if any. */
function faultOf(
  value: unknown,
  { row, pattern, endless, codes }: PrimitiveForm,
): string | undefined {
  if (!isOfType(value, row.type)) return 'type';
  if (typeof value === 'number') {
    const { minimum = Number.NEGATIVE_INFINITY, maximum = Number.POSITIVE_INFINITY } = row;
    return value < minimum || value > maximum ? 'minimum' : undefined;
  }
  if (typeof value !== 'string') return undefined;
  if (codes !== undefined) return codes.has(value) ? undefined : 'enum';
  if (row.minLength !== undefined && value.length < row.minLength) return 'minLength';
  if (pattern === undefined) return undefined;
  if (value.length > longestPatterned) return endless ? undefined : 'pattern';
  return pattern.test(value) ? undefined : 'pattern';
}

function isOfType(value: unknown, type: PrimitiveRow['type']): boolean {
  switch (type) {
    case 'string':
      return typeof value === 'string';
    case 'boolean':
      return typeof value === 'boolean';
    case 'integer':
      return Number.isInteger(value);
    case 'number':
      return typeof value === 'number' && Number.isFinite(value);
  }
}

/** A resource, or something in it, of which only what every resource has is known. */
function visitOpen(value: JsonObject, base: TypeForm, walk: Walk): void {
  for (const name in value) {
    const property = base.properties.get(name);
    walk.path.push(name);
    if (property !== undefined && isCommon(name, value)) {
      visitProperty(value[name], property, walk);
    } else {
      visitOpenValue(value[name], base, walk);
    }
    walk.path.pop();
  }
}

/** Extensions stand everywhere; the rest of a resource's own elements only at its root. */
function isCommon(name: string, value: JsonObject): boolean {
  return name === 'extension' || name === 'modifierExtension' || 'resourceType' in value;
}

function visitOpenValue(value: unknown, base: TypeForm, walk: Walk): void {
  if (value === null) {
    if (typeof walk.path.at(-1) === 'string') say(walk, 'type', {}, value);
  } else if (Array.isArray(value)) {
    if (value.length === 0) say(walk, 'minItems', {}, value);
    value.forEach((item: unknown, at) => {
      walk.path.push(at);
      visitOpenValue(item, base, walk);
      walk.path.pop();
    });
  } else if (value === '') {
    say(walk, 'minLength', {}, value);
  } else if (isObject(value)) {
    if (Object.keys(value).length === 0) say(walk, 'minProperties', {}, value);
    else if (typeof value['resourceType'] === 'string') visitResource(value, walk);
    else visitOpen(value, base, walk);
  }
}
