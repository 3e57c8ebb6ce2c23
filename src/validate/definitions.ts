import type { FhirVersion } from '../fhir/version.ts';
import type {
  CodeSystemTable,
  CodeTable,
  DetailedElement,
  ExtensionRow,
  ExtensionTable,
  TypeTable,
  ValueSetTable,
} from './table-types.ts';

/** The generated tables of one version. */
export interface Tables {
  readonly types: TypeTable;
  readonly extensions: ExtensionTable;
  readonly codeSystems: CodeSystemTable;
  readonly terminology: CodeSystemTable;
  readonly valueSets: ValueSetTable;
}

/** A property of a type in JSON. `valueQuantity` and its like have one each. */
export interface Property {
  /** As FHIR's definitions name the element: `Observation.value[x]`. */
  readonly path: string;
  /** A data type, a part such as `Observation.component`, or `Resource`. */
  readonly type: string;
  readonly primitive: boolean;
  readonly list: boolean;
  /** The choice that the property belongs to. */
  readonly choice: Choice | undefined;
  readonly to: readonly string[] | undefined;
  readonly codes: string | undefined;
  readonly usualCodes: string | undefined;
  readonly outerCodes: string | undefined;
  readonly rules: readonly string[];
  /** A list of nothing but this: most objects have one choice, and need no list of their own. */
  readonly alone: readonly Property[];
}

export interface Choice {
  readonly name: string;
  readonly required: boolean;
  /** Its properties, without those that begin with `_`. */
  readonly properties: readonly string[];
}

export interface TypeInfo {
  readonly name: string;
  readonly rules: readonly string[];
  /** By name in JSON; those of primitives also with `_` before the name. */
  readonly properties: ReadonlyMap<string, Property>;
  readonly requiredChoices: readonly Choice[];
}

export type Codes = ReadonlyMap<string, string | readonly string[]>;

/** By system; `all` of a system that is held. */
export type Members = ReadonlyMap<string, 'all' | ReadonlySet<string>>;

/** What is known of one FHIR version, ready for look-ups. */
export interface Definitions {
  readonly fhirVersion: FhirVersion;
  readonly types: ReadonlyMap<string, TypeInfo>;
  readonly extensions: ReadonlyMap<string, ExtensionRow>;
  readonly codeSystems: ReadonlyMap<string, Codes>;
  readonly valueSets: ReadonlyMap<string, Members>;
}

const extensionBase = 'http://hl7.org/fhir/StructureDefinition/';

export function createDefinitions(fhirVersion: FhirVersion, tables: Tables): Definitions {
  const { types, extensions, codeSystems, terminology, valueSets } = tables;
  return {
    fhirVersion,
    types: new Map(Object.keys(types).map((name) => [name, typeInfo(name, types)])),
    extensions: new Map(
      Object.entries(extensions).map(([url, row]) => [
        url.includes(':') ? url : extensionBase + url,
        row,
      ]),
    ),
    codeSystems: new Map(
      [...Object.entries(codeSystems), ...Object.entries(terminology)].map(([url, codes]) => [
        url,
        codesOf(codes),
      ]),
    ),
    valueSets: new Map(
      Object.entries(valueSets).map(([url, systems]) => [url, membersOf(systems)]),
    ),
  };
}

export function codesOf(codes: CodeTable): Codes {
  return new Map(Object.entries(codes));
}

export function membersOf(systems: Readonly<Record<string, 'all' | readonly string[]>>): Members {
  return new Map(
    Object.entries(systems).map(([system, codes]) => [
      system,
      codes === 'all' ? codes : new Set(codes),
    ]),
  );
}

function typeInfo(name: string, types: TypeTable): TypeInfo {
  const { rules = [], elements = {} } = types[name] ?? {};
  const properties = new Map<string, Property>();
  const requiredChoices: Choice[] = [];
  const add = (key: string, property: Property): void => {
    properties.set(key, property);
    if (property.primitive) properties.set(`_${key}`, property);
  };
  add('extension', propertyOf(`${name}.extension`, 'Extension*', {}));
  for (const [element, row] of Object.entries(elements)) {
    const detailed: DetailedElement = typeof row === 'string' ? { is: row } : row;
    if (detailed.choice === undefined) {
      add(element, propertyOf(`${name}.${element}`, detailed.is ?? '', detailed));
      continue;
    }
    const choice: Choice = {
      name: element,
      required: detailed.required === true,
      properties: detailed.choice.map((type) => element + capitalised(type)),
    };
    if (choice.required) requiredChoices.push(choice);
    for (const type of detailed.choice) {
      add(element + capitalised(type), propertyOf(`${name}.${element}[x]`, type, detailed, choice));
    }
  }
  return { name, rules, properties, requiredChoices };
}

/** Every property has the same keys in the same order: the walk reads millions of them. */
function propertyOf(
  path: string,
  is: string,
  { to, codes, usualCodes, outerCodes, rules = [] }: DetailedElement,
  choice?: Choice,
): Property {
  const list = is.endsWith('*');
  const type = list ? is.slice(0, -1) : is;
  const primitive = isPrimitive(type);
  const alone: Property[] = [];
  const bound = { to, codes, usualCodes, outerCodes };
  const property: Property = { path, type, primitive, list, choice, ...bound, rules, alone };
  alone.push(property);
  return property;
}

/** What something stands under that no element leads to. */
export function rootProperty(path: string, is: string): Property {
  return propertyOf(path, is, {});
}

/** Primitive types begin with a small letter, all others with a capital. */
export function isPrimitive(type: string): boolean {
  return type.charCodeAt(0) >= 0x61;
}

export function capitalised(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
