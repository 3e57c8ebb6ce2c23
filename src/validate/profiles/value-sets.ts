import type { Codes, Definitions, Members } from '../elements/definitions.ts';
import { isObject, type JsonObject, listOf, objectsOf, textOf } from '../walk/json.ts';
import { withoutVersion } from './structure.ts';

/** Codes of a CodeSystem resource that says it is complete; `undefined` for any other. */
export function readCodeSystem(resource: JsonObject): Codes | undefined {
  if (resource['content'] !== 'complete') return undefined;
  const codes = new Map<string, readonly string[]>();
  const open = [...objectsOf(resource['concept'])];
  for (let concept = open.pop(); concept !== undefined; concept = open.pop()) {
    for (const inner of objectsOf(concept['concept'])) open.push(inner);
    const code = textOf(concept['code']);
    if (code !== undefined) codes.set(code, displaysOf(concept));
  }
  return codes;
}

/** No display at all lets any pass. */
function displaysOf(concept: JsonObject): readonly string[] {
  const texts = [
    concept['display'],
    ...objectsOf(concept['designation']).map(({ value }) => value),
  ];
  const displays = texts.filter((text) => typeof text === 'string');
  return displays.length > 0 ? displays : [''];
}

/** Finds a value set by its canonical URL, among the given ones or those that are held. */
export type FindValueSet = (url: string) => Members | undefined;

/**
 * The codes of a ValueSet resource, from its expansion or from lists and whole systems in its rules;
 * `undefined` where it takes a terminology server to know them.
 */
export function readValueSet(
  resource: JsonObject,
  codeSystems: Definitions['codeSystems'],
  find: FindValueSet,
): Members | undefined {
  const expansion = isObject(resource['expansion']) ? resource['expansion'] : undefined;
  const contains = objectsOf(expansion?.['contains']);
  if (contains.length > 0) return expanded(contains);
  const compose = isObject(resource['compose']) ? resource['compose'] : undefined;
  if (compose === undefined) return undefined;
  const members = union(compose['include'], codeSystems, find);
  const excluded = union(compose['exclude'], codeSystems, find);
  return members && excluded && without(members, excluded, codeSystems);
}

function union(
  parts: unknown,
  codeSystems: Definitions['codeSystems'],
  find: FindValueSet,
): Members | undefined {
  const members = new Map<string, 'all' | Set<string>>();
  for (const each of objectsOf(parts)) {
    const part = included(each, codeSystems, find);
    if (part === undefined) return undefined;
    for (const [system, codes] of part) merge(members, system, codes);
  }
  return members;
}

function without(
  members: Members,
  excluded: Members,
  codeSystems: Definitions['codeSystems'],
): Members {
  const left = [...members].flatMap(([system, codes]): [string, 'all' | ReadonlySet<string>][] => {
    const out = excluded.get(system);
    if (out === undefined) return [[system, codes]];
    if (out === 'all') return [];
    const listed = codes === 'all' ? [...(codeSystems.get(system)?.keys() ?? [])] : [...codes];
    return [[system, new Set(listed.filter((code) => !out.has(code)))]];
  });
  return new Map(left);
}

function merge(
  into: Map<string, 'all' | Set<string>>,
  system: string,
  codes: 'all' | Iterable<string>,
): void {
  const before = into.get(system);
  if (before === 'all') return;
  if (codes === 'all') into.set(system, 'all');
  // A set of its own, which grows: what is merged may belong to another value set.
  else if (before === undefined) into.set(system, new Set(codes));
  else for (const code of codes) before.add(code);
}

function expanded(contains: readonly JsonObject[]): Members {
  const members = new Map<string, 'all' | Set<string>>();
  const open = [...contains];
  for (let entry = open.pop(); entry !== undefined; entry = open.pop()) {
    for (const inner of objectsOf(entry['contains'])) open.push(inner);
    const code = textOf(entry['code']);
    if (code !== undefined && entry['abstract'] !== true) {
      merge(members, textOf(entry['system']) ?? '', [code]);
    }
  }
  return members;
}

function included(
  include: JsonObject,
  codeSystems: Definitions['codeSystems'],
  find: FindValueSet,
): Members | undefined {
  const system = textOf(include['system']);
  const valueSets = listOf(include['valueSet']).filter((url) => typeof url === 'string');
  if (system === undefined) {
    const [only] = valueSets;
    // Several would be an intersection.
    return only !== undefined && valueSets.length === 1 ? find(withoutVersion(only)) : undefined;
  }
  if (valueSets.length > 0 || include['filter'] !== undefined) return undefined;
  if (include['concept'] === undefined) {
    return codeSystems.has(system) ? new Map([[system, 'all']]) : undefined;
  }
  const codes = objectsOf(include['concept']).flatMap(({ code }) => textOf(code) ?? []);
  return new Map([[system, new Set(codes)]]);
}
