import { isPlainObject } from '../data/plain-data.ts';
import { seenAt } from '../kinds/facets/base.ts';
import type { Exam } from '../model/exam.ts';
import { coversSide, oneSides } from '../model/sides.ts';
import type { Statement } from '../model/statement.ts';
import type { FormItem, FormTarget } from './form.ts';
import type { FormWriter } from './writer.ts';

type Target = Extract<FormTarget, { readonly part: 'statement' }>;

/** LinkId of the item that shows what was said last time. */
function lastTimeOf(linkId: string): string {
  return `last:${linkId}`;
}

/**
 * Read-only items that show what was said last time, in front of the questions that they belong to.
 * They are words, so that a figure keeps its precision, its unit and the day of it.
 */
export function withLastTime(writer: FormWriter, items: readonly FormItem[]): readonly FormItem[] {
  if (writer.options.lastTime !== true) return items;
  return items.flatMap((item) => {
    const inner =
      item.items === undefined || item.repeats === true
        ? item
        : { ...item, items: withLastTime(writer, item.items) };
    return targetOf(item) === undefined ? [inner] : [shownBefore(writer, item), inner];
  });
}

function shownBefore(writer: FormWriter, { linkId, text }: FormItem): FormItem {
  return {
    linkId: lastTimeOf(linkId),
    type: 'string',
    text: `${text}, ${writer.words.lastTime}`,
    readOnly: true,
  };
}

/** What a question or a group that repeats is about; nothing for what explains another answer. */
function targetOf({ says, enabledBy, repeats, items = [] }: FormItem): Target | undefined {
  if (repeats === true) return items[0] && targetOf(items[0]);
  return says?.part === 'statement' && enabledBy === undefined ? says : undefined;
}

/** By linkId, what the items of a form show of an exam before. */
export function lastTimeTexts(
  items: readonly FormItem[],
  prior: Exam,
): ReadonlyMap<string, string> {
  const texts = new Map<string, string>();
  const shown = new Set<string>();
  const statements = byAnchor(prior.statements);
  const look = (asked: readonly FormItem[]): void => {
    for (const item of asked) {
      const target = targetOf(item);
      if (target === undefined) {
        look(item.items ?? []);
        continue;
      }
      const near = statements.get(anchorOf(target.statement)) ?? [];
      const found = near.filter((one) => isAbout(one, target));
      const lines = found.flatMap((one) => {
        if (item.repeats === true && shown.has(one.key)) return [];
        shown.add(one.key);
        return lineOf(item, one, prior);
      });
      if (lines.length > 0) texts.set(lastTimeOf(item.linkId), lines.join('; '));
    }
  };
  look(items);
  return texts;
}

/** Statements by what they are about, so that not each is held to each question. */
function byAnchor(statements: readonly Statement[]): ReadonlyMap<string, readonly Statement[]> {
  const known = new Map<string, Statement[]>();
  for (const one of statements) {
    const anchor = anchorOf(one);
    const before = known.get(anchor);
    if (before === undefined) known.set(anchor, [one]);
    else before.push(one);
  }
  return known;
}

function anchorOf(statement: object): string {
  const members = new Map<string, unknown>(Object.entries(statement));
  const about = ['measure', 'point', 'test', 'scale', 'region'].find((name) => members.has(name));
  return `${members.get('kind')}/${about === undefined ? '' : members.get(about)}`;
}

function isAbout(statement: Statement, { statement: beginning }: Target): boolean {
  const members = new Map<string, unknown>(Object.entries(statement));
  return Object.entries(beginning).every(([name, value]) => {
    // A figure is shown with its own unit, and a score of another version is another score.
    if (name === 'unit') return true;
    if (name !== 'side') return members.get(name) === value;
    const side = oneSides.find((one) => one === value);
    return side === undefined
      ? members.get(name) === value
      : 'side' in statement && statement.side !== undefined && coversSide(statement.side, side);
  });
}

function lineOf(item: FormItem, statement: Statement, prior: Exam): string[] {
  const asked = item.repeats === true ? (item.items ?? []) : [item];
  const words = asked.flatMap((one) => shownOf(one, statement) ?? []);
  if (words.length === 0) return [];
  const at = seenAt(statement) ?? prior.performed.start;
  return [`${words.join(': ')} (${at.slice(0, 10)})`];
}

/** The answer that a statement gives to a question, in the words of the form. */
function shownOf({ says, options }: FormItem, statement: Statement): string | undefined {
  if (says?.part !== 'statement') return undefined;
  const value = memberOf(statement, says.member);
  if (options === undefined) return figureOf(statement, value);
  const members = new Map<string, unknown>(Object.entries(statement));
  const fitting = options.filter(
    (one) =>
      one.value === value &&
      Object.entries(one.also ?? {}).every(([name, wanted]) => members.get(name) === wanted),
  );
  // What is said besides makes an answer the nearer one: suspected, and not merely present.
  return (fitting.find(({ also }) => also !== undefined) ?? fitting[0])?.display;
}

function memberOf(statement: Statement, member: readonly string[]): unknown {
  let at: unknown = statement;
  for (const step of member) {
    if (Array.isArray(at)) {
      at = at.find((one: unknown) => isPlainObject(one) && one['modality'] === step);
    } else {
      at = isPlainObject(at) && Object.hasOwn(at, step) ? at[step] : undefined;
    }
  }
  return at;
}

function figureOf(statement: Statement, value: unknown): string | undefined {
  if (typeof value !== 'string' && typeof value !== 'number') return undefined;
  const comparator = 'comparator' in statement ? (statement.comparator ?? '') : '';
  return 'unit' in statement ? `${comparator}${value} ${statement.unit}` : String(value);
}
