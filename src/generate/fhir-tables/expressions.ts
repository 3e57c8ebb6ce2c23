import type { Definitions, ElementDefinition } from './definitions.ts';
import { structureUrl } from './definitions.ts';

/** A published invariant: where it stands and what must be true there. */
export interface PublishedRule {
  readonly key: string;
  readonly severity: 'error' | 'warning';
  readonly expression: string;
}

/**
 * Every invariant of the held types by the path of its element, as FHIRPath. Those of a data type
 * stand at the type; an element repeats none of them.
 */
export function publishedRules(
  definitions: Definitions,
  types: readonly string[],
): Record<string, PublishedRule[]> {
  const found: Record<string, PublishedRule[]> = {};
  for (const type of types) {
    const elements = definitions.structures.get(structureUrl(type))?.snapshot.element ?? [];
    for (const element of elements) {
      const rules = rulesOf(element).filter(
        ({ key }) => element.path === type || !ofItsTypes(element, definitions).has(key),
      );
      if (rules.length > 0 && element.max !== '0') found[element.path] = rules;
    }
  }
  return found;
}

function rulesOf({ constraint = [] }: ElementDefinition): PublishedRule[] {
  return constraint.flatMap(({ key, severity, expression }) =>
    expression === undefined ? [] : [{ key, severity, expression }],
  );
}

function ofItsTypes(element: ElementDefinition, { structures }: Definitions): Set<string> {
  const keys = (element.type ?? []).flatMap(({ code, profile = [] }) =>
    [structureUrl(code), ...profile].flatMap((url) =>
      rulesOf(structures.get(url)?.snapshot.element[0] ?? ({} as ElementDefinition)),
    ),
  );
  return new Set(['ele-1', ...keys.map(({ key }) => key)]);
}
