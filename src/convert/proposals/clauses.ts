import type { Item } from './items.ts';

/** A clause: what stands between commas and "but". */
export interface Clause {
  readonly items: readonly Item[];
  /** It begins with "but", "without" or "and no", so that a denial before it does not reach it. */
  readonly apart: boolean;
}

/** The clauses of a sentence. */
export function clausesOf(items: readonly Item[]): readonly Clause[] {
  const clauses: Clause[] = [];
  let open: Item[] = [];
  let apart = false;
  const close = (next: boolean): void => {
    if (open.length > 0) clauses.push({ items: open, apart });
    open = [];
    apart = next;
  };
  items.forEach((item, at) => {
    const denies = items[at + 1]?.is === 'denial' || items[at + 1]?.is === 'without';
    if (item.is === 'comma') close(false);
    else if (item.is === 'but') close(true);
    else if (item.is === 'and' && denies && !hasDenial(open)) close(true);
    else {
      if (item.is === 'without' && open.some(isSign) && !hasDenial(open)) close(true);
      open.push(item);
    }
  });
  close(false);
  return clauses;
}

const denying: ReadonlySet<Item['is']> = new Set([
  'denial',
  'without',
  'denial-behind',
  'not',
  'nor',
]);

export function isDenying({ is }: Item): boolean {
  return denying.has(is);
}

export function hasDenial(items: readonly Item[]): boolean {
  return items.some(isDenying);
}

export function isSign(item: Item): item is Item & { readonly is: 'sign' } {
  return item.is === 'sign';
}
