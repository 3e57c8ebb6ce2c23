import { resolve } from '../../bundles/resolve.ts';
import { isPrimitive } from '../../elements/definitions.ts';
import { knownRules } from '../../invariants/invariants.ts';
import type { ProfileNode } from '../compile.ts';
import { type Look, say, sayUnchecked } from '../look.ts';
import { type ProfileConstraint, structureBase } from '../structure.ts';
import type { Item } from './items.ts';
import type { Rule } from './rule.ts';

/** A rule of a profile, and what it is at the fast level; none where it is not held there. */
export interface CompiledConstraint extends ProfileConstraint {
  readonly rule: Rule | undefined;
}

/** Rules of the profile's own: those of the base are held by the stage of invariants. */
export function checkConstraints(
  value: unknown,
  node: ProfileNode,
  look: Look,
  type?: string,
): void {
  for (const constraint of node.constraints) {
    const { key, severity } = constraint;
    const verdict = verdictOf(constraint, { value, type }, node, look);
    if (verdict === 'undecided') sayUnchecked(look, node, { reason: 'rule', key }, []);
    else if (verdict === 'fails') {
      say(
        look,
        node,
        'broken-invariant',
        { reason: 'profile' },
        {
          severity,
          rule: `${look.profile.url}#${key}`,
        },
      );
    }
  }
}

function verdictOf(
  { key, severity, expression, rule }: CompiledConstraint,
  { value, type }: Item,
  node: ProfileNode,
  look: Look,
): 'holds' | 'fails' | 'undecided' {
  const { scope } = look;
  if (expression === undefined) return 'undecided';
  if (scope.engine !== undefined) {
    const base = node.path.includes('.') ? (type ?? baseOf(node)) : look.profile.type;
    return scope.engine.evaluate({ key, severity, expression }, base, value, scope);
  }
  const [only, other] = node.types;
  const known = type ?? (other === undefined ? only?.code : undefined);
  const around = {
    resource: scope.resource,
    root: scope.root,
    types: scope.definitions.types,
    resolve: (reference: string) => resolve(reference, scope)?.resource,
  };
  return rule?.verdict({ value, type: known }, around) ?? 'undecided';
}

/** Whether the stage of invariants holds every resource to it: adopters may use a published key anew. */
export function isHeldElsewhere({ key, source }: ProfileConstraint): boolean {
  if (!knownRules.has(key)) return false;
  return source === undefined || !source.includes(':') || source.startsWith(structureBase);
}

function baseOf({ types, path }: ProfileNode): string {
  const [first] = types;
  if (first === undefined || first.code === 'BackboneElement' || first.code === 'Element')
    return path;
  return isPrimitive(first.code) || types.length === 1 ? first.code : path;
}
