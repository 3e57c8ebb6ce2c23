import { isObject, type JsonObject } from '../walk/json.ts';
import { report, type Scope } from '../walk/scope.ts';
import type { Property, TypeInfo } from './definitions.ts';

/**
 * Second stage: what the StructureDefinitions say and the JSON schema cannot: choices, the pairing
 * of lists of primitives with their extensions, elements without content, ids.
 */

const jsonRules = 'https://hl7.org/fhir/R4/json.html';

/** An element with an id alone says nothing: ele-1. */
export function checkContent(value: JsonObject, scope: Scope): void {
  // An empty object and unknown properties were told by the schema stage.
  if (hasContent(value) || value['id'] === undefined) return;
  report(
    scope,
    'empty-value',
    { reason: 'element' },
    {
      rule: 'ele-1',
    },
  );
}

/** The verdict of FHIRPath on ele-1 for an element that is an object. */
export function hasContent(value: JsonObject): boolean {
  return Object.keys(value).some((name) => name !== 'id');
}

/** @param met properties of choices that stand in the object, with or without `_` */
export function checkChoices(
  met: readonly Property[],
  { requiredChoices }: TypeInfo,
  scope: Scope,
): void {
  for (let at = 1; at < met.length; at++) {
    const property = met[at];
    const other = met.findIndex((each) => each.choice === property?.choice);
    if (property !== undefined && other < at && met[other] !== property) {
      report(
        scope,
        'contradiction',
        { reason: 'choice', property: property.choice?.name ?? '' },
        { rule: 'https://hl7.org/fhir/R4/formats.html#choice' },
        [
          `${property.choice?.name}${property.type.charAt(0).toUpperCase()}${property.type.slice(1)}`,
        ],
      );
    }
  }
  for (const required of requiredChoices) {
    if (met.some(({ choice }) => choice === required)) continue;
    report(scope, 'missing-property', { reason: 'choice', codes: required.properties }, {}, [
      `${required.name}[x]`,
    ]);
  }
}

/** A null in a list of primitives keeps the place of an extension. */
export function checkNull(holder: JsonObject, name: string, at: number, scope: Scope): void {
  const extras = holder[`_${name}`];
  if (Array.isArray(extras) && isObject(extras[at])) return;
  report(
    scope,
    'wrong-type',
    { reason: 'null-without-extension' },
    {
      rule: jsonRules,
    },
  );
}

/** The id and extensions of a primitive: there must be an extension where there is no value. */
export function checkExtra(
  extra: unknown,
  value: unknown,
  { type, codes }: Property,
  scope: Scope,
): void {
  const hasValue = value !== undefined && value !== null;
  if (extra === null) {
    if (!hasValue && typeof scope.path.at(-1) === 'number') {
      report(
        scope,
        'wrong-type',
        { reason: 'null-beside-null' },
        {
          rule: jsonRules,
        },
      );
    }
    return;
  }
  if (hasValue || !isObject(extra)) return;
  const { extension } = extra;
  if (!Array.isArray(extension) || extension.length === 0) checkContent(extra, scope);
  else if (type === 'code' && codes !== undefined) sayNoCode(codes, scope);
}

/**
 * A required binding asks for a code of its value set, and an extension that says why there is none is
 * no code: an Observation without status cannot be read safely.
 */
function sayNoCode(valueSet: string, scope: Scope): void {
  const rule = 'https://hl7.org/fhir/R4/terminologies.html#required';
  report(scope, 'missing-property', { reason: 'bound-code', url: valueSet }, { rule });
}

/** Ids of elements are unique within their resource. */
export function checkElementId(id: unknown, scope: Scope): void {
  if (typeof id !== 'string') return;
  if (/\s/.test(id)) {
    report(
      scope,
      'invalid-value',
      { reason: 'element-id' },
      {
        rule: 'https://hl7.org/fhir/R4/element.html#id',
        value: id,
      },
      ['id'],
    );
  }
  scope.elementIds ??= new Set();
  if (scope.elementIds.has(id)) {
    report(
      scope,
      'duplicate-id',
      { reason: 'element' },
      {
        value: id,
        rule: 'https://hl7.org/fhir/R4/element.html#id',
      },
      ['id'],
    );
  }
  scope.elementIds.add(id);
}
