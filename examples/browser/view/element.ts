type Attributes = Readonly<Record<string, string | boolean | undefined>>;

/** An element with its attributes and what stands in it. Text is set as text and never as markup. */
export function element<Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  attributes: Attributes = {},
  ...inside: readonly (Node | string)[]
): HTMLElementTagNameMap[Tag] {
  const made = document.createElement(tag);
  setAll(made, attributes);
  made.append(...inside);
  return made;
}

/** Sets attributes; `true` sets one without value, `false` and nothing take it away. */
export function setAll(on: Element, attributes: Attributes): void {
  for (const [name, value] of Object.entries(attributes)) {
    if (value === undefined || value === false) on.removeAttribute(name);
    else if (on.getAttribute(name) !== (value === true ? '' : value)) {
      on.setAttribute(name, value === true ? '' : value);
    }
  }
}

export function button(text: string, pressed: () => void, attributes: Attributes = {}) {
  const made = element('button', { type: 'button', ...attributes }, text);
  made.addEventListener('click', pressed);
  return made;
}

/** A text input with its label. */
export function labelled(
  text: string,
  attributes: Attributes,
): { readonly node: HTMLElement; readonly input: HTMLInputElement } {
  const input = element('input', { autocomplete: 'off', ...attributes });
  return { node: element('label', { class: 'line' }, text, input), input };
}

/** Sets text only where it differs, so that a screen reader is not told the same again. */
export function say(on: Element, text: string): void {
  if (on.textContent !== text) on.textContent = text;
}

/** A file that the browser saves; it never leaves the machine. */
export function download(name: string, type: string, text: string): void {
  const url = URL.createObjectURL(new Blob([text], { type }));
  element('a', { href: url, download: name }).click();
  URL.revokeObjectURL(url);
}

/** Address of a page of the form, and of a question on it. */
export function placeHref(page: string, field?: string): string {
  const parts = field === undefined ? [page] : [page, field];
  return `#${parts.map(encodeURIComponent).join('&')}`;
}

export function placeOf(hash: string): { readonly page: string; readonly field?: string } {
  const [page = '', field] = hash.slice(1).split('&').map(decoded);
  return field === undefined ? { page } : { page, field };
}

/** An address typed by hand can be no encoding at all. */
function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return '';
  }
}

/** Brings focus to a question, or to the first control in it. */
export function focusField(field: string): boolean {
  const found = document.getElementById(field);
  const control = found?.matches('input, select, textarea, button')
    ? found
    : found?.querySelector<HTMLElement>('input, select, textarea, button');
  if (!(control instanceof HTMLElement)) return false;
  control.focus();
  control.scrollIntoView({ block: 'center' });
  return true;
}
