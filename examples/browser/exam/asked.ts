import type { FormItem } from '../../../src/forms/index.ts';
import { type Answers, answered } from './saved.ts';

/** A question with the page that it stands on. */
export interface Placed {
  readonly item: FormItem;
  readonly page: FormItem;
  /** The answers before it leave it open; what is not asked says nothing in the exam. */
  readonly isAsked: boolean;
}

/** Every question of all pages, in their order. */
export function placed(pages: readonly FormItem[], answers: Answers): readonly Placed[] {
  const found: Placed[] = [];
  const walk = (page: FormItem, items: readonly FormItem[], isAbove: boolean): void => {
    for (const item of items) {
      const isAsked = isAbove && isEnabled(item, answers);
      found.push({ item, page, isAsked });
      walk(page, item.items ?? [], isAsked);
    }
  };
  for (const page of pages) walk(page, page.items ?? [], true);
  return found;
}

/**
 * A group of signs is asked too while nothing is said of the region yet: at the bedside a sign is
 * often seen before the whole has been judged.
 */
function isEnabled({ enabledBy, type }: FormItem, answers: Answers): boolean {
  if (enabledBy === undefined) return true;
  const given = answered(answers, enabledBy.item);
  if (given.length === 0) return type === 'group';
  return enabledBy.codes === undefined || given.some((code) => enabledBy.codes?.includes(code));
}

/** Answers to what is no longer asked: kept, shown, and not in the exam. */
export function setAside(all: readonly Placed[], answers: Answers): readonly Placed[] {
  return all.filter(({ item, isAsked }) => !isAsked && answered(answers, item.linkId).length > 0);
}

/** The answer to a question in words. */
export function answerText({ options, unit }: FormItem, values: readonly string[]): string {
  const words = values.map(
    (value) => options?.find(({ code }) => code === value)?.display ?? value,
  );
  return `${words.join(', ')}${unit === undefined || options !== undefined ? '' : ` ${unit}`}`;
}
