import { rulesOf as heldRules } from '../../validate/invariants/invariants.ts';
import type { Definitions, ElementDefinition } from './definitions.ts';
import { structureUrl, withoutVersion } from './definitions.ts';
import { everywhere, heldTypes } from './elements.ts';

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
  const root = definitions.structures.get(structureUrl('Element'))?.snapshot.element[0];
  // What holds of every element stands once, here.
  const found: Record<string, PublishedRule[]> = {
    Element: root === undefined ? [] : rulesOf(root),
  };
  for (const type of types) {
    const elements = definitions.structures.get(structureUrl(type))?.snapshot.element ?? [];
    for (const element of elements) {
      const rules = element.path === type ? rulesOf(element) : ownRules(element, definitions);
      const kept = rules.filter(({ key }) => key !== 'ele-1');
      if (kept.length > 0 && element.max !== '0') found[element.path] = kept;
    }
  }
  return found;
}

/** The rules that no function of the library holds, by key, and by place where a key stands for several. */
export function publishedTable(
  definitions: Definitions,
  types: readonly string[],
): Record<string, [PublishedRule['severity'], string]> {
  const { version } = definitions;
  const found: Record<string, [PublishedRule['severity'], string]> = {};
  const held = new Map(
    Object.values(publishedRules(definitions, heldTypes(definitions)))
      .flat()
      .map(({ key, expression }) => [key, expression]),
  );
  for (const [place, rules] of Object.entries(publishedRules(definitions, types))) {
    for (const { key, severity, expression } of rules) {
      const isHeld = everywhere.has(key) || heldRules([key], version).invariants.length > 0;
      // A key of the held types may mean another rule elsewhere.
      if (isHeld && (held.get(key) ?? expression) === expression) continue;
      const before = found[key];
      const name = isHeld || (before && before[1] !== expression) ? `${key} of ${place}` : key;
      found[name] = [severity, expression];
    }
  }
  return found;
}

function rulesOf({ constraint = [] }: ElementDefinition): PublishedRule[] {
  return constraint.flatMap(({ key, severity, expression }) =>
    expression === undefined ? [] : [{ key, severity, expression: corrected(expression) }],
  );
}

/**
 * Expressions that FHIRPath evaluates otherwise than HL7's validator, and than the rule says in words:
 * que-7 of R4 means the boolean of FHIR, and where there is no probability ras-2 asks nothing of it.
 */
function corrected(expression: string): string {
  return expression
    .replace('(answer is Boolean)', '(answer is boolean)')
    .replace(
      /^probability is decimal implies/,
      'probability.exists() and probability is decimal implies',
    );
}

/** Those of the element itself and of the profile on its type, without those of its type. */
function ownRules(element: ElementDefinition, { structures }: Definitions): PublishedRule[] {
  const rulesAt = (url: string): PublishedRule[] => {
    const root = structures.get(withoutVersion(url))?.snapshot.element[0];
    return root === undefined ? [] : rulesOf(root);
  };
  // A resource is held to the rules of its own type.
  const types = (element.type ?? []).filter(({ code }) => code !== 'Resource');
  const ofTypes = types.flatMap(({ code }) => rulesAt(structureUrl(code)));
  const ofProfiles = types.flatMap(({ profile = [] }) => profile.flatMap(rulesAt));
  const inherited = new Set(ofTypes.map(({ key }) => key));
  const own = [...rulesOf(element), ...ofProfiles].filter(({ key }) => !inherited.has(key));
  return [...new Map(own.map((rule) => [rule.key, rule])).values()];
}
