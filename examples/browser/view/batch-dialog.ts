import { type BatchChoice, sentencesOf, statementsTold, withBatch } from '../exam/batch.ts';
import { button, element, say } from './element.ts';
import type { Store } from './store.ts';

/**
 * Says one sentence of several places: chosen, then listed one by one, then confirmed. Each place
 * gets a statement of its own; where something was said before, that stays.
 */
export function openBatch(store: Store, done: (text: string, undo: () => void) => void): void {
  const sentences = sentencesOf(store.reading.all, store.saved.answers);
  const what = element(
    'select',
    { id: 'batch-what' },
    new Option('Choose what is to be said', ''),
    ...sentences.map(({ id, text }) => new Option(text, id)),
  );
  const more = element('div', {});
  const places = element('div', { class: 'places' });
  const told = element('ol', { id: 'batch-told' });
  const count = element('p', { role: 'status' });
  const confirm = element('button', { type: 'button', class: 'main', id: 'batch-confirm' });
  const dialog = element(
    'dialog',
    { 'aria-labelledby': 'batch-title' },
    element('h2', { id: 'batch-title' }, 'Say the same of several places'),
    element('label', { class: 'line' }, 'What', what),
    more,
    places,
    element('h3', {}, 'Will be said, each by itself'),
    told,
    element(
      'div',
      { class: 'actions pinned' },
      count,
      confirm,
      button('Say nothing', () => dialog.close()),
    ),
  );

  const chosen = (): BatchChoice | undefined => {
    const sentence = sentences.find(({ id }) => id === what.value);
    if (sentence === undefined) return undefined;
    const values = (of: HTMLElement): string[] =>
      [...of.querySelectorAll<HTMLInputElement | HTMLSelectElement>('input, select')]
        .filter((one) => one instanceof HTMLSelectElement || one.checked)
        .map(({ value }) => value)
        .filter((value) => value !== '');
    return { sentence, marked: new Set(values(places)), more: values(more) };
  };
  const lacks = ({ sentence, more: given }: BatchChoice): string => {
    if (given.length > 0 || sentence.needs === 'methods-if-known') return '';
    return sentence.needs === 'reason' ? 'A reason is needed.' : 'A method is needed.';
  };
  const refresh = (): void => {
    const choice = chosen();
    const lines = choice === undefined ? [] : statementsTold(choice);
    const lack = choice === undefined ? '' : lacks(choice);
    told.replaceChildren(...lines.map((line) => element('li', {}, line)));
    const left = choice?.sentence.places.filter(({ isLeft }) => isLeft).length ?? 0;
    const stays = left === 0 ? '' : ` Left as they are: ${left}.`;
    say(count, `Statements: ${lines.length}.${stays} ${lack}`.trim());
    say(
      confirm,
      lines.length === 0
        ? 'Mark a place first'
        : `Say it of ${lines.length} ${lines.length === 1 ? 'place' : 'places'}`,
    );
    confirm.disabled = lines.length === 0 || lack !== '';
  };
  what.addEventListener('change', () => {
    const choice = chosen();
    more.replaceChildren(...(choice === undefined ? [] : [moreOf(choice)]));
    places.replaceChildren(...(choice === undefined ? [] : placesOf(choice, refresh)));
    refresh();
  });
  more.addEventListener('change', refresh);
  places.addEventListener('change', refresh);
  confirm.addEventListener('click', () => {
    const choice = chosen();
    if (choice === undefined) return;
    const { answers } = store.saved;
    const lines = statementsTold(choice).length;
    store.change((before) => withBatch(before, choice));
    dialog.close();
    done(`${lines} statements were added: ${choice.sentence.text}.`, () =>
      store.change((before) => ({ ...before, answers })),
    );
  });
  dialog.addEventListener('close', () => dialog.remove());
  document.body.append(dialog);
  refresh();
  dialog.showModal();
}

function moreOf({ sentence }: BatchChoice): HTMLElement {
  const { needs, options } = sentence;
  if (needs === 'reason') {
    return element(
      'label',
      { class: 'line' },
      'Reason',
      element(
        'select',
        { id: 'batch-reason' },
        new Option('Choose a reason', ''),
        ...options.map(({ code, display }) => new Option(display, code)),
      ),
    );
  }
  return element(
    'fieldset',
    {},
    element('legend', {}, needs === 'methods' ? 'Examined by' : 'Looked for by, where it is known'),
    element(
      'div',
      { class: 'options' },
      ...options.map(({ code, display }) =>
        element(
          'label',
          { class: 'option' },
          element('input', { type: 'checkbox', value: code }),
          element('span', {}, display),
        ),
      ),
    ),
  );
}

/** Places by part of the body, none marked. */
function placesOf({ sentence }: BatchChoice, refresh: () => void): readonly HTMLElement[] {
  const sections = new Map<string, HTMLElement[]>();
  for (const { section, linkId, text, isLeft } of sentence.places) {
    const input = element('input', { type: 'checkbox', value: linkId, disabled: isLeft });
    const words = isLeft ? `${text} (answered or not asked: left as it is)` : text;
    const known = sections.get(section) ?? [];
    sections.set(section, known);
    known.push(element('label', { class: 'option' }, input, element('span', {}, words)));
  }
  return [...sections].map(([section, labels]) => {
    const made = element(
      'fieldset',
      {},
      element('legend', {}, section === '' ? 'Places' : section),
      element('div', { class: 'options' }, ...labels),
    );
    const mark = button(`Mark all ${labels.length} of: ${section}`, () => {
      for (const input of made.querySelectorAll('input')) input.checked = !input.disabled;
      refresh();
    });
    if (labels.length > 1) made.append(mark);
    return made;
  });
}
