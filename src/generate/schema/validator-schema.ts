/** The part of a schema that is rewritten before it is compiled. */
interface Node {
  title?: string;
  $ref?: string;
  type?: string | string[];
  properties?: Record<string, Node>;
  required?: string[];
  items?: Node;
  enum?: unknown[];
  else?: Node;
  allOf?: Node[];
  const?: unknown;
  pattern?: string;
  discriminator?: { propertyName: string };
  oneOf?: Node[];
  'x-missing'?: Record<string, Node>;
  'x-tags'?: unknown[];
}

const root = '#/definitions/';

interface Schema extends Node {
  definitions: Record<string, Node>;
}

/**
 * The same schema with each kind of list as a definition of its own. It accepts the same values; the
 * compiled code is half as large, because `Extension[]` is written once and not 100 times.
 */
export function withSharedLists(schema: Schema): Schema {
  const lists = new Map<string, { name: string; node: Node }>();
  const definitions = mapProperties(schema.definitions, (property) => {
    if (property.type !== 'array') return property;
    const text = JSON.stringify({ ...property, description: undefined });
    const list = lists.get(text) ?? { name: `List${lists.size}`, node: property };
    lists.set(text, list);
    return { $ref: root + list.name };
  });
  for (const { name, node } of lists.values()) definitions[name] = node;
  return { ...schema, definitions };
}

/**
 * The same schema with what messages need and errors of ajv do not tell. A definition has its name
 * as title, and so has a property with a pattern of its own (`Coding.code`). A property that refers to
 * a list of codes holds the list itself. Beside a `required` that
 * stands alone is what the missing property would have held, and beside a `discriminator` the values
 * it can have. Descriptions and the head go, so that they are not part of the compiled code.
 */
export function withWords({ $ref, definitions }: Schema): Schema {
  const named = Object.entries(definitions).map(([name, node]) => {
    const { properties = {}, allOf, discriminator, oneOf } = node;
    const titled = Object.entries(properties).map(([key, value]) => {
      const codes = definitions[value.$ref?.replace(root, '') ?? '']?.enum;
      if (codes !== undefined) return [key, { type: 'string', enum: codes }];
      return [key, value.pattern === undefined ? value : { ...value, title: `${name}.${key}` }];
    });
    const rules = allOf?.map((rule) =>
      rule.else?.required
        ? { ...rule, else: { ...rule.else, 'x-missing': pick(properties, rule.else.required) } }
        : rule,
    );
    return [
      name,
      {
        ...node,
        title: name,
        ...(titled.length > 0 && { properties: Object.fromEntries(titled) }),
        ...(rules && { allOf: rules }),
        ...(discriminator && {
          'x-tags': tags(oneOf ?? [], discriminator.propertyName, definitions),
        }),
      },
    ];
  });
  return {
    ...($ref !== undefined && { $ref }),
    definitions: withoutDescriptions(Object.fromEntries(named)),
  };
}

function tags(members: readonly Node[], tag: string, all: Record<string, Node>): unknown[] {
  return members.map((member) => {
    const value = all[member.$ref?.replace(root, '') ?? '']?.properties?.[tag]?.const;
    if (value === undefined) throw new Error(`${member.$ref} has no ${tag} of its own`);
    return value;
  });
}

function pick(properties: Record<string, Node>, names: readonly string[]): Record<string, Node> {
  return Object.fromEntries(names.map((name) => [name, properties[name] ?? {}]));
}

function mapProperties(
  definitions: Record<string, Node>,
  change: (property: Node) => Node,
): Record<string, Node> {
  return Object.fromEntries(
    Object.entries(definitions).map(([name, node]) => {
      if (node.properties === undefined) return [name, node];
      const changed = Object.entries(node.properties).map(([key, value]) => [key, change(value)]);
      return [name, { ...node, properties: Object.fromEntries(changed) }];
    }),
  );
}

function withoutDescriptions(definitions: Record<string, Node>): Record<string, Node> {
  // `description` is also the name of properties, whose value is then a schema.
  return JSON.parse(
    JSON.stringify(definitions, (key, value: unknown) =>
      key === 'description' && typeof value === 'string' ? undefined : value,
    ),
  ) as Record<string, Node>;
}
