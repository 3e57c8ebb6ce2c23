import { escapeXhtml } from '../fhir/xhtml.ts';

/** Markup that was made here and needs no escaping. Only {@link element} and {@link joined} make it. */
export interface Html {
  readonly markup: string;
}

/** Text of the exam, or markup, or several one after the other. Text is escaped, always. */
export type Content = Html | string | false | undefined | readonly Content[];

export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** Elements of HTML that have no end tag. @see https://html.spec.whatwg.org/#void-elements */
const voidElements: ReadonlySet<string> = new Set(['br', 'meta', 'hr', 'col', 'input']);

/** An element. Tag and attribute names are ours; attribute values and text may come from the exam. */
export function element(tag: string, attributes: Attributes = {}, ...content: Content[]): Html {
  let open = `<${tag}`;
  for (const [name, value] of Object.entries(attributes)) {
    if (value !== undefined) open += ` ${name}="${escapeXhtml(String(value))}"`;
  }
  if (voidElements.has(tag)) return { markup: `${open}>` };
  return { markup: `${open}>${markupOf(content)}</${tag}>` };
}

/** Contents one after the other. */
export function joined(...content: Content[]): Html {
  return { markup: markupOf(content) };
}

function markupOf(content: Content): string {
  if (content === undefined || content === false) return '';
  if (typeof content === 'string') return escapeXhtml(content);
  if ('markup' in content) return content.markup;
  let markup = '';
  for (const part of content) markup += markupOf(part);
  return markup;
}

const entities: Readonly<Record<string, string>> = {
  '&lt;': '<',
  '&gt;': '>',
  '&quot;': '"',
  '&amp;': '&',
};

/**
 * The text of content alone, a note in the quotation marks that the style of pages puts around it. Our
 * own markup has no `>` in an attribute, and no other entities.
 */
export function plainText(content: Content): string {
  return markupOf(content)
    .replaceAll(/<div class="note">(.*?)<\/div>/gs, ' \u201c$1\u201d')
    .replaceAll(/<\/div>|<div[^>]*>/g, ' ')
    .replaceAll(/<[^>]*>/g, '')
    .replaceAll(/&(?:lt|gt|quot|amp);/g, (entity) => entities[entity] ?? entity)
    .replaceAll(/ {2,}/g, ' ')
    .trim();
}

/**
 * Words of the exam, kept apart from the direction of the text around them, so that a right-to-left
 * name or a stray direction mark cannot turn what follows.
 * @see https://www.w3.org/International/questions/qa-bidi-unicode-controls
 */
export function words(text: string): Html {
  return element('bdi', {}, text);
}

/** A list without what is not there; nothing where that leaves none. */
export function list(all: readonly Content[]): Html | undefined {
  const items = all.filter((item) => item !== undefined && item !== false);
  if (items.length === 0) return undefined;
  return element(
    'ul',
    {},
    items.map((item) => element('li', {}, item)),
  );
}

export interface Table {
  readonly caption: string;
  readonly head: readonly string[];
  /** The first cell of a row names it. */
  readonly rows: readonly (readonly Content[])[];
}

/** A table with caption and header cells, which a screen reader can name; nothing without rows. */
export function table({ caption, head, rows }: Table): Html | undefined {
  if (rows.length === 0) return undefined;
  const headCells = head.map((cell) => element('th', { scope: 'col' }, cell));
  const body = rows.map(([first, ...cells]) =>
    element(
      'tr',
      {},
      element('th', { scope: 'row' }, first),
      cells.map((cell) => element('td', {}, cell)),
    ),
  );
  return element(
    'div',
    // Scrolls by itself on a narrow screen, and by keyboard.
    { class: 'scroll', tabindex: 0, role: 'group', 'aria-label': caption },
    element(
      'table',
      {},
      element('caption', {}, caption),
      element('thead', {}, element('tr', {}, headCells)),
      element('tbody', {}, body),
    ),
  );
}

/** A section with its heading; nothing when it has no content. */
export function section(id: string, heading: string, ...content: Content[]): Html | undefined {
  const inside = content.filter((part) => part !== undefined && part !== false);
  if (inside.length === 0) return undefined;
  return element('section', { 'aria-labelledby': id }, element('h2', { id }, heading), inside);
}

/**
 * Head of a page that is complete in itself: nothing is loaded and no script runs.
 *
 * @param title In the language of the page.
 * @param style CSS of our own; what it holds of words is written so that HTML reads nothing in it.
 * @returns The `head` element.
 */
export function pageHead(title: string, style: string): Html {
  return element(
    'head',
    {},
    element('meta', { charset: 'utf-8' }),
    element('meta', {
      'http-equiv': 'Content-Security-Policy',
      content: "default-src 'none'; style-src 'unsafe-inline'",
    }),
    element('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
    element('title', {}, title),
    { markup: `<style>${style}</style>` },
  );
}
