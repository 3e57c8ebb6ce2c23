import type { TypeInfo, Types } from '../../elements/definitions.ts';
import { isObject, type JsonObject, textOf } from '../../walk/json.ts';
import { calls } from './functions.ts';
import {
  bool,
  type Context,
  type Frame,
  type Item,
  type Items,
  numberOf,
  one,
  truth,
  Undecided,
} from './items.ts';
import { logic, operator } from './operators.ts';
import type { Node } from './parse.ts';

export function evaluate(node: Node, input: Items, frame: Frame): Items {
  frame.context.budget -= 1 + input.length;
  if (frame.context.budget < 0) throw new Undecided('too long');
  switch (node.is) {
    case 'literal':
      return [node.date ? { value: node.value, type: 'date' } : { value: node.value }];
    case 'empty':
      return [];
    case 'this':
      return input;
    case 'index':
      return [{ value: frame.index }];
    case 'variable':
      return variable(node.name, frame.context);
    case 'name':
      return input.flatMap((item) => childrenOf(item, node.name, frame.context.types));
    case 'call':
      return call(node.name, node.args, input, frame);
    case 'dot':
      return evaluate(node.right, evaluate(node.left, input, frame), frame);
    case 'at': {
      const [at] = evaluate(node.at, input, frame);
      const item = evaluate(node.left, input, frame)[Number(at?.value)];
      return item === undefined ? [] : [item];
    }
    case 'type': {
      const items = evaluate(node.left, input, frame);
      if (node.op === 'as') return items.filter((item) => isOfType(item, node.type));
      return items.length === 0 ? [] : bool(isOfType(one(items), node.type));
    }
    case 'minus': {
      const items = evaluate(node.of, input, frame);
      return items.map((item) => ({ value: -numberOf(item) }));
    }
    default:
      return binary(node.op, node.left, node.right, input, frame);
  }
}

function call(name: string, args: readonly Node[], input: Items, frame: Frame): Items {
  const found = calls.get(name);
  if (found === undefined) throw new Undecided(name);
  return found(input, args, frame);
}

function variable(name: string, { resource, root, element }: Context): Items {
  if (name === 'resource') return [{ value: resource }];
  if (name === 'rootResource') return [{ value: root }];
  if (name === 'context') return [element];
  if (name === 'sct') return [{ value: 'http://snomed.info/sct' }];
  if (name === 'loinc') return [{ value: 'http://loinc.org' }];
  if (name === 'ucum') return [{ value: 'http://unitsofmeasure.org' }];
  throw new Undecided(name);
}

/** What stands under a name; `Patient.name` on a patient is its `name`. */
export function childrenOf(item: Item, name: string, types?: Types<TypeInfo>): Items {
  const { value } = item;
  if (!isObject(value)) {
    // The id and the extensions of a primitive.
    return isObject(item.extra)
      ? childrenOf({ value: item.extra, type: 'Element' }, name, types)
      : [];
  }
  if (value['resourceType'] === name) return [item];
  const info = infoOf(item, types);
  if (info !== undefined) return definedChildren(value, name, info);
  if (Object.hasOwn(value, name) || Object.hasOwn(value, `_${name}`)) {
    return itemsUnder(value, name, undefined);
  }
  for (const key of Object.keys(value)) {
    const bare = key.startsWith('_') ? key.slice(1) : key;
    const suffix = bare.slice(name.length);
    if (!bare.startsWith(name) || !/^[A-Z]/.test(suffix)) continue;
    const type = typeOfSuffix(suffix);
    if (type !== undefined) return itemsUnder(value, bare, type);
  }
  return [];
}

/** What is known of the type; of a part of a resource that is known as that alone, nothing is. */
function infoOf({ value, type }: Item, types: Types<TypeInfo> | undefined): TypeInfo | undefined {
  const name = (isObject(value) ? textOf(value['resourceType']) : undefined) ?? type ?? '';
  return name === 'BackboneElement' || name === 'Element' ? undefined : types?.get(name);
}

/** The elements of a known type, with their types. */
function definedChildren(value: JsonObject, name: string, { properties }: TypeInfo): Items {
  const own = properties.get(name);
  if (own !== undefined || name === 'id') return itemsUnder(value, name, own?.type ?? 'string');
  for (const key of Object.keys(value)) {
    const bare = key.startsWith('_') ? key.slice(1) : key;
    const property = properties.get(bare);
    if (property?.choice?.name === name) return itemsUnder(value, bare, property.type);
  }
  return [];
}

function itemsUnder(holder: JsonObject, name: string, type: string | undefined): Items {
  const value = Object.hasOwn(holder, name) ? holder[name] : undefined;
  const extra = Object.hasOwn(holder, `_${name}`) ? holder[`_${name}`] : undefined;
  if (Array.isArray(value) || Array.isArray(extra)) {
    const values: readonly unknown[] = Array.isArray(value) ? value : [];
    const extras: readonly unknown[] = Array.isArray(extra) ? extra : [];
    return Array.from({ length: Math.max(values.length, extras.length) }, (_, at) => ({
      value: values[at] ?? undefined,
      extra: extras[at],
      type,
    })).map(formed);
  }
  if (value === undefined && extra === undefined) return [];
  return [formed({ value: value ?? undefined, extra, type })];
}

/**
 * A null that keeps no place for an extension, and a list in a list, are faults of form that are told
 * as such. Whether they count as an element no rule can know.
 */
function formed(item: Item): Item {
  const { value, extra } = item;
  if (Array.isArray(value) || (value === undefined && !isObject(extra))) {
    throw new Undecided('no JSON of an element');
  }
  return item;
}

const primitives =
  'base64Binary boolean canonical code date dateTime decimal id instant integer integer64 markdown oid positiveInt string time unsignedInt uri url uuid'.split(
    ' ',
  );
const complex =
  'Address Age Annotation Attachment CodeableConcept CodeableReference Coding ContactDetail ContactPoint Contributor Count DataRequirement Distance Dosage Duration Expression Extension HumanName Identifier Meta Money ParameterDefinition Period Quantity Range Ratio RatioRange Reference RelatedArtifact SampledData Signature Timing TriggerDefinition UsageContext'.split(
    ' ',
  );

/** By the end of the name of a choice. @see https://hl7.org/fhir/R5/datatypes.html */
const suffixes: ReadonlyMap<string, string> = new Map([
  ...primitives.map((name): [string, string] => [
    name.charAt(0).toUpperCase() + name.slice(1),
    name,
  ]),
  ...complex.map((name): [string, string] => [name, name]),
]);

function typeOfSuffix(suffix: string): string | undefined {
  return suffixes.get(suffix);
}

export function isOfType({ value, type }: Item, wanted: string): boolean {
  if (isObject(value) && typeof value['resourceType'] === 'string') {
    return value['resourceType'] === wanted || wanted === 'Resource' || wanted === 'DomainResource';
  }
  if (type === undefined) {
    if (typeof value === 'boolean') return wanted === 'boolean' || wanted === 'Boolean';
    throw new Undecided('a type that is not known');
  }
  if (type === wanted) return true;
  const kind = type.toLowerCase() === wanted.toLowerCase() && primitives.includes(type);
  return kind || (specialised.get(wanted)?.includes(type) ?? false);
}

/** @see https://hl7.org/fhir/R4/datatypes.html */
const specialised: ReadonlyMap<string, readonly string[]> = new Map([
  ['Quantity', ['Age', 'Count', 'Distance', 'Duration']],
  ['string', ['code', 'id', 'markdown']],
  ['uri', ['canonical', 'oid', 'url', 'uuid']],
  ['integer', ['positiveInt', 'unsignedInt']],
]);

function binary(op: string, left: Node, right: Node, input: Items, frame: Frame): Items {
  const first = evaluate(left, input, frame);
  switch (op) {
    case 'and':
    case 'or':
    case 'xor':
    case 'implies':
      return logic(op, truth(first), () => truth(evaluate(right, input, frame)));
    default:
      return operator(op, first, evaluate(right, input, frame));
  }
}
