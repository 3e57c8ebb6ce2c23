import type {
  DetailedElement,
  ElementRow,
  TypeRow,
  TypeTable,
} from '../../validate/table-types.ts';
import { prune } from '../fhir-schema/prune.ts';
import { readPublished, versionSources } from '../fhir-schema/sources.ts';
import { isPrimitiveName, refName } from '../fhir-schema/types.ts';
import {
  type Definitions,
  type ElementDefinition,
  structureUrl,
  typeName,
  withoutVersion,
} from './definitions.ts';

/** Invariants of every element, extension or narrative; their own stages apply them. */
const everywhere: ReadonlySet<string> = new Set(['ele-1', 'ext-1', 'txt-1', 'txt-2']);

/** In the published tables every type has these; the loader puts them in. */
const implied: ReadonlySet<string> = new Set(['id', 'extension']);

/** Names of the resources and data types whose schema the library holds. */
export async function heldTypes(version: Definitions['version']): Promise<string[]> {
  const source = versionSources.find(({ fhirVersion }) => fhirVersion === version);
  if (source === undefined) throw new Error(`no published packages of FHIR ${version}`);
  const definitions = prune((await readPublished(source)).schema);
  // `Bundle_Entry` and the like are parts of `Bundle`.
  return Object.keys(definitions)
    .filter((name) => !name.includes('_'))
    .sort();
}

/** Properties whose codes the JSON schema lists already, as `Type.name`. */
export type ListedCodes = ReadonlySet<string>;

export function listedCodes(schema: {
  readonly definitions: Readonly<
    Record<string, { readonly properties?: Readonly<Record<string, SchemaProperty>> }>
  >;
}): ListedCodes {
  const listed = new Set<string>();
  for (const [type, { properties = {} }] of Object.entries(schema.definitions)) {
    for (const [name, property] of Object.entries(properties)) {
      const inner = property.items?.else ?? property.items ?? property;
      const named = schema.definitions[refName(inner) ?? ''] as SchemaProperty | undefined;
      if (inner.enum !== undefined || named?.enum !== undefined) listed.add(`${type}.${name}`);
    }
  }
  return listed;
}

interface SchemaProperty {
  readonly $ref?: string;
  readonly enum?: readonly string[];
  readonly items?: SchemaProperty;
  readonly else?: SchemaProperty;
}

/** The elements of the held types, from the snapshots of their StructureDefinitions. */
export function typeTable(
  definitions: Definitions,
  types: readonly string[],
  listed: ListedCodes,
): TypeTable {
  const table: Record<string, TypeRow> = {};
  for (const type of types.filter((name) => !isPrimitiveName(name))) {
    const found = definitions.structures.get(structureUrl(type));
    if (found === undefined) continue;
    for (const [path, { rules, elements }] of rowsOf(found.snapshot.element, definitions, listed)) {
      table[path] = { ...(rules.length > 0 && { rules }), elements };
    }
  }
  return table;
}

interface MutableRow {
  readonly rules: string[];
  readonly elements: Record<string, ElementRow>;
}

/** The rows of one type: its own, and one for each part of it. */
function rowsOf(
  [root, ...elements]: readonly ElementDefinition[],
  definitions: Definitions,
  listed: ListedCodes,
): Map<string, MutableRow> {
  const rows = new Map([[root?.path ?? '', emptyRow(root)]]);
  for (const element of elements.filter(({ max }) => max !== '0')) {
    if (element.max !== '1' && element.max !== '*') throw new Error(`${element.path} has a limit`);
    const cut = element.path.lastIndexOf('.');
    const name = element.path.slice(cut + 1);
    const row = rows.get(element.path.slice(0, cut));
    if (row === undefined) throw new Error(`${element.path} stands below nothing`);
    if (isPart(element)) rows.set(element.path, emptyRow(element));
    if (!implied.has(name)) {
      row.elements[name.replace('[x]', '')] = elementRow(element, definitions, listed);
    }
  }
  return rows;
}

function emptyRow(element: ElementDefinition | undefined): MutableRow {
  return { rules: rulesOf(element), elements: {} };
}

function rulesOf(element: ElementDefinition | undefined): string[] {
  return (element?.constraint ?? []).map(({ key }) => key).filter((key) => !everywhere.has(key));
}

function isPart({ type }: ElementDefinition): boolean {
  const [first] = type ?? [];
  return first?.code === 'BackboneElement' || first?.code === 'Element';
}

function elementRow(
  element: ElementDefinition,
  definitions: Definitions,
  listed: ListedCodes,
): ElementRow {
  const types = [...new Set((element.type ?? []).map(({ code }) => code))];
  const choice = element.path.endsWith('[x]');
  const is = `${typeOf(element, types)}${element.max === '1' ? '' : '*'}`;
  const detailed: DetailedElement = {
    ...(choice ? { choice: types } : { is }),
    ...(choice && element.min > 0 && { required: true }),
    ...targetsOf(element),
    ...codesOf(element, listed),
    ...ownRules(element, definitions),
  };
  return Object.keys(detailed).length === 1 && !choice ? is : detailed;
}

function typeOf(element: ElementDefinition, types: readonly string[]): string {
  if (element.contentReference !== undefined) {
    return element.contentReference.slice(element.contentReference.indexOf('#') + 1);
  }
  if (isPart(element)) return element.path;
  const [type = ''] = types;
  // `http://hl7.org/fhirpath/System.String` with the FHIR type beside it.
  return /^[A-Za-z0-9]+$/.test(type)
    ? type
    : (element.type?.[0]?.extension?.find(({ valueUrl }) => valueUrl)?.valueUrl ?? 'string');
}

function targetsOf({ type = [] }: ElementDefinition): Pick<DetailedElement, 'to'> {
  const targets = type.flatMap(({ targetProfile = [] }) => targetProfile.map(typeName));
  if (targets.length === 0 || targets.includes('Resource')) return {};
  return { to: [...new Set(targets)] };
}

const maxValueSet = 'http://hl7.org/fhir/StructureDefinition/elementdefinition-maxValueSet';

function codesOf(
  { path, binding }: ElementDefinition,
  listed: ListedCodes,
): Pick<DetailedElement, 'codes' | 'usualCodes' | 'outerCodes'> {
  if (binding?.valueSet === undefined) return {};
  const valueSet = withoutVersion(binding.valueSet);
  const outer =
    binding.extension?.find(({ url }) => url === maxValueSet)?.valueCanonical ??
    binding.additional?.find(({ purpose }) => purpose === 'maximum')?.valueSet;
  if (binding.strength === 'required') {
    return listed.has(schemaName(path)) ? {} : { codes: valueSet };
  }
  return {
    ...(outer !== undefined && { outerCodes: withoutVersion(outer) }),
    ...(binding.strength === 'extensible' && { usualCodes: valueSet }),
  };
}

/** `Bundle.entry.request.method` is `Bundle_Request.method` in HL7's schema. */
function schemaName(path: string): string {
  const steps = path.split('.');
  const name = steps.pop() ?? '';
  const [type = '', ...parts] = steps;
  const part = parts.at(-1);
  const holder = part === undefined ? type : `${type}_${part[0]?.toUpperCase()}${part.slice(1)}`;
  return `${holder}.${name}`;
}

/** Invariants of the element that its type does not have: those of a part stand with the part. */
function ownRules(
  element: ElementDefinition,
  { structures }: Definitions,
): Pick<DetailedElement, 'rules'> {
  // A resource is held to the rules of its own type.
  const types = (element.type ?? []).filter(({ code }) => code !== 'Resource');
  const profiles = types.flatMap(({ profile = [] }) => profile);
  const ofProfiles = profiles.flatMap(
    (url) => structures.get(withoutVersion(url))?.snapshot.element[0]?.constraint ?? [],
  );
  const ofTypes = new Set(
    types.flatMap(({ code }) => rulesOf(structures.get(structureUrl(code))?.snapshot.element[0])),
  );
  const keys = [...rulesOf(element), ...ofProfiles.map(({ key }) => key)];
  const rules = keys.filter((key) => !everywhere.has(key) && !ofTypes.has(key));
  return rules.length > 0 && !isPart(element) ? { rules: [...new Set(rules)] } : {};
}
