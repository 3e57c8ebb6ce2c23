import { isObject, type JsonObject, listOf, objectsOf, textOf } from '../walk/json.ts';
import { report, type Scope } from '../walk/scope.ts';
import { itemRule } from './answer-values.ts';

/** What a form says of its own items: the questions on which others depend. */
export function checkQuestionnaire(form: JsonObject, scope: Scope): void {
  const links = new Set<string>();
  const open: JsonObject[] = [form];
  for (let holder = open.pop(); holder !== undefined; holder = open.pop()) {
    for (const item of objectsOf(holder['item'])) {
      const link = textOf(item['linkId']);
      if (link !== undefined) links.add(link);
      open.push(item);
    }
  }
  checkItems(form, links, scope, []);
}

function checkItems(
  holder: JsonObject,
  links: ReadonlySet<string>,
  scope: Scope,
  below: readonly (string | number)[],
): void {
  listOf(holder['item']).forEach((item, at) => {
    if (!isObject(item)) return;
    const place = [...below, 'item', at];
    checkConditions(item, links, scope, place);
    checkItems(item, links, scope, place);
  });
}

function checkConditions(
  item: JsonObject,
  links: ReadonlySet<string>,
  scope: Scope,
  place: readonly (string | number)[],
): void {
  const conditions = listOf(item['enableWhen']);
  conditions.forEach((condition, at) => {
    const question = isObject(condition) ? textOf(condition['question']) : undefined;
    if (question === undefined) return;
    const below = [...place, 'enableWhen', at, 'question'];
    const said = { rule: itemRule('enableWhen.question') };
    if (question === item['linkId']) {
      report(scope, 'circular-reference', { reason: 'enable-when' }, said, below);
    } else if (!links.has(question)) {
      report(scope, 'unresolved-reference', { reason: 'enable-when' }, said, below);
    }
  });
  // "If there are more than one enableWhen"; the expression of R4 and R4B tells of three.
  const untold = scope.definitions.fhirVersion !== 'R5' && conditions.length === 2;
  if (untold && item['enableBehavior'] === undefined) {
    const says = 'more than one enableWhen and no enableBehavior';
    const facts = { reason: 'published', says, key: 'que-12' } as const;
    report(scope, 'broken-invariant', facts, { rule: 'que-12' }, place);
  }
}
