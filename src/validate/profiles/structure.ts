import type { ValidationFacts } from '../issue.ts';
import { isObject, type JsonObject, listOf, objectsOf, textOf } from '../walk/json.ts';

/** One element of a snapshot, read from a StructureDefinition of whatever origin. */
export interface SnapshotElement {
  readonly id: string;
  readonly path: string;
  readonly sliceName: string | undefined;
  readonly min: number;
  /** Infinity for `*`. */
  readonly max: number;
  readonly types: readonly ElementType[];
  /** Value that it must have, whole or in part; `undefined` where any will do. */
  readonly fixed: unknown;
  readonly pattern: unknown;
  readonly binding: Binding | undefined;
  readonly constraints: readonly ProfileConstraint[];
  readonly slicing: Slicing | undefined;
  readonly maxLength: number | undefined;
  /** Bounds of a number. */
  readonly minValue: number | undefined;
  readonly maxValue: number | undefined;
  /** `#Composition.section`: its own elements are those of that one. */
  readonly sameAs: string | undefined;
  /** What the element asks for that is not checked. */
  readonly unheld: readonly ValidationFacts<'unchecked-rule'>[];
  readonly isModifier: boolean;
}

export interface Binding {
  readonly strength: string;
  readonly valueSet: string;
  /** Beyond which no code can come, whatever the strength. */
  readonly outer: string | undefined;
}

export interface ElementType {
  readonly code: string;
  readonly profiles: readonly string[];
  readonly targets: readonly string[];
}

export interface ProfileConstraint {
  readonly key: string;
  readonly severity: 'error' | 'warning';
  readonly expression: string | undefined;
  /** The definition that it comes from, where the snapshot says so. */
  readonly source: string | undefined;
}

export interface Slicing {
  readonly rules: string;
  /** Values of the slices stand in the order of the slices. */
  readonly ordered: boolean;
  readonly discriminators: readonly { readonly type: string; readonly path: string }[];
}

export interface Structure {
  readonly url: string;
  readonly type: string;
  readonly fhirVersion: string | undefined;
  readonly context: readonly { readonly type: string; readonly expression: string }[];
  readonly elements: readonly [SnapshotElement, ...SnapshotElement[]];
}

/**
 * A StructureDefinition; `undefined` for anything else.
 * @param snapshot its elements, those of its own snapshot where not told
 */
export function readStructure(
  value: unknown,
  snapshot?: readonly JsonObject[],
): Structure | undefined {
  if (!isObject(value) || value['resourceType'] !== 'StructureDefinition') return undefined;
  const url = textOf(value['url']);
  const type = textOf(value['type']);
  const own = isObject(value['snapshot']) ? objectsOf(value['snapshot']['element']) : [];
  const [first, ...rest] = (snapshot ?? own).map(readElement);
  if (url === undefined || type === undefined || first === undefined) return undefined;
  const context = objectsOf(value['context']).map((each) => ({
    type: textOf(each['type']) ?? '',
    expression: textOf(each['expression']) ?? '',
  }));
  const fhirVersion = textOf(value['fhirVersion']);
  return { url, type: typeName(type), fhirVersion, context, elements: [first, ...rest] };
}

function readElement(element: JsonObject): SnapshotElement {
  const path = textOf(element['path']) ?? '';
  const { min, max, maxLength } = element;
  const minValue = valueUnder(element, 'minValue');
  const maxValue = valueUnder(element, 'maxValue');
  const binding = isObject(element['binding']) ? element['binding'] : {};
  const valueSet = textOf(binding['valueSet']);
  return {
    id: textOf(element['id']) ?? path,
    path,
    sliceName: textOf(element['sliceName']),
    min: typeof min === 'number' ? min : 0,
    max: typeof max === 'string' && /^\d+$/.test(max) ? Number(max) : Number.POSITIVE_INFINITY,
    types: objectsOf(element['type']).map(readType),
    fixed: valueUnder(element, 'fixed'),
    pattern: valueUnder(element, 'pattern'),
    binding:
      valueSet === undefined
        ? undefined
        : {
            strength: textOf(binding['strength']) ?? '',
            valueSet: withoutVersion(valueSet),
            outer: outerSet(binding),
          },
    constraints: objectsOf(element['constraint']).map(readConstraint),
    slicing: isObject(element['slicing']) ? readSlicing(element['slicing']) : undefined,
    maxLength: typeof maxLength === 'number' ? maxLength : undefined,
    minValue: numberOf(minValue),
    maxValue: numberOf(maxValue),
    sameAs: textOf(element['contentReference']),
    unheld: unheldOf({ minValue, maxValue }),
    isModifier: element['isModifier'] === true,
  };
}

/** @see https://hl7.org/fhir/R4/extension-elementdefinition-maxvalueset.html */
function outerSet(binding: JsonObject): string | undefined {
  const found = objectsOf(binding['extension']).find(
    ({ url }) => url === `${structureBase}elementdefinition-maxValueSet`,
  );
  const url = textOf(found?.['valueCanonical']) ?? textOf(found?.['valueUri']);
  return url === undefined ? undefined : withoutVersion(url);
}

function numberOf(value: unknown): number | undefined {
  return typeof value === 'number' ? value : undefined;
}

function unheldOf(bounds: Readonly<Record<string, unknown>>): ValidationFacts<'unchecked-rule'>[] {
  return Object.keys(bounds)
    .filter((name) => bounds[name] !== undefined && numberOf(bounds[name]) === undefined)
    .map((property) => ({ reason: 'bound', property }));
}

function readType(type: JsonObject): ElementType {
  const urls = (name: string): string[] =>
    listOf(type[name])
      .filter((url) => typeof url === 'string')
      .map(withoutVersion);
  const code = textOf(type['code']) ?? '';
  return { code, profiles: urls('profile'), targets: urls('targetProfile') };
}

function readConstraint(constraint: JsonObject): ProfileConstraint {
  return {
    key: textOf(constraint['key']) ?? '',
    severity: constraint['severity'] === 'warning' ? 'warning' : 'error',
    expression: textOf(constraint['expression']),
    source: textOf(constraint['source']),
  };
}

function readSlicing(slicing: JsonObject): Slicing {
  return {
    rules: textOf(slicing['rules']) ?? 'open',
    ordered: slicing['ordered'] === true,
    discriminators: objectsOf(slicing['discriminator']).map((each) => ({
      type: textOf(each['type']) ?? '',
      path: textOf(each['path']) ?? '',
    })),
  };
}

/** `fixedUri`, `patternCodeableConcept` and the like: the prefix and a type. */
function valueUnder(element: JsonObject, prefix: string): unknown {
  for (const name of Object.keys(element)) {
    if (name.startsWith(prefix) && /^[A-Z]/.test(name.slice(prefix.length))) return element[name];
  }
  return undefined;
}

/** `http://hl7.org/fhir/ValueSet/x|4.0.1` without the version. */
export function withoutVersion(canonical: string): string {
  return canonical.split('|')[0] ?? canonical;
}

/** Canonical URLs of what HL7 defines begin so. */
export const structureBase = 'http://hl7.org/fhir/StructureDefinition/';

/** Name of a base type by its canonical URL; the URL itself for a profile of somebody else. */
export function typeName(canonical: string): string {
  return withoutVersion(canonical).replace(structureBase, '');
}
