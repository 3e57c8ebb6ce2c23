import { isObject, type JsonObject } from '../walk/json.ts';
import { report, type Scope } from '../walk/scope.ts';
import { readXhtml } from './xhtml.ts';

/** The div of a narrative: its XHTML, and links of it that must lead to something in the resource. */
export function checkNarrative(value: string, scope: Scope): void {
  const { faults, outward } = readXhtml(value);
  for (const { message, severity, rule, at } of faults) {
    report(
      scope,
      'invalid-narrative',
      { reason: 'xhtml', says: message, count: at },
      { severity, rule },
    );
  }
  if (outward.length === 0) return;
  const known = idsInRoot(scope);
  if (outward.every((name) => known.has(name))) return;
  report(
    scope,
    'unresolved-reference',
    { reason: 'narrative-link' },
    {
      rule: 'https://hl7.org/fhir/R4/narrative.html#id',
    },
  );
}

/** Ids of the elements and contained resources of the resource; looked up once for all its narratives. */
function idsInRoot(scope: Scope): ReadonlySet<string> {
  scope.idsInRoot ??= idsIn(scope.root);
  return scope.idsInRoot;
}

function idsIn(resource: JsonObject): Set<string> {
  const ids = new Set<string>();
  const open: unknown[] = [resource];
  while (open.length > 0) {
    const value = open.pop();
    if (Array.isArray(value)) {
      for (const item of value) open.push(item);
    } else if (isObject(value)) {
      if (typeof value['id'] === 'string') ids.add(value['id']);
      for (const name of Object.keys(value)) open.push(value[name]);
    }
  }
  return ids;
}
