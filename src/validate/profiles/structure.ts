import { isObject, type JsonObject, listOf, objectsOf, textOf } from '../json.ts';

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
  readonly binding: { readonly strength: string; readonly valueSet: string } | undefined;
  readonly constraints: readonly ProfileConstraint[];
  readonly slicing: Slicing | undefined;
  readonly maxLength: number | undefined;
  /** Bounds of a number. */
  readonly minValue: number | undefined;
  readonly maxValue: number | undefined;
  /** What the element asks for that is not checked. */
  readonly unheld: readonly string[];
  readonly isModifier: boolean;
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
  readonly discriminators: readonly { readonly type: string; readonly path: string }[];
}

export interface Structure {
  readonly url: string;
  readonly type: string;
  readonly fhirVersion: string | undefined;
  readonly context: readonly { readonly type: string; readonly expression: string }[];
  readonly elements: readonly [SnapshotElement, ...SnapshotElement[]];
}

/** A StructureDefinition with a snapshot; `undefined` for anything else. */
export function readStructure(value: unknown): Structure | undefined {
  if (!isObject(value) || value['resourceType'] !== 'StructureDefinition') return undefined;
  const url = textOf(value['url']);
  const type = textOf(value['type']);
  const elements = isObject(value['snapshot']) ? objectsOf(value['snapshot']['element']) : [];
  const [first, ...rest] = elements.map(readElement);
  if (url === undefined || type === undefined || first === undefined) return undefined;
  const context = objectsOf(value['context']).map((each) => ({
    type: textOf(each['type']) ?? '',
    expression: textOf(each['expression']) ?? '',
  }));
  const fhirVersion = textOf(value['fhirVersion']);
  return { url, type, fhirVersion, context, elements: [first, ...rest] };
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
        : { strength: textOf(binding['strength']) ?? '', valueSet: withoutVersion(valueSet) },
    constraints: objectsOf(element['constraint']).map(readConstraint),
    slicing: isObject(element['slicing']) ? readSlicing(element['slicing']) : undefined,
    maxLength: typeof maxLength === 'number' ? maxLength : undefined,
    minValue: numberOf(minValue),
    maxValue: numberOf(maxValue),
    unheld: unheldOf(element, { minValue, maxValue }),
    isModifier: element['isModifier'] === true,
  };
}

function numberOf(value: unknown): number | undefined {
  return typeof value === 'number' ? value : undefined;
}

function unheldOf(element: JsonObject, bounds: Readonly<Record<string, unknown>>): string[] {
  const { slicing } = element;
  const open = Object.keys(bounds).filter(
    (name) => bounds[name] !== undefined && numberOf(bounds[name]) === undefined,
  );
  return isObject(slicing) && slicing['ordered'] === true ? [...open, 'the order of slices'] : open;
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
