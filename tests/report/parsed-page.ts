import { type DefaultTreeAdapterTypes, parse } from 'parse5';

type Node = DefaultTreeAdapterTypes.ChildNode | DefaultTreeAdapterTypes.Document;
type Element = DefaultTreeAdapterTypes.Element;

/** A section of the page as its reader has it: the lines of its lists, and its tables cell by cell. */
export interface ParsedSection {
  readonly lines: readonly string[];
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** A place on the drawing: what it is called, which mark it bears, and how far across it stands. */
export interface ParsedMark {
  readonly title: string;
  readonly mark: string;
  readonly symbol: string;
  readonly across: number;
}

export interface ParsedPage {
  readonly sections: ReadonlyMap<string, ParsedSection>;
  readonly drawing: readonly ParsedMark[];
}

/** The page as an HTML parser of the standard (parse5) has it. */
export function parsePage(html: string): ParsedPage {
  const document = parse(html);
  const sections = all(document, 'section').map((section): [string, ParsedSection] => {
    const table = all(section, 'table')[0];
    const rows = table === undefined ? [] : all(table, 'tr').map(cells);
    return [
      attribute(section, 'aria-labelledby'),
      {
        lines: all(section, 'li').map((item) => textOf(item).trim()),
        head: rows[0] ?? [],
        rows: rows.slice(1),
      },
    ];
  });
  const drawing = all(document, 'g').map((group): ParsedMark => {
    const ellipse = only(group, 'ellipse');
    return {
      title: textOf(only(group, 'title')),
      mark: attribute(ellipse, 'class').replace('mark ', ''),
      symbol: textOf(only(group, 'text')),
      across: Number(attribute(ellipse, 'cx')),
    };
  });
  return { sections: new Map(sections), drawing };
}

function cells(row: Element): string[] {
  return children(row)
    .filter((child): child is Element => 'tagName' in child)
    .map((cell) => textOf(cell).trim());
}

function children(node: Node): readonly Node[] {
  return 'childNodes' in node ? node.childNodes : [];
}

function all(node: Node, tag: string): Element[] {
  return children(node).flatMap((child) => {
    const inside = all(child, tag);
    return 'tagName' in child && child.tagName === tag ? [child, ...inside] : inside;
  });
}

function only(node: Node, tag: string): Element {
  const found = all(node, tag);
  if (found.length !== 1 || found[0] === undefined) throw new Error(`${found.length} of ${tag}`);
  return found[0];
}

function attribute(node: Element, name: string): string {
  return node.attrs.find((one) => one.name === name)?.value ?? '';
}

/** Text of an element; a block inside it, such as a note, stands behind a bar. */
function textOf(node: Node): string {
  if (node.nodeName === '#text' && 'value' in node) return node.value;
  const inside = children(node).map(textOf).join('');
  return node.nodeName === 'div' ? ` | ${inside}` : inside;
}
