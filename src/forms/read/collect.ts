import { isPlainObject } from '../../data/plain-data.ts';
import { spend } from '../../issues/budget.ts';
import type { Path } from '../../issues/path.ts';
import { unknownStep } from '../../issues/shown-path.ts';
import type { FormItem } from '../form.ts';
import { type AnswerValue, answerValue, isBlank } from './answer-value.ts';
import type { Reading } from './reading.ts';

/** An item of the form as it was filled in once. */
export interface Filled {
  /** LinkIds, with the number of the repetition behind a group that can be filled in several times. */
  readonly path: Path;
  /** There are answers, whether they fit or not. */
  readonly isAnswered: boolean;
  /** Those that fit. */
  readonly answers: readonly AnswerValue[];
  readonly below: FilledItems;
}

/** By linkId; several where a group was filled in several times. */
export type FilledItems = ReadonlyMap<string, readonly Filled[]>;

export interface Collecting {
  readonly reading: Reading;
  /** LinkIds that a clinic added to the form. */
  readonly own: ReadonlySet<string>;
}

type Members = Readonly<Record<string, unknown>>;

/**
 * What stands in a response, held item by item to the form. Whatever the form does not have at that
 * place is told and not taken.
 */
export function collect(
  collecting: Collecting,
  items: readonly FormItem[],
  given: unknown,
  at: Path,
): FilledItems {
  const { reading } = collecting;
  const filled = new Map<string, Filled[]>();
  if (given === undefined) return filled;
  if (!Array.isArray(given)) {
    reading.report('wrong-type', at, { reason: 'answer-type', type: 'item' }, given);
    return filled;
  }
  const known = new Map(items.map((item) => [item.linkId, item]));
  given.forEach((entry: unknown, place) => {
    spend(1);
    if (!isPlainObject(entry)) {
      const path = [...at, unknownStep(place + 1)];
      reading.report('wrong-type', path, { reason: 'answer-type', type: 'item' }, entry);
      return;
    }
    const { linkId } = entry;
    const item = typeof linkId === 'string' ? known.get(linkId) : undefined;
    if (item === undefined) {
      unknownItem(collecting, entry, [...known.keys()], at, place);
      return;
    }
    const before = filled.get(item.linkId) ?? [];
    const isRepeated = item.type === 'group' && item.repeats === true;
    const path = [...at, item.linkId, ...(isRepeated ? [before.length] : [])];
    if (before.length > 0 && !isRepeated) {
      reading.report('duplicate-key', path, { reason: 'item' });
      return;
    }
    filled.set(item.linkId, before);
    before.push(filledItem(collecting, item, entry, path, isRepeated));
  });
  return filled;
}

function unknownItem(
  { reading, own }: Collecting,
  entry: Members,
  known: readonly string[],
  at: Path,
  place: number,
): void {
  const { linkId } = entry;
  if (typeof linkId === 'string' && own.has(linkId)) {
    // The name stands in the form that the caller gave, and is nobody's words.
    if (holdsAnswer(entry)) {
      reading.warn('not-in-exam', [...at, linkId], { reason: 'own-item' }, entry);
    }
    return;
  }
  const near = typeof linkId === 'string' ? reading.nearest(linkId, known) : undefined;
  const path = [...at, unknownStep(place + 1)];
  reading.report('unknown-property', path, { reason: 'item', near }, entry);
}

/** Whether an item of another form holds anything that was answered. */
function holdsAnswer({ answer, item }: Members): boolean {
  if (Array.isArray(answer) ? answer.length > 0 : answer !== undefined) return true;
  return Array.isArray(item) && item.some((one: unknown) => isPlainObject(one) && holdsAnswer(one));
}

function filledItem(
  collecting: Collecting,
  item: FormItem,
  entry: Members,
  path: Path,
  isRepeated: boolean,
): Filled {
  const { reading } = collecting;
  refuseModifiers(reading, entry, path);
  const { answer = [], item: inner } = entry;
  if (!Array.isArray(answer)) {
    reading.report('wrong-type', path, { reason: 'answer-type', type: 'answer' }, answer);
    return { path, isAnswered: true, answers: [], below: new Map() };
  }
  if (item.type === 'group') {
    if (answer.length > 0) {
      reading.report('wrong-type', path, { reason: 'answer-type', type: 'group' }, answer);
    }
    // Only where a group repeats does its name say which of the fillings is meant.
    const at = isRepeated ? path : path.slice(0, -1);
    const below = collect(collecting, item.items ?? [], inner, at);
    const isAnswered = [...below.values()].some((all) => all.some((one) => one.isAnswered));
    return { path, isAnswered, answers: [], below };
  }
  collect(collecting, [], inner, path);
  if (answer.length > 1 && item.repeats !== true) {
    reading.report('too-many', path, { reason: 'answers' }, answer);
    return { path, isAnswered: true, answers: [], below: new Map() };
  }
  const answers = answer.flatMap((one: unknown) => {
    if (!isPlainObject(one)) {
      reading.report('wrong-type', path, { reason: 'answer-type', type: 'answer' }, one);
      return [];
    }
    refuseModifiers(reading, one, path);
    collect(collecting, [], one['item'], path);
    return answerValue(reading, item, one, path) ?? [];
  });
  const isAnswered = answer.some((one: unknown) => !isPlainObject(one) || !isBlank(one));
  return { path, isAnswered, answers, below: new Map() };
}

/** @see https://hl7.org/fhir/R4/extensibility.html#modifierExtension */
export function refuseModifiers(reading: Reading, holder: Members, path: Path): void {
  if (holder['modifierExtension'] === undefined) return;
  reading.report('not-understood', path, { reason: 'form' });
}
