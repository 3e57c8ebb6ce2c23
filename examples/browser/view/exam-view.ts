import type { Exam } from '../../../src/index.ts';
import { whyNotShown } from '../exam/prior.ts';
import { openBatch } from './batch-dialog.ts';
import { button, element, focusField, placeHref, say } from './element.ts';
import { openList } from './open-list.ts';
import { type PageView, regionPage } from './region-page.ts';
import { promptsPart, review } from './review.ts';
import type { Store } from './store.ts';

export interface ExamView {
  readonly node: HTMLElement;
  readonly refresh: () => void;
  /** Opens a page, and brings focus to a question on it or to its heading. */
  readonly open: (page: string, field?: string) => void;
}

/** The examination: what is open beside, one region at a time, prompts below. */
export function examView(store: Store, done: (exam: Exam) => void): ExamView {
  const heading = element('h2', { tabindex: '-1', id: 'page' });
  const body = element('div', {});
  const notice = element('div', { class: 'notice', role: 'status' });
  const list = openList(store);
  const prompts = promptsPart(store);
  let parts: readonly PageView[] = [];

  const pages = (): readonly string[] => store.reading.pages.map(({ linkId }) => linkId);
  const step = (by: number): void => {
    const all = pages();
    const next = all[all.indexOf(store.saved.page) + by];
    if (next !== undefined) location.hash = placeHref(next);
  };
  const before = button('Region before', () => step(-1), { 'aria-keyshortcuts': 'Alt+PageUp' });
  const next = button('Next region', () => step(1), {
    'aria-keyshortcuts': 'Alt+PageDown',
    class: 'main',
    id: 'next',
  });
  const batch = button(
    'Several places at once',
    () => openBatch(store, (text, undo) => tell(text, undo)),
    { id: 'batch' },
  );
  addEventListener('keydown', ({ altKey, key }) => {
    if (!altKey || document.querySelector('dialog[open]') !== null || !node.isConnected) return;
    if (key === 'PageDown') step(1);
    if (key === 'PageUp') step(-1);
  });
  const tell = (text: string, undo: () => void): void => {
    const back = button('Take these back', () => {
      undo();
      notice.replaceChildren('Taken back.');
    });
    notice.replaceChildren(text, ' ', back);
    back.focus();
  };

  const open: ExamView['open'] = (page, field) => {
    const found = store.reading.pages.find(({ linkId }) => linkId === page);
    const shown = found ?? store.reading.pages[0];
    if (shown === undefined) return;
    const isNew = store.saved.page !== shown.linkId || parts.length === 0;
    if (isNew) {
      store.change((saved) => ({ ...saved, page: shown.linkId }));
      say(heading, shown.text);
      const isEnd = shown.linkId === 'conclusion';
      parts = [regionPage(shown.linkId, store), ...(isEnd ? [review(store, done)] : [])];
      body.replaceChildren(...parts.map((part) => part.node));
      notice.replaceChildren();
      before.disabled = pages()[0] === shown.linkId;
      next.hidden = isEnd;
      list.refresh();
    }
    if (field !== undefined && focusField(field)) return;
    heading.focus();
    scrollTo(0, 0);
  };
  const node = element(
    'div',
    { class: 'exam' },
    element('nav', { 'aria-label': 'Still open' }, list.node),
    element(
      'div',
      { class: 'page' },
      heading,
      element(
        'p',
        { class: 'hint keys' },
        'Alt and Page Down or Page Up lead to the next region or the one before.',
      ),
      notice,
      element('p', { class: 'issue' }, whyNoPrior(store)),
      body,
      element('div', { class: 'actions' }, next, before, batch),
      prompts.node,
    ),
  );
  const refresh = (): void => {
    for (const part of [...parts, list, prompts]) part.refresh();
  };
  return { node, refresh, open };
}

/** An exam before that cannot be compared with is not shown, and that is told. */
function whyNoPrior({ saved: { before }, reading }: Store): string {
  if (before === undefined || reading.before !== undefined) return '';
  const why = whyNotShown(reading.draft.exam, before);
  return `The exam before is not shown: ${why.join('; ')}.`;
}
