/** Text or elements already written; undefined is not content. */
export type Content = string | readonly string[] | undefined;

export interface Attributes {
  readonly [name: string]: string | undefined;
}

/** An XML element; nothing at all where it has neither attributes nor content. */
export function element(name: string, attributes: Attributes, content?: Content): string {
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value = '']) => ` ${key}="${escaped(value)}"`)
    .join('');
  const inner = typeof content === 'object' ? content.join('') : escaped(content ?? '');
  if (written === '' && inner === '') return '';
  return inner === '' ? `<${name}${written}/>` : `<${name}${written}>${inner}</${name}>`;
}

const characters: ReadonlyMap<string, string> = new Map([
  ['&', '&amp;'],
  ['<', '&lt;'],
  ['>', '&gt;'],
  ['"', '&quot;'],
  // XML readers turn these into spaces or line feeds when they are not written as references.
  ['\r', '&#13;'],
  ['\n', '&#10;'],
  ['\t', '&#9;'],
]);

function escaped(text: string): string {
  return text.replace(/[&<>"\r\n\t]/g, (mark) => characters.get(mark) ?? mark);
}
