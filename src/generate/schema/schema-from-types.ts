import { fileURLToPath } from 'node:url';
import { createGenerator } from 'ts-json-schema-generator';
import { CANONICAL_BASE } from '../../fhir/names/systems.ts';

const project = fileURLToPath(new URL('../../../', import.meta.url));

interface Node {
  title?: string;
  description?: string;
  $ref?: string;
  type?: string | string[];
  const?: unknown;
  properties?: Record<string, Node>;
  additionalProperties?: Node | boolean;
  required?: string[];
  items?: Node;
  anyOf?: Node[];
  allOf?: object[];
  oneOf?: Node[];
  discriminator?: { propertyName: string };
}

export interface SchemaOrder {
  /** File with the type, below the project. */
  readonly path: string;
  readonly type: string;
  /** File name of the schema, the end of its `$id`. */
  readonly file: string;
  readonly title: string;
  /** Unions of objects and the property that tells their members apart. */
  readonly discriminators: Readonly<Record<string, string>>;
}

/** JSON Schema of a type, as the text of the committed file. */
export function schemaFromTypes(order: SchemaOrder): string {
  const generator = createGenerator({
    path: project + order.path,
    tsconfig: `${project}tsconfig.json`,
    type: order.type,
    // tsc has a run of its own.
    skipTypeCheck: true,
    additionalProperties: false,
  });
  // The generator's own type allows booleans as schemas, which our types never give.
  const made = generator.createSchema(order.type).definitions as Record<string, Node>;

  const definitions = Object.fromEntries(
    Object.entries(made)
      .sort(([one], [other]) => (one < other ? -1 : 1))
      .map(([name, node]) => [
        name,
        { title: name, ...withUnions(node, order.discriminators[name], made) },
      ]),
  );
  const schema = {
    $schema: 'http://json-schema.org/draft-07/schema#',
    $id: `${CANONICAL_BASE}/${order.file}`,
    title: order.title,
    description: made[order.type]?.description,
    $ref: `#/definitions/${order.type}`,
    definitions,
  };
  return `${JSON.stringify(schema, undefined, 1)}\n`;
}

function withUnions(node: Node, tag: string | undefined, all: Record<string, Node>): Node {
  if (tag !== undefined) return taggedUnion(node, tag, all);
  if (node.anyOf !== undefined) return unionOfTypes(node, all);
  const { properties } = node;
  if (properties === undefined) return node;
  return {
    ...node,
    properties: Object.fromEntries(
      Object.entries(properties).map(([key, value]) => [key, unionOfTypes(inMap(value, all), all)]),
    ),
  };
}

/** The values of a map, such as words and their meanings, can be unions too. */
function inMap(node: Node, all: Record<string, Node>): Node {
  if (typeof node.additionalProperties !== 'object') return node;
  return { ...node, additionalProperties: unionOfTypes(node.additionalProperties, all) };
}

/** A union of objects: `discriminator` (OpenAPI) makes a validator report on the member meant, only. */
function taggedUnion({ anyOf = [], ...rest }: Node, tag: string, all: Record<string, Node>): Node {
  const first = resolve(anyOf[0] ?? {}, all);
  // A union that is itself a member of another carries that one's tag.
  const shared = Object.entries(first.properties ?? {}).filter(
    ([key, value]) => key !== tag && value.const !== undefined,
  );
  return {
    ...rest,
    type: 'object',
    required: [...shared.map(([key]) => key), tag],
    ...(shared.length > 0 && { properties: Object.fromEntries(shared) }),
    discriminator: { propertyName: tag },
    oneOf: anyOf,
  };
}

/** A union of values of different JSON types: each type has its own rule, so that one fault is one error. */
function unionOfTypes(node: Node, all: Record<string, Node>): Node {
  if (node.anyOf === undefined) return node;
  const { anyOf, ...rest } = node;
  const types = anyOf.map((member) => {
    const { type } = resolve(member, all);
    if (typeof type !== 'string')
      throw new Error(`a union of more than plain types: ${node.description}`);
    return type === 'integer' ? 'number' : type;
  });
  if (new Set(types).size < types.length) throw new Error(`two members of one type: ${types}`);
  const rules = anyOf.map((member, index) => ({
    if: { not: { type: types[index] } },
    else: member,
  }));
  return { ...rest, type: types, allOf: rules };
}

function resolve(node: Node, all: Record<string, Node>): Node {
  const found = node.$ref === undefined ? node : all[node.$ref.replace('#/definitions/', '')];
  if (found === undefined) throw new Error(`no definition for ${node.$ref}`);
  // A union of the same shape stands for its members.
  return found.anyOf?.[0] ? { ...resolve(found.anyOf[0], all) } : found;
}
