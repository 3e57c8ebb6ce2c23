/** The capture page: one examination from the choice of a protocol to a signed, validated bundle. */
import { deleteDraft, hearOtherWindows, readDraft } from './exam/kept-draft.ts';
import type { Saved } from './exam/saved.ts';
import { button, element, placeHref, placeOf, say } from './view/element.ts';
import { examView } from './view/exam-view.ts';
import { signedPage } from './view/signed-page.ts';
import { startPage } from './view/start-page.ts';
import { openStore, type Store } from './view/store.ts';

/** The element with that id; the page is ours, so a missing one is a mistake of this file. */
function byId(id: string): HTMLElement {
  const found = document.getElementById(id);
  if (found === null) throw new TypeError(`no such element: ${id}`);
  return found;
}

const main = byId('main');
const who = byId('who');
const kept = byId('kept');
const remove = byId('delete');
let show: (() => void) | undefined;

function start(): void {
  show = undefined;
  say(who, '');
  say(kept, 'No draft is kept in this browser.');
  remove.hidden = true;
  main.replaceChildren(startPage(capture));
}

function capture(saved: Saved): void {
  const { head } = saved;
  const store = openStore(saved, () => {
    // Once it is signed, another page is shown.
    if (!view.node.isConnected) return;
    view.refresh();
    tellKept(store);
  });
  const view = examView(store, (signed) => {
    store.change((before) => ({ ...before, signed }));
    sign({ ...store.saved, signed }, store.kept.state === 'kept');
  });
  say(who, `${head.person}${head.born === '' ? '' : `, born ${head.born}`}`);
  say(remove, 'Delete the draft');
  remove.hidden = false;
  main.replaceChildren(view.node);
  tellKept(store);
  hearOtherWindows(() => {
    store.stop();
    tellKept(store);
  });
  show = () => {
    const { page, field } = placeOf(location.hash);
    view.open(page === '' ? store.saved.page : page, field);
  };
  show();
}

function tellKept({ kept: state, keptAt }: Store): void {
  const at = `${keptAt.getHours()}:${String(keptAt.getMinutes()).padStart(2, '0')}`;
  say(
    kept,
    state.state === 'failed'
      ? `The draft is NOT kept: ${state.why}.`
      : `Draft kept in this browser, unencrypted, at ${at}.`,
  );
  kept.classList.toggle('error', state.state === 'failed');
}

function sign({ signed, head }: Saved, isKept: boolean): void {
  if (signed === undefined) return;
  show = undefined;
  say(who, head.person);
  say(
    kept,
    isKept
      ? 'The signed exam is kept in this browser, unencrypted, until it is deleted.'
      : 'The signed exam is NOT kept in this browser: save it now.',
  );
  kept.classList.toggle('error', !isKept);
  say(remove, 'Delete it from this browser');
  remove.hidden = false;
  main.replaceChildren(signedPage(signed));
  main.querySelector('h2')?.focus();
}

/** Asked twice, since nothing else holds the draft. */
remove.addEventListener('click', () => {
  const dialog = element(
    'dialog',
    { 'aria-labelledby': 'delete-title' },
    element('h2', { id: 'delete-title' }, 'Delete what is kept?'),
    element('p', {}, 'It stands nowhere else unless you have saved it.'),
    element(
      'div',
      { class: 'actions' },
      button('Keep it', () => dialog.close()),
      button('Delete it', () => {
        dialog.close();
        deleteDraft();
        history.replaceState(null, '', location.pathname);
        start();
      }),
    ),
  );
  dialog.addEventListener('close', () => dialog.remove());
  document.body.append(dialog);
  dialog.showModal();
});

addEventListener('hashchange', () => show?.());
// The same address again is no change, and still leads there.
addEventListener('click', ({ target }) => {
  const link = target instanceof Element ? target.closest('a') : null;
  if (link?.getAttribute('href') === location.hash) show?.();
});

const draft = readDraft();
if (draft.state === 'kept') {
  if (draft.saved.signed !== undefined) sign(draft.saved, true);
  else {
    if (location.hash === '') {
      history.replaceState(null, '', draft.saved.page === '' ? '#' : placeHref(draft.saved.page));
    }
    capture(draft.saved);
  }
} else {
  start();
  if (draft.state === 'failed') {
    say(kept, `What is kept here cannot be read: ${draft.why}.`);
    remove.hidden = false;
  }
}

const offline = byId('offline');
if ('serviceWorker' in navigator) {
  navigator.serviceWorker
    .register('offline.js')
    .then(() => navigator.serviceWorker.ready)
    .then(() => say(offline, 'Works without network.'))
    .catch(() => say(offline, 'Needs the network to be opened again.'));
}
