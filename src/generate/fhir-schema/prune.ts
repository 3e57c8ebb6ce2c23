import { type Definition, type Definitions, refName, type SchemaNode } from './types.ts';

/** The resources that the library writes or meets. Media was taken out of FHIR in R5. */
export const heldResources: readonly string[] = [
  'BodyStructure',
  'Bundle',
  'Composition',
  'Consent',
  'DetectedIssue',
  'Device',
  'DiagnosticReport',
  'DocumentReference',
  'Encounter',
  'Media',
  'Observation',
  'OperationOutcome',
  'Organization',
  'Patient',
  'Practitioner',
  'PractitionerRole',
  'Provenance',
  'ServiceRequest',
];

/** The definitions that the held resources need, without the descriptions. */
export function prune(all: Definitions): Definitions {
  const needed = new Set<string>();
  const open = heldResources.filter((name) => Object.hasOwn(all, name));
  for (let name = open.pop(); name !== undefined; name = open.pop()) {
    if (needed.has(name) || name === 'ResourceList') continue;
    needed.add(name);
    open.push(...refsOf(pruned(all, name)));
  }
  return Object.fromEntries([...needed].map((name) => [name, pruned(all, name)]));
}

/** One definition without its descriptions. @throws Error when the published schema lacks it. */
export function pruned(all: Definitions, name: string): Definition {
  const found = all[name];
  if (found === undefined) throw new Error(`the published schema has no definition of ${name}`);
  return withoutDescriptions(found);
}

function refsOf({ properties = {} }: Definition): string[] {
  return Object.values(properties).flatMap((node) => refName(node.items ?? node) ?? []);
}

function withoutDescriptions({ description: _, properties, ...rest }: Definition): Definition {
  if (properties === undefined) return { ...rest };
  const bare = Object.entries(properties).map(([name, node]) => [name, bareNode(node)]);
  return { ...rest, properties: Object.fromEntries(bare) };
}

function bareNode({ description: _, items, ...rest }: SchemaNode): SchemaNode {
  return items === undefined ? { ...rest } : { ...rest, items: bareNode(items) };
}
