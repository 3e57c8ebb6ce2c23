import { nearest } from '../../issues/nearest.ts';
import type { Codes } from '../elements/definitions.ts';
import { isObject, type JsonObject, listOf, textOf } from '../walk/json.ts';
import { report, type Scope } from '../walk/scope.ts';

/**
 * The codes of a map are codes of the systems that its groups name, as far as those are held.
 * @see https://hl7.org/fhir/R4/conceptmap-definitions.html#ConceptMap.group.source
 */
export function checkConceptMap(map: JsonObject, scope: Scope): void {
  listOf(map['group']).forEach((group, at) => {
    if (!isObject(group)) return;
    const source = systemOf(group, 'source', scope);
    const target = systemOf(group, 'target', scope);
    if (source === undefined && target === undefined) return;
    listOf(group['element']).forEach((element, number) => {
      if (!isObject(element)) return;
      const place = ['group', at, 'element', number];
      checkCode(element, source, scope, place);
      listOf(element['target']).forEach((each, count) => {
        if (isObject(each)) checkCode(each, target, scope, [...place, 'target', count]);
      });
    });
  });
}

interface HeldSystem {
  readonly url: string;
  readonly codes: Codes;
}

/** What another edition of the system holds is not known here. */
function systemOf(
  group: JsonObject,
  name: 'source' | 'target',
  { definitions }: Scope,
): HeldSystem | undefined {
  const url = textOf(group[name]);
  if (url === undefined || group[`${name}Version`] !== undefined) return undefined;
  const codes = definitions.codeSystems.get(url);
  return codes && { url, codes };
}

function checkCode(
  element: JsonObject,
  system: HeldSystem | undefined,
  scope: Scope,
  place: readonly (string | number)[],
): void {
  const code = textOf(element['code']);
  if (system === undefined || code === undefined || system.codes.has(code)) return;
  const near = nearest(code, system.codes.keys());
  const facts = { reason: 'system', system: system.url, code: near } as const;
  const rule = 'https://hl7.org/fhir/R4/conceptmap-definitions.html#ConceptMap.group.element.code';
  report(scope, 'unknown-code', facts, { rule, value: code }, [...place, 'code']);
}
