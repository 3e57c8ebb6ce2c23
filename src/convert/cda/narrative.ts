import { isElement, type XmlElement, type XmlNode } from '../../xml/tree.ts';
import { isTextNode } from './names.ts';

/** Elements of the narrative block that begin a line of their own. */
const blocks: ReadonlySet<string> = new Set([
  'paragraph',
  'list',
  'item',
  'caption',
  'table',
  'thead',
  'tbody',
  'tfoot',
  'tr',
  'br',
]);

/**
 * The narrative block as plain text: a line for each paragraph, item and row, cells parted by ` | `.
 * White space counts as in HTML. Deleted text (`revised="delete"`) is marked, so that it is not read
 * as part of what holds.
 * @see CDA R2, section text (StrucDoc.Text)
 */
export function narrativeText(element: XmlElement): string {
  return linesOf(element.content)
    .split('\n')
    .map((line) => line.replace(/[ \t]+/g, ' ').trim())
    .filter((line) => line !== '')
    .join('\n');
}

function linesOf(nodes: readonly XmlNode[]): string {
  return nodes.map(nodeText).join('');
}

function nodeText(node: XmlNode): string {
  if (isTextNode(node)) return node.text.replace(/\s+/g, ' ');
  if (!isElement(node)) return '';
  const inner = linesOf(node.content);
  const text = node.attributes.get('revised') === 'delete' ? `[deleted: ${inner.trim()}]` : inner;
  if (node.name === 'td' || node.name === 'th') return ` ${text.trim()} |`;
  if (node.name === 'tr') return `\n${text.replace(/ \|\s*$/, '')}\n`;
  return blocks.has(node.name) ? `\n${text}\n` : text;
}

/** Finds the narrative of an element by its ID: what an entry's `text/reference` points to. */
export function narrativeIndex(element: XmlElement): (id: string) => string | undefined {
  const elements = new Map<string, XmlElement>();
  const visit = (part: XmlElement): void => {
    const id = part.attributes.get('ID');
    if (id !== undefined && !elements.has(id)) elements.set(id, part);
    for (const child of part.children) visit(child);
  };
  visit(element);
  const texts = new Map<string, string>();
  return (id) => {
    const found = elements.get(id);
    if (found === undefined) return undefined;
    const text = texts.get(id) ?? narrativeText(found);
    texts.set(id, text);
    return text;
  };
}
