import { presentIn } from '../../kinds/finding/sample.ts';
import { itemsOf } from '../../kinds/registries/samples.ts';
import type { Exam, ExamCondition } from '../../model/exam.ts';
import { builtInCatalogue, type Catalogue } from '../../terminology/catalogue.ts';
import { type Item, itemCodes } from './item.ts';
import { keptBack } from './kept-back.ts';

/** The items of an exam, in its order; what no item can say is left out. */
export function itemsOfExam(exam: Exam): Item[] {
  const groups = findingGroups(exam);
  return [
    ...(exam.conditions ?? []).flatMap((one) => conditionItems(one, builtInCatalogue)),
    ...exam.statements.flatMap((statement) =>
      keptBack(statement) === undefined ? itemsOf(statement, groups) : [],
    ),
  ];
}

/** Number of each present finding that has attributes, or that a measurement or score is about. */
function findingGroups({ statements }: Exam): ReadonlyMap<string, string> {
  const written = statements.filter((one) => keptBack(one) === undefined);
  const measured = new Set(written.map((one) => ('about' in one ? one.about : undefined)));
  const owners = presentIn(written).filter(
    ({ key, attributes }) => attributes !== undefined || measured.has(key),
  );
  return new Map(owners.map(({ key }, at) => [key, String(at + 1)]));
}

function conditionItems(stated: ExamCondition, catalogue: Catalogue): Item[] {
  const { condition, value, regions, side, note } = stated;
  // No word says a condition alone where there is a list of values for it.
  if (value === undefined && catalogue.conditions.get(condition)?.values !== undefined) return [];
  const places = regions ?? [undefined];
  return places.map((region) => ({
    code: itemCodes.condition(condition),
    value: { word: value ?? 'yes' },
    region,
    side,
    note,
  }));
}
