import { writeFile } from 'node:fs/promises';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { createGenerator } from 'ts-json-schema-generator';
import { CANONICAL_BASE } from '../fhir/systems.ts';

const project = fileURLToPath(new URL('../../', import.meta.url));
const target = `${project}profiles/exam.schema.json`;

interface Node {
  title?: string;
  description?: string;
  $ref?: string;
  type?: string | string[];
  const?: unknown;
  properties?: Record<string, Node>;
  required?: string[];
  items?: Node;
  anyOf?: Node[];
  allOf?: object[];
  oneOf?: Node[];
  discriminator?: { propertyName: string };
}

/** Unions of objects and the property that tells their members apart. */
const discriminators: Readonly<Record<string, string>> = {
  Statement: 'kind',
  RegionState: 'state',
};

/** JSON Schema of an exam, made from the types in src/model, as the text of the committed file. */
export function examSchemaText(): string {
  const generator = createGenerator({
    path: `${project}src/model/exam.ts`,
    tsconfig: `${project}tsconfig.json`,
    type: 'Exam',
    // The type check asks for isolatedDeclarations, which need an output folder; tsc has its own run.
    skipTypeCheck: true,
    additionalProperties: false,
  });
  // The generator's own type allows booleans as schemas, which our types never give.
  const made = generator.createSchema('Exam').definitions as Record<string, Node>;

  const definitions = Object.fromEntries(
    Object.entries(made)
      .sort(([one], [other]) => (one < other ? -1 : 1))
      .map(([name, node]) => [name, { title: name, ...withUnions(name, node, made) }]),
  );
  const schema = {
    $schema: 'http://json-schema.org/draft-07/schema#',
    $id: `${CANONICAL_BASE}/exam.schema.json`,
    title: 'Face and neck exam',
    description: made.Exam?.description,
    $ref: '#/definitions/Exam',
    definitions,
  };
  return `${JSON.stringify(schema, undefined, 1)}\n`;
}

function withUnions(name: string, node: Node, all: Record<string, Node>): Node {
  const tag = discriminators[name];
  if (tag !== undefined) return taggedUnion(node, tag, all);
  const { properties } = node;
  if (properties === undefined) return node;
  return {
    ...node,
    properties: Object.fromEntries(
      Object.entries(properties).map(([key, value]) => [key, unionOfTypes(value, all)]),
    ),
  };
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

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  await writeFile(target, examSchemaText());
}
