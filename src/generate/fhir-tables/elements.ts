import type {
  DetailedElement,
  ElementRow,
  TypeRow,
  TypeTable,
} from '../../validate/elements/table-types.ts';
import { heldResources } from '../fhir-schema/prune.ts';
import {
  type Definitions,
  type ElementDefinition,
  structureUrl,
  typeName,
  withoutVersion,
} from './definitions.ts';
import { publishedRules } from './expressions.ts';

/** Invariants of every element, extension or narrative; their own stages apply them. */
export const everywhere: ReadonlySet<string> = new Set(['ele-1', 'ext-1', 'txt-1', 'txt-2']);

/** In the published tables every type has these; the loader puts them in. */
const implied: ReadonlySet<string> = new Set(['id', 'extension']);

/** Names of all resources and data types of a version that a resource can be made of. */
export function allTypes({ structures }: Definitions): string[] {
  return [...structures.values()]
    .filter(({ derivation, kind }) => derivation === 'specialization' && kind !== 'logical')
    .filter(({ kind, abstract }) => kind !== 'primitive-type' && !abstract)
    .map(({ type }) => type)
    .sort();
}

/** The resources that the small entries hold, and the data types that they are made of. */
export function heldTypes(definitions: Definitions): string[] {
  const found = new Set<string>();
  const all = new Set(allTypes(definitions));
  const open = heldResources.filter((name) => all.has(name));
  for (let name = open.pop(); name !== undefined; name = open.pop()) {
    if (found.has(name) || !all.has(name)) continue;
    found.add(name);
    const elements = definitions.structures.get(structureUrl(name))?.snapshot.element ?? [];
    open.push(...elements.flatMap(({ type = [] }) => type.map(({ code }) => code)));
  }
  return [...found].sort();
}

/** Types that others build on: what they have stands once, and holds of resources of any type. */
const bases = ['DomainResource', 'Resource', 'BackboneElement'] as const;

/** The elements of some types, from the snapshots of their StructureDefinitions. */
export function typeTable(
  definitions: Definitions,
  types: readonly string[],
  held: readonly string[] = types,
): TypeTable {
  const sameKeys = expressionsByKey(definitions, held);
  const table: Record<string, TypeRow> = {};
  const whole = new Map<string, MutableRow>();
  for (const type of ['Element', ...bases, ...types]) {
    const found = definitions.structures.get(structureUrl(type));
    if (found === undefined) continue;
    for (const [path, row] of rowsOf(found.snapshot.element, definitions)) {
      whole.set(path, row);
      const told = withPlaces(row, path, definitions, sameKeys);
      table[path] = built(told, baseOf(path, told, whole));
    }
  }
  return table;
}

/** The published expression of each key of the held types: two types may use one key for two rules. */
function expressionsByKey(
  definitions: Definitions,
  held: readonly string[],
): ReadonlyMap<string, string> {
  const rules = Object.values(publishedRules(definitions, held)).flat();
  return new Map(rules.map(({ key, expression }) => [key, expression]));
}

/** A key that means another rule here than in the held types has the place after it. */
function withPlaces(
  row: MutableRow,
  path: string,
  { structures }: Definitions,
  sameKeys: ReadonlyMap<string, string>,
): MutableRow {
  const elements = structures.get(structureUrl(path.split('.')[0] ?? ''))?.snapshot.element ?? [];
  const own = new Map(
    elements
      .flatMap(({ constraint = [] }) => constraint)
      .map(({ key, expression }) => [key, expression]),
  );
  const rules = row.rules.map((key) => {
    const other = sameKeys.get(key);
    return other === undefined || other === own.get(key) ? key : `${key} of ${path}`;
  });
  return { ...row, rules };
}

interface MutableRow {
  readonly rules: string[];
  readonly elements: Record<string, ElementRow>;
}

interface Base extends MutableRow {
  readonly name: string;
}

/** What a row builds on, where it has all elements of that in the same form. */
function baseOf(
  path: string,
  row: MutableRow,
  whole: ReadonlyMap<string, MutableRow>,
): Base | undefined {
  for (const name of bases) {
    const base = whole.get(name);
    if (base === undefined || name === path) continue;
    const has = Object.entries(base.elements).every(
      ([key, element]) => JSON.stringify(row.elements[key]) === JSON.stringify(element),
    );
    if (has && base.rules.every((key) => row.rules.includes(key))) return { name, ...base };
  }
  return undefined;
}

function built({ rules, elements }: MutableRow, base: Base | undefined): TypeRow {
  const own = rules.filter((key) => !base?.rules.includes(key));
  const kept = Object.entries(elements).filter(([key]) => base?.elements[key] === undefined);
  return {
    ...(base !== undefined && { base: base.name }),
    ...(own.length > 0 && { rules: own }),
    elements: Object.fromEntries(kept),
  };
}

/** The rows of one type: its own, and one for each part of it. */
function rowsOf(
  [root, ...elements]: readonly ElementDefinition[],
  definitions: Definitions,
): Map<string, MutableRow> {
  const rows = new Map([[root?.path ?? '', emptyRow(root)]]);
  for (const element of elements.filter(({ max }) => max !== '0')) {
    const cut = element.path.lastIndexOf('.');
    const name = element.path.slice(cut + 1);
    const row = rows.get(element.path.slice(0, cut));
    if (row === undefined) throw new Error(`${element.path} stands below nothing`);
    if (isPart(element)) rows.set(element.path, emptyRow(element));
    if (!implied.has(name)) {
      row.elements[name.replace('[x]', '')] = elementRow(element, definitions);
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

function elementRow(element: ElementDefinition, definitions: Definitions): ElementRow {
  const types = [...new Set((element.type ?? []).map(({ code }) => code))];
  const choice = element.path.endsWith('[x]');
  const is = `${typeOf(element, types)}${element.max === '1' ? '' : '*'}${element.min > 0 ? '!' : ''}`;
  if (element.min > 1) throw new Error(`${element.path} must stand several times`);
  const detailed: DetailedElement = {
    ...(choice ? { choice: types } : { is }),
    ...(choice && element.min > 0 && { required: true }),
    ...targetsOf(element),
    ...(element.max !== '1' && element.max !== '*' && { max: Number(element.max) }),
    ...codesOf(element),
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

function codesOf({
  binding,
}: ElementDefinition): Pick<DetailedElement, 'codes' | 'usualCodes' | 'outerCodes'> {
  if (binding?.valueSet === undefined) return {};
  const valueSet = withoutVersion(binding.valueSet);
  const outer =
    binding.extension?.find(({ url }) => url === maxValueSet)?.valueCanonical ??
    binding.additional?.find(({ purpose }) => purpose === 'maximum')?.valueSet;
  if (binding.strength === 'required') return { codes: valueSet };
  return {
    ...(outer !== undefined && { outerCodes: withoutVersion(outer) }),
    ...(binding.strength === 'extensible' && { usualCodes: valueSet }),
  };
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
