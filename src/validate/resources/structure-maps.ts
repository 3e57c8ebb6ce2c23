import { isObject, type JsonObject, listOf, objectsOf, textOf } from '../walk/json.ts';
import { report, type Scope } from '../walk/scope.ts';
import { isType, type Reach, typesUnder } from './element-paths.ts';

const page = 'https://hl7.org/fhir/R4/structuremap-definitions.html#StructureMap.group';
const core = 'http://hl7.org/fhir/StructureDefinition/';

type Place = readonly (string | number)[];

/** Variables with the types that they may have; those of a rule are taken out again after it. */
type Variables = Map<string, Reach>;

/**
 * The variables and elements of a map. Its conditions, transforms and calls of other groups are a
 * program of its own, and are told as unchecked.
 * @see https://hl7.org/fhir/R4/mapping-language.html
 */
export function checkStructureMap(map: JsonObject, scope: Scope): void {
  const named = aliasesOf(map);
  const constants = objectsOf(map['const']).flatMap(({ name }) => textOf(name) ?? []);
  let rules = 0;
  listOf(map['group']).forEach((group, at) => {
    if (!isObject(group)) return;
    const known = new Map<string, Reach>(constants.map((name) => [name, 'open']));
    for (const { name, type } of objectsOf(group['input'])) {
      known.set(textOf(name) ?? '', typeOf(textOf(type), named, scope));
    }
    rules += checkRules(group['rule'], known, scope, ['group', at]);
  });
  if (rules === 0) return;
  const why = 'conditions, transforms and called groups of a map are not looked at';
  const rule = 'https://hl7.org/fhir/R4/mapping-language.html';
  scope.unchecked.push({ rule, path: [...scope.path, 'group'], why });
}

/** Names that a map gives to types, with what they stand for. */
function aliasesOf(map: JsonObject): ReadonlyMap<string, string> {
  return new Map(
    objectsOf(map['structure']).flatMap(({ alias, url }): [string, string][] => {
      const [name, canonical] = [textOf(alias), textOf(url)];
      return name === undefined || canonical === undefined ? [] : [[name, canonical]];
    }),
  );
}

function typeOf(
  name: string | undefined,
  named: ReadonlyMap<string, string>,
  { definitions }: Scope,
): Reach {
  const url = named.get(name ?? '') ?? `${core}${name}`;
  const type = url.startsWith(core) ? url.slice(core.length) : '';
  return definitions.types.get(type) === undefined ? 'open' : [type];
}

function checkRules(rules: unknown, known: Variables, scope: Scope, below: Place): number {
  const list = listOf(rules);
  list.forEach((rule, at) => {
    if (isObject(rule)) checkRule(rule, known, scope, [...below, 'rule', at]);
  });
  return list.length;
}

function checkRule(rule: JsonObject, known: Variables, scope: Scope, below: Place): void {
  const before: [string, Reach | undefined][] = [];
  for (const side of ['source', 'target'] as const) {
    listOf(rule[side]).forEach((one, at) => {
      if (!isObject(one)) return;
      const types = checkSide(one, side, known, scope, [...below, side, at]);
      const variable = textOf(one['variable']);
      if (variable === undefined) return;
      before.push([variable, known.get(variable)]);
      // What a transform makes is not followed.
      known.set(variable, side === 'source' ? types : 'open');
    });
  }
  checkRules(rule['rule'], known, scope, below);
  for (const [variable, types] of before.reverse()) {
    if (types === undefined) known.delete(variable);
    else known.set(variable, types);
  }
}

/** The types of the element that a source reads or a target writes. */
function checkSide(
  one: JsonObject,
  side: 'source' | 'target',
  known: Variables,
  scope: Scope,
  below: Place,
): Reach {
  const context = textOf(one['context']);
  if (context === undefined) return 'open';
  const from = known.get(context);
  if (from === undefined) {
    const isTyped = one['contextType'] === 'type' || isType(context, scope);
    if (!isTyped) {
      const rule = `${page}.rule.${side}.context`;
      report(scope, 'invalid-value', { reason: 'map-variable' }, { rule }, [...below, 'context']);
    }
    return 'open';
  }
  const element = textOf(one['element']);
  if (element === undefined) return from;
  let types: Reach = from;
  for (const step of element.split('.')) {
    const found: Reach | 'unknown' = types === 'open' ? 'open' : typesUnder(types, step, scope);
    if (found === 'unknown') {
      const rule = `${page}.rule.${side}.element`;
      report(scope, 'invalid-value', { reason: 'element-path' }, { rule }, [...below, 'element']);
      return 'open';
    }
    types = found;
  }
  return types;
}
