import type { Path } from '../../issues/path.ts';
import type { FormItem, FormTarget } from '../form.ts';
import type { AnswerValue } from './answer-value.ts';
import type { Filled, FilledItems } from './collect.ts';
import type { Reading } from './reading.ts';

/** What the answers say of one statement, or of the conclusion. */
export interface Said {
  /** Undefined for the conclusion. */
  readonly beginning: Readonly<Record<string, string>> | undefined;
  readonly given: GivenMember[];
  /** LinkIds of the first answer. */
  readonly path: Path;
}

/** What one answer gives. */
export interface GivenMember {
  readonly member: readonly string[];
  readonly value: unknown;
  readonly path: Path;
}

/** A question without answer where the form needs one. */
export interface Lacking {
  readonly path: Path;
  /** The rest of what it belongs to was answered, and cannot stand without it. */
  readonly isNeeded: boolean;
}

export interface Taken {
  readonly said: readonly Said[];
  readonly lacking: readonly Lacking[];
}

/** One filling in of the form, or of a group that can be filled in several times. */
interface Round {
  readonly reading: Reading;
  /** LinkIds and number of the group. */
  readonly at: Path;
  readonly outer: Round | undefined;
  /** Answers that count, by linkId: those of items that are asked. */
  readonly answered: Map<string, readonly AnswerValue[]>;
  readonly said: Map<string, Said>;
  readonly lacking: { readonly key: string; readonly path: Path }[];
  /** What all rounds have given, in the order of the first answers. */
  readonly taken: { readonly said: Said[]; readonly lacking: Lacking[] };
}

/**
 * Takes the answers of all items that are asked, in the order of the form. Whether an item is asked
 * follows from the answers before it, and not from what the renderer showed.
 */
export function takeAnswers(
  reading: Reading,
  items: readonly FormItem[],
  filled: FilledItems,
): Taken {
  const taken = { said: [], lacking: [] };
  takeRound(items, filled, { reading, at: [], outer: undefined, taken });
  return taken;
}

function takeRound(
  items: readonly FormItem[],
  filled: FilledItems,
  start: Pick<Round, 'reading' | 'at' | 'outer' | 'taken'>,
): void {
  const round: Round = { ...start, answered: new Map(), said: new Map(), lacking: [] };
  takeItems(round, items, filled);
  const { said, lacking, taken, outer } = round;
  for (const { key, path } of lacking) {
    taken.lacking.push({ path, isNeeded: said.has(key) || outer !== undefined });
  }
}

function takeItems(round: Round, items: readonly FormItem[], filled: FilledItems): void {
  for (const item of items) {
    const all = filled.get(item.linkId) ?? [];
    if (!isAsked(item, round)) {
      for (const one of all) tellHidden(round.reading, one);
    } else if (item.type === 'group') {
      takeGroup(round, item, all);
    } else {
      takeAnswer(round, item, all[0]);
    }
  }
}

function takeGroup(round: Round, { items = [], repeats }: FormItem, all: readonly Filled[]): void {
  if (repeats !== true) {
    takeItems(round, items, all[0]?.below ?? new Map());
    return;
  }
  const { reading, taken } = round;
  for (const one of all) {
    if (!one.isAnswered) continue;
    takeRound(items, one.below, { reading, at: one.path, outer: round, taken });
  }
}

function isAsked({ enabledBy }: FormItem, round: Round): boolean {
  if (enabledBy === undefined) return true;
  const { item, codes } = enabledBy;
  let at: Round | undefined = round;
  while (at !== undefined) {
    const answers = at.answered.get(item);
    if (answers !== undefined) {
      return answers.some((one) => codes?.includes('option' in one ? one.option.code : '') ?? true);
    }
    at = at.outer;
  }
  return false;
}

/** An answer to what was not asked is told: it may have been hidden when another answer was changed. */
function tellHidden(reading: Reading, { path, isAnswered, below }: Filled): void {
  if (below.size === 0) {
    if (isAnswered) reading.warn('not-in-exam', path, { reason: 'hidden' });
    return;
  }
  for (const all of below.values()) for (const one of all) tellHidden(reading, one);
}

function takeAnswer(round: Round, item: FormItem, filled: Filled | undefined): void {
  const { linkId, required, says } = item;
  const path = filled?.path ?? [...round.at, linkId];
  const answers = filled?.answers ?? [];
  if (answers.length > 0) {
    round.answered.set(linkId, answers);
    if (says !== undefined && says.part !== 'protocol') say(round, item, says, answers, path);
    return;
  }
  // An answer that does not fit was told as such.
  const isSilent = filled?.isAnswered !== true;
  if (required && isSilent) round.lacking.push({ key: keyOf(says), path });
}

function say(
  round: Round,
  { repeats }: FormItem,
  says: Exclude<FormTarget, { readonly part: 'protocol' }>,
  answers: readonly AnswerValue[],
  path: Path,
): void {
  const key = keyOf(says);
  const beginning = says.part === 'statement' ? says.statement : undefined;
  let said = round.said.get(key);
  if (said === undefined) {
    said = { beginning, given: [], path };
    round.said.set(key, said);
    round.taken.said.push(said);
  }
  const isNumber = says.part === 'statement' && says.as === 'number';
  const values = [...new Set(answers.map((one) => valueIn(one, isNumber)))];
  said.given.push({ member: says.member, value: repeats ? values : values[0], path });
  for (const one of answers) {
    const also = 'option' in one ? (one.option.also ?? {}) : {};
    for (const [member, value] of Object.entries(also)) {
      said.given.push({ member: [member], value, path });
    }
  }
}

function keyOf(says: FormTarget | undefined): string {
  return says === undefined ? '' : says.part === 'statement' ? says.key : says.part;
}

function valueIn(answer: AnswerValue, isNumber: boolean): string | number {
  const text = 'option' in answer ? answer.option.value : answer.text;
  return isNumber ? Number(text) : text;
}
