import {
  type CodeSystem,
  type Concept,
  type Definitions,
  type ExpandedConcept,
  type ValueSet,
  type ValueSetPart,
  withoutVersion,
} from './definitions.ts';

/** Codes of a value set by system; `all` where it takes a whole system. */
export type Expansion = ReadonlyMap<string, ReadonlySet<string> | 'all'>;

/**
 * The codes of a value set: from the expansion that HL7 publishes where there is a whole one, else
 * from its own rules. `undefined` where neither can be followed without a terminology server.
 */
export function expand(url: string, definitions: Definitions): Expansion | undefined {
  const published = definitions.expansions.get(url)?.expansion;
  if (published?.contains !== undefined && published.extension === undefined) {
    return ofExpansion(published.contains);
  }
  const found = definitions.valueSets.get(url);
  return found === undefined ? undefined : composed(found, definitions, new Set([url]));
}

function ofExpansion(entries: readonly ExpandedConcept[]): Expansion {
  const found = new Map<string, Set<string>>();
  const open = [...entries];
  for (let entry = open.pop(); entry !== undefined; entry = open.pop()) {
    open.push(...(entry.contains ?? []));
    if (entry.code === undefined || entry.abstract === true) continue;
    const system = entry.system ?? '';
    found.set(system, (found.get(system) ?? new Set()).add(entry.code));
  }
  return found;
}

function composed(
  { compose }: ValueSet,
  definitions: Definitions,
  seen: ReadonlySet<string>,
): Expansion | undefined {
  if (compose === undefined || compose.exclude !== undefined) return undefined;
  const found = new Map<string, Set<string> | 'all'>();
  for (const part of compose.include) {
    const codes = included(part, definitions, seen);
    if (codes === undefined) return undefined;
    for (const [system, more] of codes) {
      const before = found.get(system);
      found.set(
        system,
        before === 'all' || more === 'all' ? 'all' : new Set([...(before ?? []), ...more]),
      );
    }
  }
  return found;
}

function included(
  { system, valueSet, concept, filter }: ValueSetPart,
  definitions: Definitions,
  seen: ReadonlySet<string>,
): Expansion | undefined {
  if (valueSet !== undefined) {
    const [url = ''] = valueSet.map(withoutVersion);
    // Several, or one beside a system, would be an intersection.
    if (valueSet.length > 1 || system !== undefined || seen.has(url)) return undefined;
    const published = expand(url, definitions);
    return published;
  }
  if (system === undefined) return undefined;
  if (concept !== undefined) return new Map([[system, new Set(concept.map(({ code }) => code))]]);
  if (filter === undefined) {
    return isComplete(system, definitions) ? new Map([[system, 'all']]) : undefined;
  }
  const codes = filtered(definitions.codeSystems.get(system)?.[0], filter);
  return codes === undefined ? undefined : new Map([[system, codes]]);
}

function isComplete(system: string, { codeSystems }: Definitions): boolean {
  return codeSystems.get(system)?.[0]?.content === 'complete';
}

function filtered(
  system: CodeSystem | undefined,
  filters: NonNullable<ValueSetPart['filter']>,
): Set<string> | undefined {
  const [filter] = filters;
  if (system?.content !== 'complete' || filter === undefined || filters.length > 1)
    return undefined;
  if (filter.property !== 'concept' || filter.op !== 'is-a') return undefined;
  const found = new Set<string>();
  const walk = (concepts: readonly Concept[], inside: boolean): void => {
    for (const { code, concept = [] } of concepts) {
      const here = inside || code === filter.value;
      if (here) found.add(code);
      walk(concept, here);
    }
  };
  walk(system.concept ?? [], false);
  addSubsumed(found, allConcepts(system.concept ?? []));
  return found;
}

/** HL7's terminology writes its hierarchies by this property, and not by concepts inside others. */
function addSubsumed(found: Set<string>, concepts: readonly Concept[]): void {
  let before: number;
  do {
    before = found.size;
    for (const { code, property = [] } of concepts) {
      const below = property.some(
        ({ code: name, valueCode }) =>
          name === 'subsumedBy' && valueCode !== undefined && found.has(valueCode),
      );
      if (below) found.add(code);
    }
  } while (found.size > before);
}

/** Every concept of a code system, with those below others. */
export function allConcepts(concepts: readonly Concept[]): Concept[] {
  return concepts.flatMap((each) => [each, ...allConcepts(each.concept ?? [])]);
}
