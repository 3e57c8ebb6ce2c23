import type { Correction } from './correction.ts';
import { compareWithDefinitions, disagreements } from './elements.ts';
import { primitiveCorrections } from './primitive-corrections.ts';
import { pruned } from './prune.ts';
import type { Published } from './sources.ts';
import {
  type Definition,
  type Definitions,
  isPrimitiveName,
  refName,
  type SchemaNode,
} from './types.ts';

/** What a schema can hold as `enum`; larger value sets are left to the terminology checks. */
const mostCodes = 64;

export const corrections: readonly Correction[] = [
  {
    id: 'dispatch',
    reason:
      'ResourceList was a oneOf over every resource of FHIR: slow, and one fault gave an error for each resource. It now tells resources apart by resourceType and names the resources held here.',
    run(definitions) {
      const resources = resourceNames(definitions).sort();
      definitions.ResourceList = {
        type: 'object',
        required: ['resourceType'],
        discriminator: { propertyName: 'resourceType' },
        oneOf: resources.map((name) => ({ $ref: `#/definitions/${name}` })),
      };
      return resources.length;
    },
  },
  {
    id: 'missing-elements',
    reason: 'Elements of the StructureDefinitions that the schema lacked.',
    run(_definitions, _source, { missing }) {
      for (const { definition, name, type } of missing) {
        setProperty(definition, name, { $ref: `#/definitions/${type}` });
      }
      return missing.length;
    },
  },
  {
    id: 'stray-elements',
    reason:
      'modifierExtension stood on parts of data types, which are plain elements in the StructureDefinitions and cannot have one.',
    run(_definitions, _source, { stray }) {
      for (const { definition, name } of stray) delete definition.properties?.[name];
      return stray.length;
    },
  },
  {
    id: 'object-type',
    reason: 'Without a type of object a text or number passed in place of any structure.',
    run: (definitions) =>
      eachStructure(definitions, (definition) => {
        if (definition.type === 'object') return false;
        definition.type = 'object';
        return true;
      }),
  },
  {
    id: 'primitive-references',
    reason:
      'Properties of choice elements repeated the pattern of their primitive type; they now refer to it.',
    run: (definitions, source, { elements }) => {
      let places = 0;
      for (const { definition, properties } of elements) {
        for (const { name, type } of properties) {
          const node = definition.properties?.[name];
          if (type === undefined || node?.type === undefined || node.items) continue;
          setProperty(definition, name, { $ref: `#/definitions/${type}` });
          definitions[type] ??= pruned(source.schema, type);
          places += 1;
        }
      }
      return places;
    },
  },
  {
    id: 'resource-id',
    reason: 'The id of a resource is of type id, not any string.',
    run: (definitions) => {
      const wrong = resourceNames(definitions).flatMap((name) => definitions[name] ?? []);
      return count(wrong, (definition) => {
        if (refName(definition.properties?.id) === 'id') return false;
        setProperty(definition, 'id', { $ref: '#/definitions/id' });
        return true;
      });
    },
  },
  ...primitiveCorrections,
  {
    id: 'required-codes',
    reason:
      'Codes of required value sets were left out in places; they are taken from the StructureDefinitions and expansions of the same version.',
    async run(_definitions, source, { elements }) {
      let places = 0;
      for (const { element, definition, properties } of elements) {
        const { strength, valueSet } = element.binding ?? {};
        const [property] = properties;
        if (property?.type !== 'code' || strength !== 'required' || !valueSet) continue;
        const node = definition.properties?.[property.name];
        const codes = await source.codes(valueSet);
        if (node === undefined || codes === undefined || codes.length > mostCodes) continue;
        const before = (node.items ?? node).enum;
        if (before === undefined) places += 1;
        const withCodes = { type: 'string', enum: codes };
        setProperty(
          definition,
          property.name,
          node.items ? { ...node, items: withCodes } : withCodes,
        );
      }
      return places;
    },
  },
  {
    id: 'extension-url',
    reason: 'Extension.url is an attribute in XML and can itself have no extension.',
    run(definitions) {
      const extension = definitions.Extension;
      if (extension?.properties === undefined) throw new Error('no definition of Extension');
      delete extension.properties._url;
      return 1;
    },
  },
  {
    id: 'required-elements',
    reason:
      'Primitive elements that must be there were not in required, because an extension can stand in their place; now either the element or its extension must be there.',
    run: (_definitions, _source, { elements }) =>
      count(elements, ({ element, definition, properties }) => {
        const [property] = properties;
        if (element.min === 0 || property === undefined || element.path.endsWith('[x]'))
          return false;
        if (definition.required?.includes(property.name)) return false;
        if (Object.hasOwn(definition.properties ?? {}, `_${property.name}`)) {
          definition.allOf = [
            ...(definition.allOf ?? []),
            { if: { required: [`_${property.name}`] }, else: { required: [property.name] } },
          ];
        } else {
          definition.required = [...(definition.required ?? []), property.name];
        }
        return true;
      }),
  },
  {
    id: 'nulls-in-lists',
    reason:
      'In a list of primitives and in the list of their extensions, null keeps the place of an element that has only the other.',
    run: (definitions) =>
      eachProperty(definitions, (definition, name, node) => {
        const inner = refName(node.items);
        const nullable =
          inner === undefined ? node.items?.enum : isPrimitiveName(inner) || name[0] === '_';
        if (!nullable || node.items === undefined) return false;
        const items = { if: { type: 'null' }, else: node.items };
        setProperty(definition, name, { ...node, items });
        return true;
      }),
  },
  {
    id: 'nothing-empty',
    reason: 'FHIR allows no empty list and no empty object.',
    run: (definitions) =>
      eachProperty(definitions, (definition, name, node) => {
        if (node.type !== 'array') return false;
        setProperty(definition, name, { ...node, minItems: 1 });
        return true;
      }) +
      eachStructure(definitions, (definition) => {
        if (definition.properties?.resourceType?.const) return false;
        definition.minProperties = 1;
        return true;
      }),
  },
];

function resourceNames(definitions: Definitions): string[] {
  return Object.keys(definitions).filter(
    (name) => definitions[name]?.properties?.resourceType?.const,
  );
}

function setProperty(definition: Definition, name: string, node: SchemaNode): void {
  definition.properties = { ...definition.properties, [name]: node };
}

function count<T>(list: readonly T[], change: (item: T) => boolean): number {
  return list.filter((item) => change(item)).length;
}

function eachStructure(
  definitions: Definitions,
  change: (definition: Definition) => boolean,
): number {
  return count(
    Object.values(definitions),
    (found) => found.properties !== undefined && change(found),
  );
}

function eachProperty(
  definitions: Definitions,
  change: (definition: Definition, name: string, node: SchemaNode) => boolean,
): number {
  return Object.values(definitions)
    .map((definition) =>
      count(Object.entries(definition.properties ?? {}), ([name, node]) =>
        change(definition, name, node),
      ),
    )
    .reduce((sum, places) => sum + places, 0);
}

/** Corrects a pruned schema in place. @throws Error when it still differs from the StructureDefinitions. */
export async function correct(
  definitions: Definitions,
  source: Published,
): Promise<{ id: string; reason: string; places: number }[]> {
  const done: { id: string; reason: string; places: number }[] = [];
  for (const { id, reason, run } of corrections) {
    const compared = await compareWithDefinitions(definitions, source);
    const places = await run(definitions, source, compared);
    if (places > 0) done.push({ id, reason, places });
  }
  const left = disagreements(await compareWithDefinitions(definitions, source));
  if (left.length > 0)
    throw new Error(`schema and StructureDefinitions differ: ${left.join('; ')}`);
  return done;
}
