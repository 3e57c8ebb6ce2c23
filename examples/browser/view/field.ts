import type { FormItem } from '../../../src/forms/index.ts';
import { type Control, choice } from './choice.ts';
import { element, say, setAll } from './element.ts';
import type { Store } from './store.ts';

/** A question on the page, and what brings it up to date. */
export interface Field {
  readonly linkId: string;
  readonly node: HTMLElement;
  readonly refresh: () => void;
}

/**
 * A question with its limits, what was said last time, and what is wrong with the answer, all of which
 * a screen reader tells with the control.
 */
export function field(item: FormItem, store: Store, lastTime: string | undefined): Field {
  const { linkId } = item;
  const control = item.type === 'choice' ? choice(item, store) : entry(item, store);
  const hint = limitsText(item);
  const limits = element('p', { class: 'hint', id: `${linkId}~limits` }, hint);
  const last = element('p', { class: 'last', id: `${linkId}~last` });
  if (lastTime !== undefined) {
    last.append(element('strong', {}, 'Last time, not today: '), lastTime);
  }
  const issues = element('p', { class: 'issue', id: `${linkId}~issue` });
  limits.hidden = hint === '';
  last.hidden = lastTime === undefined;
  const node = element('div', { class: 'field' }, control.node, limits, last, issues);
  const refresh = (): void => {
    control.show();
    const remarks = store.reading.remarks.get(linkId) ?? [];
    const isWrong = remarks.some(({ severity }) => severity === 'error');
    const words = remarks.map(({ severity, text }) =>
      severity === 'error' ? `To mend: ${text}` : text,
    );
    say(issues, words.join(' '));
    issues.hidden = remarks.length === 0;
    issues.classList.toggle('error', isWrong);
    const told = [limits, last, issues].filter(({ hidden }) => !hidden).map(({ id }) => id);
    const canBeInvalid = control.told.matches('input, select, textarea, [role=radiogroup]');
    setAll(control.told, {
      'aria-describedby': told.length > 0 && told.join(' '),
      'aria-invalid': isWrong && canBeInvalid && 'true',
    });
  };
  return { linkId, node, refresh };
}

function entry({ linkId, text, type }: FormItem, store: Store): Control {
  const isLong = type === 'text';
  const isFigure = type === 'decimal' || type === 'integer';
  const input = isLong
    ? element('textarea', { id: linkId, rows: '2' })
    : element('input', {
        id: linkId,
        type: 'text',
        autocomplete: 'off',
        inputmode: type === 'integer' ? 'numeric' : isFigure && 'decimal',
        class: isFigure && 'figure',
      });
  input.addEventListener('input', () => {
    store.answer(linkId, input.value === '' ? [] : [input.value]);
  });
  const show = (): void => {
    const held = store.answers(linkId)[0] ?? '';
    // What is being typed is left alone.
    if (input !== document.activeElement && input.value !== held) input.value = held;
  };
  return { node: element('label', { class: 'line' }, text, input), told: input, show };
}

function limitsText({ unit, minimum, maximum, usual }: FormItem): string {
  if (unit === undefined || minimum === undefined || maximum === undefined) return '';
  const inUnit = unit === '1' || unit.startsWith('{') ? '' : ` ${unit}`;
  const mostly =
    usual === undefined ? '' : `; usual: ${usual.minimum} to ${usual.maximum}${inUnit}`;
  return `Possible: ${minimum} to ${maximum}${inUnit}${mostly}.`;
}
