import { isAbsolute } from '../bundles/resolve.ts';
import { checkBinding } from '../terminology/terminology.ts';
import {
  choiceName,
  hasPart,
  isObject,
  isThere,
  type JsonObject,
  objectsOf,
  textOf,
} from '../walk/json.ts';
import { report, type Scope } from '../walk/scope.ts';
import type { Stage } from '../walk/stage.ts';
import { bareResources, type Property } from './definitions.ts';
import type { ExtensionPart, ExtensionRow } from './table-types.ts';

/** Part of the stage of elements: extensions, and what HL7's own ones may hold and stand on. */
export const extensionStage: Stage = { objects: { Extension: checkExtension } };

const page = 'https://hl7.org/fhir/R4/extensibility.html';

function checkExtension(value: JsonObject, scope: Scope, property: Property): void {
  if (!hasValueOrExtensions(value, scope)) {
    report(
      scope,
      'broken-invariant',
      { reason: 'extension' },
      {
        rule: 'ext-1',
      },
    );
  }
  const url = textOf(value['url']);
  const holder = scope.trail.at(-2);
  // Inside another extension the url is a name, and the outer definition says what it may be.
  if (url === undefined || (holder?.type === 'Extension' && !isAbsolute(url))) return;
  if (!isAbsolute(url)) {
    report(
      scope,
      'invalid-value',
      { reason: 'extension-url' },
      {
        rule: `${page}#Extension`,
        value: url,
      },
      ['url'],
    );
    return;
  }
  const definition = scope.definitions.extensions.get(url);
  // Of extensions that stand in no held type only their places are known.
  if (definition === undefined || !isWhole(definition)) sayUnknown(url, property, scope);
  else checkKnown(value, definition, scope, property);
}

function isWhole({ value, parts }: ExtensionRow): boolean {
  return value !== undefined || parts !== undefined;
}

/** The verdict of FHIRPath on ext-1: a value of a type that FHIR has not is none. */
export function hasValueOrExtensions(value: JsonObject, { definitions }: Scope): boolean {
  const known = definitions.types.get('Extension')?.properties;
  let hasValue = false;
  for (const name in value) {
    if (known?.get(name)?.choice !== undefined && isThere(value[name])) hasValue = true;
  }
  return hasPart(value, 'extension') !== hasValue;
}

function sayUnknown(url: string, property: Property, scope: Scope): void {
  if (url.includes('|')) {
    report(
      scope,
      'invalid-value',
      { reason: 'extension-version' },
      {
        rule: `${page}#Extension`,
      },
      ['url'],
    );
    return;
  }
  const why = 'the definition of the extension is not held';
  scope.unchecked.push({ rule: url, path: [...scope.path], why });
  const modifier = property.path.endsWith('.modifierExtension');
  const key = `${modifier ? 'modifier ' : ''}${url}`;
  if (scope.saidOnce.has(key)) return;
  scope.saidOnce.add(key);
  // What HL7 has published up to now is held; a later one cannot be known.
  const worthALook = modifier || url.startsWith(structureBase);
  report(
    scope,
    'unchecked-extension',
    { reason: 'not-held' },
    { severity: worthALook ? 'warning' : 'information', rule: `${page}#Extension` },
  );
}

function checkKnown(
  value: JsonObject,
  definition: ExtensionRow,
  scope: Scope,
  property: Property,
): void {
  if (definition.until !== undefined) {
    report(
      scope,
      'misplaced-extension',
      { reason: 'ended', version: definition.until },
      {
        rule: 'http://hl7.org/fhir/StructureDefinition/version-specific-use',
      },
    );
  }
  const isModifier = property.path.endsWith('.modifierExtension');
  if (isModifier !== (definition.modifier === true)) {
    report(
      scope,
      'misplaced-extension',
      { reason: isModifier ? 'not-modifying' : 'modifying' },
      { rule: `${page}#modifierExtension` },
    );
  }
  // In a resource of a type that is not held the types of its elements are not known.
  if (!scope.open && !mayStandHere(definition, scope)) {
    report(
      scope,
      'misplaced-extension',
      { reason: 'context', types: definition.on },
      {
        rule: 'https://hl7.org/fhir/R4/defining-extensions.html#context',
      },
    );
  }
  checkHeld(value, definition, scope);
}

function mayStandHere({ on }: ExtensionRow, scope: Scope): boolean {
  const holder = scope.trail.at(-2);
  if (on.includes('Element') || (holder !== undefined && on.includes(holder.path))) return true;
  const names = placeNames(scope);
  return on.some((place) => names.has(place.replace(/\[x\]$/, '')));
}

/**
 * Primitive types that narrow another one, which a context may name for all of them.
 * @see https://hl7.org/fhir/R4/datatypes.html
 */
const primitiveBases: ReadonlyMap<string, string> = new Map([
  ['code', 'string'],
  ['id', 'string'],
  ['markdown', 'string'],
  ['url', 'uri'],
  ['canonical', 'uri'],
  ['oid', 'uri'],
  ['uuid', 'uri'],
  ['positiveInt', 'integer'],
  ['unsignedInt', 'integer'],
]);

function withBase(type: string): readonly string[] {
  const base = primitiveBases.get(type);
  return base === undefined ? [type] : [type, base];
}

/** All that a definition may call the place: its type, its path in the type, its path in the resource. */
function placeNames(scope: Scope): Set<string> {
  const { path, depth, trail, resource } = scope;
  const type = textOf(resource['resourceType']) ?? '';
  // An extension and its number stand after the path of the holder.
  const steps = path.slice(depth, -2).filter((step) => typeof step === 'string');
  if (steps.length === 0) {
    return new Set([type, 'Resource', ...domainResource(type), ...canonicalResource(type, scope)]);
  }
  const holder = trail.at(-2);
  const outer = textOf(extensionAbove(scope)?.['url']);
  return new Set([
    ...(holder === undefined ? [] : [...withBase(holder.type), withoutChoice(holder.path)]),
    ...(holder?.type.includes('.') ? ['BackboneElement'] : []),
    `${type}.${steps.map((step) => step.replace(/^_/, '')).join('.')}`,
    `${type}.${choicePath(steps, scope)}`,
    ...(outer === undefined ? [] : [`extension ${outer.replace(structureBase, '')}`]),
  ]);
}

const structureBase = 'http://hl7.org/fhir/StructureDefinition/';

function domainResource(type: string): string[] {
  return bareResources.has(type) ? [] : ['DomainResource'];
}

/** @see https://hl7.org/fhir/R5/canonicalresource.html, which are told by the elements they have */
function canonicalResource(type: string, { definitions }: Scope): string[] {
  const properties = definitions.types.get(type)?.properties;
  const has = ['url', 'version', 'status', 'useContext'].every((name) => properties?.has(name));
  return has ? ['CanonicalResource', 'MetadataResource'] : [];
}

function withoutChoice(path: string): string {
  return path.replace(/\[x\]$/, '');
}

/** The path in the resource with `value` in place of `valueQuantity`. */
function choicePath(steps: readonly string[], { trail }: Scope): string {
  const own = trail.slice(0, -1).slice(-steps.length);
  return steps
    .map((step, at) => {
      const choice = own[at - steps.length + own.length]?.choice;
      return choice?.name ?? step.replace(/^_/, '');
    })
    .join('.');
}

/** The extension that this one stands in, or on the value of. */
function extensionAbove({ path, resource, depth, trail }: Scope): JsonObject | undefined {
  const holder = trail.at(-2);
  const onValue = holder?.path === 'Extension.value[x]';
  if (!onValue && holder?.type !== 'Extension') return undefined;
  let value: unknown = resource;
  for (const step of path.slice(depth, onValue ? -3 : -2)) {
    value = isObject(value) || Array.isArray(value) ? Reflect.get(value, step) : undefined;
  }
  return isObject(value) ? value : undefined;
}

/** The value and the parts, by the definition of the extension or of a part of it. */
function checkHeld(
  value: JsonObject,
  definition: ExtensionRow | ExtensionPart,
  scope: Scope,
  below: readonly (string | number)[] = [],
): void {
  checkValue(value, definition, scope, below);
  if (definition.parts === undefined) {
    if (definition.value !== undefined && hasPart(value, 'extension')) {
      report(
        scope,
        'unknown-property',
        { reason: 'extension-parts', types: definition.value },
        {
          rule: `${page}#Extension`,
        },
        [...below, 'extension'],
      );
    }
    return;
  }
  checkParts(value, definition.parts, scope, below);
}

function checkValue(
  value: JsonObject,
  { value: types = [], codes }: ExtensionRow | ExtensionPart,
  scope: Scope,
  below: readonly (string | number)[],
): void {
  const name = choiceName(value, 'value');
  if (name === undefined) return;
  const type = name.slice('value'.length);
  const fits = types.some((each) => each.charAt(0).toUpperCase() + each.slice(1) === type);
  if (!fits) {
    report(
      scope,
      'wrong-type',
      { reason: 'extension-value', types },
      {
        rule: `${page}#Extension`,
      },
      [...below, name],
    );
  } else if (codes !== undefined) {
    checkBinding(value[name], { codes }, scope, [...below, name]);
  }
}

function checkParts(
  value: JsonObject,
  parts: Readonly<Record<string, ExtensionPart>>,
  scope: Scope,
  below: readonly (string | number)[],
): void {
  const counts = new Map<string, number>();
  objectsOf(value['extension']).forEach((inner, at) => {
    const url = textOf(inner['url']) ?? '';
    const place = [...below, 'extension', at];
    if (!Object.hasOwn(parts, url)) {
      // Any extension may carry others; a bare name means a part that the definition does not have.
      if (!isAbsolute(url)) {
        report(
          scope,
          'unknown-property',
          { reason: 'extension-part', codes: Object.keys(parts) },
          {
            rule: `${page}#Extension`,
          },
          place,
        );
      }
      return;
    }
    counts.set(url, (counts.get(url) ?? 0) + 1);
    const part = parts[url];
    if (part !== undefined) checkHeld(inner, part, scope, place);
  });
  for (const [url, { min = 0, max = Number.POSITIVE_INFINITY }] of Object.entries(parts)) {
    const count = counts.get(url) ?? 0;
    if (count >= min && count <= max) continue;
    const facts = {
      reason: 'extension-part',
      minimum: min,
      maximum: max === Number.POSITIVE_INFINITY ? undefined : max,
      url,
    } as const;
    report(scope, count < min ? 'missing-property' : 'too-many', facts, {}, [
      ...below,
      'extension',
    ]);
  }
}
