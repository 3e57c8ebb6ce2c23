import { isPrimitive } from '../definitions.ts';
import { knownRules } from '../invariants.ts';
import type { ProfileNode } from './compile.ts';
import { type Look, say, sayUnchecked } from './look.ts';
import { structureBase } from './structure.ts';

/** Rules of the profile's own: those of the base are held by the stage of invariants. */
export function checkConstraints(value: unknown, node: ProfileNode, look: Look): void {
  const { scope } = look;
  for (const { key, severity, expression, source } of node.constraints) {
    if (knownRules.has(key) && isPublished(source)) continue;
    if (expression === undefined || scope.engine === undefined) {
      sayUnchecked(look, node, `the rule ${key}`, []);
      continue;
    }
    const type = node.path.includes('.') ? baseOf(node) : look.profile.type;
    const verdict = scope.engine.evaluate({ key, severity, expression }, type, value, scope);
    if (verdict === 'undecided') sayUnchecked(look, node, `the rule ${key}`, []);
    else if (verdict === 'fails') {
      say(look, node, 'broken-invariant', 'a rule of the profile does not hold', {
        severity,
        rule: `${look.profile.url}#${key}`,
      });
    }
  }
}

/** Adopters may have given a rule of their own the key of a published one. */
function isPublished(source: string | undefined): boolean {
  return source === undefined || !source.includes(':') || source.startsWith(structureBase);
}

function baseOf({ types, path }: ProfileNode): string {
  const [first] = types;
  if (first === undefined || first.code === 'BackboneElement' || first.code === 'Element')
    return path;
  return isPrimitive(first.code) || types.length === 1 ? first.code : path;
}
