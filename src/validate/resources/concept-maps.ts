import { fhirVersionNumber } from '../../fhir/version.ts';
import { nearest } from '../../issues/nearest.ts';
import type { Codes } from '../elements/definitions.ts';
import { isInValueSet } from '../terminology/terminology.ts';
import { isObject, type JsonObject, listOf, textOf } from '../walk/json.ts';
import { report, type Scope } from '../walk/scope.ts';

/**
 * The codes of a map are codes of the systems that its groups name, and of the value sets that it
 * leads between, as far as those are held.
 * @see https://hl7.org/fhir/R4/conceptmap-definitions.html#ConceptMap.group.source
 */
export function checkConceptMap(map: JsonObject, scope: Scope): void {
  const [from, to] = [valueSetOf(map, 'source', scope), valueSetOf(map, 'target', scope)];
  listOf(map['group']).forEach((group, at) => {
    if (!isObject(group)) return;
    const source = sideOf(group, 'source', from, scope);
    const target = sideOf(group, 'target', to, scope);
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

/** What the codes of one side of a group are held to. */
interface Side {
  readonly system: string;
  readonly codes: Codes | undefined;
  readonly valueSet: string | undefined;
}

type SideName = 'source' | 'target';

/**
 * A set that is not held, or is of another edition, is told as unchecked.
 * @see https://hl7.org/fhir/R5/conceptmap-definitions.html#ConceptMap.sourceScope_x_
 */
function valueSetOf(map: JsonObject, name: SideName, scope: Scope): string | undefined {
  const { fhirVersion, valueSets } = scope.definitions;
  const property = fhirVersion === 'R5' ? `${name}ScopeCanonical` : `${name}Canonical`;
  const [url, edition] = textOf(map[property])?.split('|') ?? [];
  if (url === undefined) return undefined;
  const isOwn = edition === undefined || edition === fhirVersionNumber[fhirVersion];
  if (isOwn && valueSets.has(url)) return url;
  const why = 'the value set that the map is for is not held';
  scope.unchecked.push({ rule: url, path: [...scope.path, property], why });
  return undefined;
}

/** What another edition of the system holds is not known here. */
function sideOf(
  group: JsonObject,
  name: SideName,
  valueSet: string | undefined,
  { definitions }: Scope,
): Side | undefined {
  const system = textOf(group[name]);
  if (system === undefined || group[`${name}Version`] !== undefined) return undefined;
  const codes = definitions.codeSystems.get(system);
  return codes === undefined && valueSet === undefined ? undefined : { system, codes, valueSet };
}

function checkCode(
  element: JsonObject,
  side: Side | undefined,
  scope: Scope,
  place: readonly (string | number)[],
): void {
  const code = textOf(element['code']);
  if (side === undefined || code === undefined) return;
  const { system, codes, valueSet } = side;
  const rule = 'https://hl7.org/fhir/R4/conceptmap-definitions.html#ConceptMap.group.element.code';
  if (codes !== undefined && !codes.has(code)) {
    const facts = { reason: 'system', system, code: nearest(code, codes.keys()) } as const;
    report(scope, 'unknown-code', facts, { rule, value: code }, [...place, 'code']);
  } else if (valueSet !== undefined && isInValueSet(valueSet, { system, code }, scope) === false) {
    const facts = { reason: 'map-set', url: valueSet } as const;
    report(scope, 'unknown-code', facts, { rule, value: code }, [...place, 'code']);
  }
}
