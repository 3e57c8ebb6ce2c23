import { errorsOf } from '../exam/finish.ts';
import type { OpenPlace } from '../exam/open-places.ts';
import { element, placeHref, say, setAll } from './element.ts';
import type { Store } from './store.ts';

/** One page in the list, with its link, which stays the same element so that a click is not lost. */
interface Line {
  readonly linkId: string;
  readonly text: string;
  readonly node: HTMLElement;
  readonly link: HTMLElement;
}

/** What is outstanding, always in view, each line leading to its place. */
export function openList(store: Store): {
  readonly node: HTMLElement;
  readonly refresh: () => void;
} {
  const summary = element('summary', {});
  const lines = store.reading.pages.map(({ linkId, text }): Line => {
    const link = element('a', { href: placeHref(linkId) });
    return { linkId, text, node: element('li', {}, link), link };
  });
  const list = element('ol', { class: 'pages' }, ...lines.map(({ node }) => node));
  const node = element('details', { class: 'open-list' }, summary, list);
  const isBeside = matchMedia('(min-width: 60rem)');
  node.open = isBeside.matches;
  // On a phone the list lies over the page that it leads to.
  list.addEventListener('click', ({ target }) => {
    if (target instanceof HTMLAnchorElement && !isBeside.matches) node.open = false;
  });
  let shown = '';
  const refresh = (): void => {
    const { reading, saved } = store;
    const errors = errorsOf(reading);
    const mend = errors.length === 0 ? '' : `, to mend: ${errors.length}`;
    say(summary, `Still open: ${reading.open.length} of ${reading.total}${mend}`);
    for (const line of lines) {
      const open = reading.open.filter(({ page }) => page === line.linkId);
      const wrong = errors.filter(({ page }) => page === line.linkId).length;
      const isCurrent = saved.page === line.linkId;
      showLine(line, { open: open.length, wrong, isCurrent });
      const now = `${saved.page}|${open.map(({ field }) => field).join()}`;
      if (!isCurrent || now === shown) continue;
      shown = now;
      for (const one of lines) one.node.querySelector('ul')?.remove();
      if (open.length > 0) line.node.append(placesOf(open));
      list.scrollTop = line.node.offsetTop - list.offsetTop;
    }
  };
  refresh();
  return { node, refresh };
}

function showLine(
  { link, text }: Line,
  { open, wrong, isCurrent }: { open: number; wrong: number; isCurrent: boolean },
): void {
  const counts = [
    ...(open > 0 ? [`${open} open`] : []),
    ...(wrong > 0 ? [`${wrong} to mend`] : []),
  ].join(', ');
  say(link, counts === '' ? text : `${text}: ${counts}`);
  setAll(link, {
    'aria-current': isCurrent && 'page',
    class: wrong > 0 ? 'wrong' : open > 0 ? 'some' : 'done',
  });
}

function placesOf(open: readonly OpenPlace[]): HTMLElement {
  const lines = open.map(({ page, field, text }) =>
    element('li', {}, element('a', { href: placeHref(page, field) }, text)),
  );
  return element('ul', {}, ...lines);
}
