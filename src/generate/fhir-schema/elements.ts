import type { ElementDefinition, Published } from './sources.ts';
import { type Definition, type Definitions, refName } from './types.ts';

/** An element of a StructureDefinition and the properties that stand for it in JSON. */
export interface ElementOfSchema {
  readonly element: ElementDefinition;
  readonly definition: Definition;
  /** `value[x]` has one property for each of its types, all others have one. */
  readonly properties: readonly { readonly name: string; readonly type: string | undefined }[];
}

/** The elements of some pruned types, and where schema and StructureDefinitions disagree. */
export interface Comparison {
  readonly elements: readonly ElementOfSchema[];
  /** Elements that the schema lacks, with their type. */
  readonly missing: readonly { definition: Definition; name: string; type: string }[];
  /** Properties that stand in no StructureDefinition. */
  readonly stray: readonly { definition: Definition; name: string }[];
}

export async function compareWithDefinitions(
  definitions: Definitions,
  source: Published,
): Promise<Comparison> {
  const elements: ElementOfSchema[] = [];
  for (const type of Object.keys(definitions)) {
    // `Bundle_Entry` and the like are met on the way through `Bundle`.
    if (type.includes('_')) continue;
    elements.push(...elementsOfType(type, (await source.elements(type)) ?? [], definitions));
  }
  return { elements, missing: missingIn(elements), stray: strayIn(definitions, elements) };
}

function elementsOfType(
  type: string,
  snapshot: readonly ElementDefinition[],
  definitions: Definitions,
): ElementOfSchema[] {
  const found: ElementOfSchema[] = [];
  const names = new Map([[snapshot[0]?.path ?? type, type]]);
  for (const element of snapshot.slice(1)) {
    const cut = element.path.lastIndexOf('.');
    const definition = definitions[names.get(element.path.slice(0, cut)) ?? ''];
    // Primitive types have elements in XML only.
    if (definition?.properties === undefined || element.max === '0') continue;
    const properties = jsonProperties(element, element.path.slice(cut + 1));
    found.push({ element, definition, properties });
    const node = definition.properties[properties[0]?.name ?? ''];
    const inner = refName(node?.items ?? node);
    if (inner !== undefined) names.set(element.path, inner);
  }
  return found;
}

function jsonProperties(element: ElementDefinition, name: string): ElementOfSchema['properties'] {
  // `http://hl7.org/fhirpath/System.String` and the like are the ids and urls of elements.
  const types = (element.type ?? []).map(({ code }) => code);
  if (!name.endsWith('[x]')) {
    return [{ name, type: types.find((type) => /^[A-Za-z0-9]+$/.test(type)) }];
  }
  const base = name.slice(0, -3);
  return types.map((type) => ({ name: base + type[0]?.toUpperCase() + type.slice(1), type }));
}

function missingIn(elements: readonly ElementOfSchema[]): Comparison['missing'] {
  return elements.flatMap(({ definition, properties }) =>
    properties.flatMap(({ name, type }) =>
      type !== undefined && !Object.hasOwn(definition.properties ?? {}, name)
        ? [{ definition, name, type }]
        : [],
    ),
  );
}

function strayIn(
  definitions: Definitions,
  elements: readonly ElementOfSchema[],
): Comparison['stray'] {
  const known = new Map<Definition, Set<string>>();
  for (const { definition, properties } of elements) {
    const names = known.get(definition) ?? new Set(['resourceType']);
    for (const { name } of properties) names.add(name).add(`_${name}`);
    known.set(definition, names);
  }
  return Object.values(definitions).flatMap((definition) =>
    Object.keys(definition.properties ?? {})
      .filter((name) => !known.get(definition)?.has(name))
      .map((name) => ({ definition, name })),
  );
}

/** What still differs: elements on one side only, another type, a list in place of one, or the reverse. */
export function disagreements({ elements, missing, stray }: Comparison): string[] {
  return [
    ...missing.map(({ name }) => `no property ${name}`),
    ...stray.map(({ name }) => `no element ${name}`),
    ...elements.flatMap(({ element, definition, properties }) =>
      properties.flatMap(({ name, type }) => {
        const node = definition.properties?.[name];
        const list = node?.items !== undefined;
        const inner = refName(node?.items?.else ?? node?.items ?? node);
        const named = inner !== undefined && type !== undefined && !structural.has(type);
        return list === (element.max === '1') || (named && inner !== type)
          ? [`${element.path} as ${name}`]
          : [];
      }),
    ),
  ];
}

/** Types that the schema writes out as a definition of their own: Bundle_Entry, ResourceList. */
const structural: ReadonlySet<string> = new Set(['BackboneElement', 'Element', 'Resource']);
