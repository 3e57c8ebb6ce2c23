import type { FormItem } from '../../../src/forms/index.ts';
import { element } from './element.ts';
import type { Store } from './store.ts';

/** A control with what shows the answer that is held, and the element that an issue is tied to. */
export interface Control {
  readonly node: HTMLElement;
  readonly told: HTMLElement;
  readonly show: () => void;
}

/** Up to so many answers stand side by side; more are a list to open. */
const most = 6;

/** A choice of which nothing is chosen beforehand, and which can be taken back. */
export function choice(item: FormItem, store: Store): Control {
  if (item.repeats === true) return checkboxes(item, store);
  return (item.options ?? []).length > most ? list(item, store) : radios(item, store);
}

function radios({ linkId, text, options = [] }: FormItem, store: Store): Control {
  const inputs = options.map(({ code }, at) => {
    const id = `${linkId}=${at}`;
    const input = element('input', { type: 'radio', name: linkId, value: code, id });
    input.addEventListener('change', () => store.answer(linkId, [code]));
    return input;
  });
  const clear = element(
    'button',
    { type: 'button', class: 'clear', 'aria-label': `Take back: ${text}` },
    'Take back',
  );
  const takeBack = (): void => {
    store.answer(linkId, []);
    inputs[0]?.focus();
    show();
  };
  clear.addEventListener('click', takeBack);
  const node = element(
    'fieldset',
    { id: linkId, role: 'radiogroup' },
    element('legend', {}, text),
    element('div', { class: 'options' }, ...labels(inputs, options), clear),
  );
  node.addEventListener('keydown', (event) => {
    if (event.key !== 'Delete' && event.key !== 'Backspace') return;
    event.preventDefault();
    takeBack();
  });
  node.addEventListener('change', () => show());
  const show = (): void => {
    const [held] = store.answers(linkId);
    for (const input of inputs) input.checked = input.value === held;
    clear.hidden = held === undefined;
  };
  return { node, told: node, show };
}

function checkboxes({ linkId, text, options = [] }: FormItem, store: Store): Control {
  const inputs = options.map(({ code }, at) =>
    element('input', { type: 'checkbox', value: code, id: `${linkId}=${at}` }),
  );
  const node = element(
    'fieldset',
    { id: linkId },
    element('legend', {}, text),
    element('div', { class: 'options' }, ...labels(inputs, options)),
  );
  node.addEventListener('change', () => {
    store.answer(
      linkId,
      inputs.filter(({ checked }) => checked).map(({ value }) => value),
    );
  });
  const show = (): void => {
    const held = store.answers(linkId);
    for (const input of inputs) input.checked = held.includes(input.value);
  };
  return { node, told: node, show };
}

function labels(
  inputs: readonly HTMLInputElement[],
  options: NonNullable<FormItem['options']>,
): readonly HTMLElement[] {
  return inputs.map((input, at) =>
    element('label', { class: 'option' }, input, element('span', {}, options[at]?.display ?? '')),
  );
}

function list({ linkId, text, options = [] }: FormItem, store: Store): Control {
  const select = element(
    'select',
    { id: linkId },
    new Option('Nothing said', ''),
    ...options.map(({ code, display }) => new Option(display, code)),
  );
  select.addEventListener('change', () => {
    store.answer(linkId, select.value === '' ? [] : [select.value]);
  });
  const show = (): void => {
    select.value = store.answers(linkId)[0] ?? '';
  };
  return { node: element('label', { class: 'line' }, text, select), told: select, show };
}
