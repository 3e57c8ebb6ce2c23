import type { FhirVersion } from '../../fhir/version.ts';
import type {
  CodeSystemTable,
  CodeTable,
  DetailedElement,
  ElementRow,
  ExtensionRow,
  ExtensionTable,
  PrimitiveTable,
  PublishedTable,
  TypeRow,
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
  readonly primitives: PrimitiveTable;
  readonly published?: PublishedTable;
}

/** A property of a type in JSON. `valueQuantity` and its like have one each. */
export interface Property {
  /** As FHIR's definitions name the element: `Observation.value[x]`. */
  readonly path: string;
  /** A data type, a part such as `Observation.component`, or `Resource`. */
  readonly type: string;
  readonly primitive: boolean;
  readonly list: boolean;
  /** It must be there, with a value or an extension; of a choice see there. */
  readonly required: boolean;
  /** Most members of a list. */
  readonly max: number;
  /** The codes of a short required value set, which are told one by one. */
  readonly listed: ReadonlySet<string> | undefined;
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
  /** Properties that must be there. */
  readonly required: readonly (readonly [name: string, property: Property])[];
  /** Such as Observation, and not a data type or a part. */
  readonly isResource: boolean;
}

/** Types by name, each worked out when it is first asked for: there are some 900. */
export interface Types<T> {
  get(name: string): T | undefined;
}

export type Codes = ReadonlyMap<string, string | readonly string[]>;

/** By system; `all` of a system that is held. */
export type Members = ReadonlyMap<string, 'all' | ReadonlySet<string>>;

/** What is known of one FHIR version, ready for look-ups. */
export interface Definitions {
  readonly fhirVersion: FhirVersion;
  readonly types: Types<TypeInfo>;
  /** Whether an element of any type has this name, so that a path may show it. */
  readonly isElementName: (name: string) => boolean;
  readonly primitives: PrimitiveTable;
  readonly published: PublishedTable;
  readonly extensions: ReadonlyMap<string, ExtensionRow>;
  readonly codeSystems: ReadonlyMap<string, Codes>;
  readonly valueSets: ReadonlyMap<string, Members>;
}

/** Resources that have no narrative, extensions or contained resources. */
export const bareResources: ReadonlySet<string> = new Set(['Binary', 'Bundle', 'Parameters']);

const extensionBase = 'http://hl7.org/fhir/StructureDefinition/';

export function createDefinitions(fhirVersion: FhirVersion, tables: Tables): Definitions {
  const { types, extensions, codeSystems, terminology, primitives, published = {} } = tables;
  const systems: ReadonlyMap<string, Codes> = new Map(
    [...Object.entries(codeSystems), ...Object.entries(terminology)].map(([url, codes]) => [
      url,
      codesOf(codes),
    ]),
  );
  const valueSets = new Map(
    Object.entries(tables.valueSets).map(([url, set]) => [url, membersOf(set)]),
  );
  const lists = new Map<string, ReadonlySet<string> | undefined>();
  const listOfCodes = (url: string): ReadonlySet<string> | undefined => {
    if (!lists.has(url)) lists.set(url, shortList(valueSets.get(url), systems));
    return lists.get(url);
  };
  let elementNames: ReadonlySet<string> | undefined;
  return {
    fhirVersion,
    isElementName: (name) => {
      elementNames ??= namesOf(types);
      return elementNames.has(name);
    },
    types: onDemand((name) =>
      Object.hasOwn(types, name) ? typeInfo(name, types, listOfCodes) : undefined,
    ),
    primitives,
    published,
    extensions: new Map(
      Object.entries(extensions).map(([url, row]) => [
        url.includes(':') ? url : extensionBase + url,
        row,
      ]),
    ),
    codeSystems: systems,
    valueSets,
  };
}

/** Makes what is asked for once, and keeps it. */
export function onDemand<T>(make: (name: string) => T | undefined): Types<T> {
  const made = new Map<string, T | undefined>();
  return {
    get(name) {
      const known = made.get(name);
      if (known !== undefined || made.has(name)) return known;
      const found = make(name);
      made.set(name, found);
      return found;
    },
  };
}

/** What a message can list; larger value sets are named. */
const mostListed = 64;

/** All codes of a value set that is held whole and is short, in the order of their definition. */
function shortList(
  members: Members | undefined,
  systems: ReadonlyMap<string, Codes>,
): ReadonlySet<string> | undefined {
  if (members === undefined) return undefined;
  const codes = new Set<string>();
  for (const [system, some] of members) {
    const known = some === 'all' ? systems.get(system)?.keys() : some;
    if (known === undefined) return undefined;
    for (const code of known) codes.add(code);
  }
  return codes.size > mostListed ? undefined : codes;
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

function namesOf(types: TypeTable): ReadonlySet<string> {
  const rows = Object.values(types).flatMap((row) => elementsOf(row));
  return new Set(
    rows.flatMap(([element, one]) => {
      const choice = typeof one === 'string' ? undefined : one.choice;
      return [element, ...(choice ?? []).map((type) => element + capitalised(type))];
    }),
  );
}

type ListOfCodes = (valueSet: string) => ReadonlySet<string> | undefined;

function typeInfo(name: string, types: TypeTable, listOfCodes: ListOfCodes): TypeInfo {
  const row = types[name];
  const base = row?.base === undefined ? undefined : types[row.base];
  const properties = new Map<string, Property>();
  const requiredChoices: Choice[] = [];
  const required: [string, Property][] = [];
  const add = (key: string, property: Property): void => {
    properties.set(key, property);
    if (property.primitive && !isAttribute(name, key)) properties.set(`_${key}`, property);
    if (property.required) required.push([key, property]);
  };
  const elements = elementsOf(base, row);
  const names = new Set(elements.map(([element]) => element));
  // Data types have no implicitRules; Bundle and its like have no text, and no extensions.
  const isResource = names.has('implicitRules');
  if (!isResource || names.has('text')) {
    add('extension', propertyOf(`${name}.extension`, 'Extension*', {}));
  }
  for (const [element, one] of elements) {
    const detailed: DetailedElement = typeof one === 'string' ? { is: one } : one;
    if (detailed.choice === undefined) {
      const path = `${name}.${element}`;
      add(element, propertyOf(path, detailed.is ?? '', detailed, undefined, listOfCodes));
      continue;
    }
    const choice: Choice = {
      name: element,
      required: detailed.required === true,
      properties: detailed.choice.map((type) => element + capitalised(type)),
    };
    if (choice.required) requiredChoices.push(choice);
    for (const type of detailed.choice) {
      const path = `${name}.${element}[x]`;
      add(element + capitalised(type), propertyOf(path, type, detailed, choice, listOfCodes));
    }
  }
  // Snapshots of R5 forget the rules of DomainResource on definitions such as MedicationKnowledge.
  const common = isResource && names.has('text') ? types['DomainResource'] : undefined;
  const rules = rulesOf(base, common, row);
  return { name, rules, properties, requiredChoices, required, isResource };
}

/** Keys of the invariants of all rows, each once. */
function rulesOf(...rows: readonly (TypeRow | undefined)[]): string[] {
  return [...new Set(rows.flatMap((row) => row?.rules ?? []))];
}

function elementsOf(...rows: readonly (TypeRow | undefined)[]): [string, ElementRow][] {
  return rows.flatMap((row) => Object.entries(row?.elements ?? {}));
}

/** Attributes in XML, and the XHTML of a narrative, can have no extension. */
function isAttribute(type: string, name: string): boolean {
  return (type === 'Extension' && name === 'url') || (type === 'Narrative' && name === 'div');
}

/** Every property has the same keys in the same order: the walk reads millions of them. */
function propertyOf(
  path: string,
  is: string,
  {
    to,
    codes,
    usualCodes,
    outerCodes,
    rules = [],
    max = Number.POSITIVE_INFINITY,
  }: DetailedElement,
  choice?: Choice,
  listOfCodes?: ListOfCodes,
): Property {
  const required = is.endsWith('!');
  const bare = required ? is.slice(0, -1) : is;
  const list = bare.endsWith('*');
  const type = list ? bare.slice(0, -1) : bare;
  const primitive = isPrimitive(type);
  const listed = type === 'code' && codes !== undefined ? listOfCodes?.(codes) : undefined;
  const alone: Property[] = [];
  const form = { path, type, primitive, list, required, max, listed, choice };
  const property: Property = { ...form, to, codes, usualCodes, outerCodes, rules, alone };
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
