import { type DefaultTreeAdapterTypes, parse } from 'parse5';

type Node = DefaultTreeAdapterTypes.ChildNode | DefaultTreeAdapterTypes.Document;
type Element = DefaultTreeAdapterTypes.Element;

/** A section of the page as its reader has it: the lines that tell statements, and its tables cell by cell. */
export interface ParsedSection {
  readonly lines: readonly string[];
  /** Keys of the statements told in it, in lines and in cells. */
  readonly of: readonly string[];
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** A place on the drawing: what it is called, which mark it bears, and on which side of the patient it stands. */
export interface ParsedMark {
  readonly title: string;
  readonly mark: string;
  readonly side: 'right' | 'left' | 'middle';
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
        lines: all(section, 'li')
          .filter((item) => attribute(item, 'data-of') !== '')
          .map((item) => textOf(item).trim()),
        of: everyElement(section)
          .flatMap((one) => attribute(one, 'data-of').split(' '))
          .filter((key) => key !== ''),
        head: rows[0] ?? [],
        rows: rows.slice(1),
      },
    ];
  });
  const drawing = all(document, 'svg').flatMap(marksIn);
  return { sections: new Map(sections), drawing };
}

/** Everything that is written on the page, in its order. */
export function pageText(html: string): string {
  return textOf(only(parse(html), 'body'));
}

/** Marks of a view: those of the sensation map bear no region. */
function marksIn(view: Element): ParsedMark[] {
  const [, , width = 0] = attribute(view, 'viewBox').split(' ').map(Number);
  const name = attribute(view, 'class');
  if (name.includes('sensation')) return [];
  const ofSide = / of-(right|left)$/.exec(name)?.[1] as 'right' | 'left' | undefined; // by the pattern
  return all(view, 'g')
    .filter((group) => children(group).some((child) => child.nodeName === 'title'))
    .map((group): ParsedMark => {
      const [ellipse] = all(group, 'ellipse');
      if (ellipse === undefined) throw new Error('a mark without an ellipse');
      const across = Number(attribute(ellipse, 'cx')) - width / 2;
      return {
        title: textOf(only(group, 'title')),
        mark: attribute(ellipse, 'class').replace('mark ', ''),
        // The right of the patient is on the left of a view from the front.
        side: ofSide ?? (across === 0 ? 'middle' : across < 0 ? 'right' : 'left'),
      };
    });
}

function everyElement(node: Node): Element[] {
  return children(node).flatMap((child) =>
    'tagName' in child ? [child, ...everyElement(child)] : everyElement(child),
  );
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
  // The number of a sign leads to the drawing and is not part of what is said.
  if ('tagName' in node && node.tagName === 'a' && attribute(node, 'class') === 'number') return '';
  const inside = children(node).map(textOf).join('');
  return node.nodeName === 'div' ? ` | ${inside}` : inside;
}
