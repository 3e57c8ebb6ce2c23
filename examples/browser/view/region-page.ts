import type { FormItem } from '../../../src/forms/index.ts';
import { answerText, setAside } from '../exam/asked.ts';
import { lastTimeTexts } from '../exam/prior.ts';
import { withAnswer } from '../exam/saved.ts';
import { button, element } from './element.ts';
import { type Field, field } from './field.ts';
import type { Store } from './store.ts';

/** One page of the form: a region with both its sides, or the conclusion. */
export interface PageView {
  readonly node: HTMLElement;
  /** Brings it up to date in place, so that focus and what is being typed stay. */
  readonly refresh: () => void;
}

export function regionPage(linkId: string, store: Store): PageView {
  const node = element('div', { class: 'questions' });
  const lost = element('div', { class: 'aside-answers' });
  let fields: Field[] = [];
  let groups: { readonly linkId: string; readonly node: HTMLElement }[] = [];
  let shape = '';

  const build = (page: FormItem): void => {
    const lastTime = store.reading.before ? lastTimeTexts(store.saved) : new Map<string, string>();
    fields = [];
    groups = [];
    const make = (item: FormItem): HTMLElement => {
      if (item.type !== 'group') {
        const made = field(item, store, lastTime.get(item.linkId));
        fields.push(made);
        return made.node;
      }
      const last = lastLine(lastTime.get(item.linkId));
      const made = groupOf(item, store, [...last, ...(item.items ?? []).map(make)]);
      groups.push({ linkId: item.linkId, node: made });
      return made;
    };
    node.replaceChildren(...(page.items ?? []).map(make), lost);
  };

  const refresh = (): void => {
    const { reading, saved } = store;
    const page = reading.pages.find((one) => one.linkId === linkId);
    if (page === undefined) return;
    const now = shapeOf(page);
    if (now !== shape) {
      const focused = document.activeElement?.id ?? '';
      build(page);
      shape = now;
      if (focused !== '') document.getElementById(focused)?.focus();
    }
    const here = reading.all.filter((one) => one.page.linkId === linkId);
    const asked = new Set(here.flatMap(({ item, isAsked }) => (isAsked ? [item.linkId] : [])));
    for (const one of [...fields, ...groups]) one.node.hidden = !asked.has(one.linkId);
    for (const one of fields) one.refresh();
    const left = setAside(here, saved.answers);
    lost.hidden = left.length === 0;
    if (left.length === 0) return;
    lost.replaceChildren(
      element('p', {}, 'Answered before, not asked now, and not in the exam:'),
      element(
        'ul',
        {},
        ...left.map(({ item }) =>
          element(
            'li',
            {},
            `${item.text}: ${answerText(item, saved.answers[item.linkId] ?? [])} `,
            button('Take back', () => store.answer(item.linkId, []), {
              'aria-label': `Take back: ${item.text}`,
            }),
          ),
        ),
      ),
    );
  };
  refresh();
  return { node, refresh };
}

function groupOf(item: FormItem, store: Store, inside: readonly HTMLElement[]): HTMLElement {
  const { linkId, text, repeats } = item;
  const isSide = linkId.startsWith('region/');
  return element(
    'section',
    { class: isSide ? 'side' : 'group', 'aria-label': text, id: linkId },
    element(isSide ? 'h3' : 'h4', {}, isSide ? sideText(text) : text),
    ...inside,
    ...(repeats === true ? [adder(item, store)] : []),
    ...(linkId.includes('#') ? [remover(item, store)] : []),
  );
}

/** The page has the name of the region, so that the side stands out by itself. */
function sideText(text: string): string {
  const side = text.split(', ').at(-1) ?? text;
  return `${side.slice(0, 1).toUpperCase()}${side.slice(1)} side of the patient`;
}

function lastLine(text: string | undefined): readonly HTMLElement[] {
  if (text === undefined) return [];
  const mark = element('strong', {}, 'Last time, not today: ');
  return [element('p', { class: 'last' }, mark, text)];
}

function shapeOf(item: FormItem): string {
  return `${item.linkId}(${(item.items ?? []).map(shapeOf).join()})`;
}

/** Adds an empty filling, of which nothing is said until it is chosen. */
function adder({ linkId, text }: FormItem, store: Store): HTMLElement {
  return button(`Add: ${text}`, () => {
    const numbers = store.saved.rounds[linkId] ?? [];
    const next = Math.max(0, ...numbers) + 1;
    store.change((before) => ({
      ...before,
      rounds: { ...before.rounds, [linkId]: [...numbers, next] },
    }));
    // Focus goes into what was added once it is there.
    setTimeout(() => {
      const added = document.getElementById(`${linkId}#${next}`);
      added?.querySelector<HTMLElement>('select, input')?.focus();
    }, 200);
  });
}

function remover({ linkId, text }: FormItem, store: Store): HTMLElement {
  const [group = '', number] = linkId.split('#');
  return button(
    'Remove this one',
    () => {
      store.change((before) => {
        const numbers = (before.rounds[group] ?? []).filter((one) => String(one) !== number);
        const gone = Object.keys(before.answers).filter(
          (one) =>
            /^[:#]/.test(one.slice(group.length)) &&
            one.startsWith(group) &&
            /#(\d+)/.exec(one)?.[1] === number,
        );
        const cleared = gone.reduce((saved, one) => withAnswer(saved, one, []), before);
        return { ...cleared, rounds: { ...before.rounds, [group]: numbers } };
      });
    },
    { 'aria-label': `Remove: ${text}` },
  );
}
