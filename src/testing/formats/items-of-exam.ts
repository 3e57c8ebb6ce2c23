import type { Exam, ExamCondition } from '../../model/exam.ts';
import type {
  Finding,
  Measurement,
  ModalityResult,
  Reason,
  RegionState,
  ScaleScore,
  Sensation,
  Statement,
} from '../../model/statement.ts';
import { builtInCatalogue, type Catalogue } from '../../terminology/catalogue.ts';
import { type Item, type ItemValue, itemCodes, stateWord } from './item.ts';

/** The items of an exam, in its order; what no item can say is left out. */
export function itemsOfExam(exam: Exam): Item[] {
  const groups = findingGroups(exam);
  return [
    ...(exam.conditions ?? []).flatMap((one) => conditionItems(one, builtInCatalogue)),
    ...exam.statements.flatMap((statement) => statementItems(statement, groups)),
  ];
}

/** Number of each present finding that has attributes, or that a measurement or score is about. */
function findingGroups({ statements }: Exam): ReadonlyMap<string, string> {
  const measured = new Set(
    statements.map((statement) => ('about' in statement ? statement.about : undefined)),
  );
  const owners = statements.filter(
    (statement) =>
      statement.kind === 'finding' &&
      statement.presence === 'present' &&
      (statement.attributes !== undefined || measured.has(statement.key)),
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

function statementItems(statement: Statement, groups: ReadonlyMap<string, string>): Item[] {
  const { at, note } = statement;
  const said = { at, note };
  switch (statement.kind) {
    case 'finding':
      return findingItems(statement, groups.get(statement.key));
    case 'region-state':
      return [
        {
          ...place(statement),
          ...said,
          code: itemCodes.state,
          value: { word: stateOf(statement) },
        },
      ];
    case 'sensation':
      return sensationItems(statement);
    case 'sensation-comparison': {
      const { point, modality, result, reason } = statement;
      const code = itemCodes.comparison(point, modality);
      return [{ ...said, code, value: answer(result, reason) }];
    }
    case 'movement': {
      const { test, side, grade, reason } = statement;
      return [{ ...said, code: itemCodes.movement(test), side, value: answer(grade, reason) }];
    }
    case 'function-test': {
      const { test, side, result, reason } = statement;
      return [{ ...said, code: itemCodes.functionTest(test), side, value: answer(result, reason) }];
    }
    case 'measurement':
      return [measurementItem(statement, groups)];
    case 'scale-score':
      return [scaleItem(statement, groups)];
    case 'symptom': {
      const { symptom, toldBy, region, side, answer: word } = statement;
      return [{ ...said, code: itemCodes.symptom(symptom, toldBy), region, side, value: { word } }];
    }
    case 'note': {
      const { region, side, text } = statement;
      return [{ ...said, code: itemCodes.note, region, side, value: { text } }];
    }
    case 'image':
      return [];
  }
}

function place({ region, side, methods }: Finding | RegionState | Measurement): Partial<Item> {
  return { region, side, methods };
}

function findingItems(finding: Finding, group: string | undefined): Item[] {
  const { region, side, at, note, presence, certainty } = finding;
  const first: Item = {
    ...place(finding),
    code: itemCodes.finding(finding.finding),
    value: { word: certainty ?? presence },
    at,
    note,
    group,
  };
  const attributes = (finding.attributes ?? []).map(
    ({ attribute, value }): Item => ({
      code: itemCodes.attribute(finding.finding, attribute),
      region,
      side,
      group,
      value: attributeValue(value),
    }),
  );
  return [first, ...attributes];
}

function attributeValue(value: NonNullable<Finding['attributes']>[number]['value']): ItemValue {
  if (typeof value === 'string') return { word: value };
  if (typeof value === 'boolean') return { word: value ? 'yes' : 'no' };
  if (typeof value === 'number') return { count: value };
  return { number: value.value, comparator: value.comparator, unit: value.unit };
}

function stateOf(statement: RegionState): string {
  switch (statement.state) {
    case 'normal':
    case 'abnormal':
      return statement.state;
    case 'partial':
      return stateWord(statement.state, statement.limit.code);
    default:
      return stateWord(statement.state, statement.reason.code);
  }
}

function sensationItems({ point, side, results, at, note }: Sensation): Item[] {
  return results.map(({ modality, result, reason }: ModalityResult, index) => ({
    code: itemCodes.sensation(point, modality),
    side,
    value: answer(result, reason),
    at,
    note: index === 0 ? note : undefined,
  }));
}

/** A result by its code, or that there is none and why. */
function answer(result: string, reason: Reason | undefined): ItemValue {
  return { word: reason === undefined ? result : stateWord('not-tested', reason.code) };
}

function measurementItem(statement: Measurement, groups: ReadonlyMap<string, string>): Item {
  const { measure, value, comparator, unit, unusable, conditions, at, note, about } = statement;
  return {
    ...place(statement),
    code: itemCodes.measurement(measure),
    value: value === undefined ? answer('', unusable) : { number: value, comparator, unit },
    conditions,
    at,
    note,
    group: groups.get(about ?? ''),
  };
}

function scaleItem(statement: ScaleScore, groups: ReadonlyMap<string, string>): Item {
  const { scale, version, region, side, score, at, note, about } = statement;
  return {
    code: itemCodes.scale(scale, version),
    region,
    side,
    value: typeof score === 'number' ? { count: score } : { word: score },
    at,
    note,
    group: groups.get(about ?? ''),
  };
}
