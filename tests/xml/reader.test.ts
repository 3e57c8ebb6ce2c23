import fc from 'fast-check';
import { XMLParser } from 'fast-xml-parser';
import { SaxesParser } from 'saxes';
import { describe, expect, it } from 'vitest';
import { resolveReferences } from '../../src/xml/characters.ts';
import { readXml } from '../../src/xml/reader.ts';
import type { XmlElement, XmlNode, XmlReadOptions } from '../../src/xml/tree.ts';
import { sampled } from '../sampled.ts';

function root(text: string, options?: XmlReadOptions): XmlElement {
  const read = readXml(text, options);
  if ('root' in read) return read.root;
  throw new Error(JSON.stringify(read.fault));
}

function fault(text: string, options?: XmlReadOptions): string | undefined {
  const read = readXml(text, options);
  return 'fault' in read ? read.fault.code : undefined;
}

describe('the tree of an XML text', () => {
  it('holds what stands in an element in its order, with places', () => {
    const text = '<a x="1&lt;2">t<b/>u<!-- c --><![CDATA[<d>]]><?p q?></a>';
    const { attributes, content, children, start, end, textAt } = root(text, { content: true });
    expect(attributes).toEqual(new Map([['x', '1<2']]));
    expect(content).toMatchObject([
      { text: 't' },
      { name: 'b', start: 15, end: 19 },
      { text: 'u' },
      { comment: ' c ' },
      { text: '<d>' },
      { instruction: 'p q' },
    ]);
    expect({ children: children.length, start, end, textAt }).toEqual({
      children: 1,
      start: 0,
      end: text.length,
      textAt: 14,
    });
  });

  it('may have names that objects have too', () => {
    const tree = root('<toString valueOf="1"><__proto__ constructor="x"/></toString>');
    expect(tree.children[0]).toMatchObject({ name: '__proto__' });
    expect(tree.children[0]?.attributes.get('constructor')).toBe('x');
    expect(Object.hasOwn(Object.prototype, 'constructor')).toBe(true);
  });

  // Namespaces in XML 1.0, section 6.2: an inner declaration hides an outer one, for itself and inside.
  it('tells namespaces by URI, those declared around the text as well', () => {
    const text = '<p:a xmlns:p="1" xmlns="0"><b/><p:b xmlns:p="2"><p:c/></p:b><p:d q:e=""/></p:a>';
    const around = new Map([['xmlns:q', '9']]);
    const tree = root(text, { around });
    const all = [tree, ...tree.children, ...(tree.children[1]?.children ?? [])];
    expect(all.map(({ name, namespace }) => [name, namespace])).toEqual([
      ['a', '1'],
      ['b', '0'],
      ['b', '2'],
      ['d', '1'],
      ['c', '2'],
    ]);
    expect(tree.children[2]?.attributeNamespaces).toEqual(new Map([['q:e', '9']]));
  });

  it('of a text that was cut out may name prefixes and entities from outside', () => {
    const text = '<a b="x & y">&nbsp;<u:c/></a>';
    expect(fault(text)).toBe('not-well-formed');
    expect(readXml(text, { lenient: true })).toMatchObject({ unknownReferences: 2 });
  });
});

describe('references', () => {
  // XML 1.0, 4.1 and 4.6; the last code point of Unicode is 10FFFF.
  it.each([
    ['&amp;&lt;&gt;&quot;&apos;', '&<>"\'', 0],
    ['&#65;&#x42;', 'AB', 0],
    ['&#x10FFFF;', '\u{10ffff}', 0],
    ['&#x110000;', '&#x110000;', 1],
    ['&#xD800;', '&#xD800;', 1],
    ['&#xFFFE;', '&#xFFFE;', 1],
    ['&#11;', '&#11;', 1],
    ['&nbsp;', '&nbsp;', 1],
    ['a & b', 'a & b', 1],
    ['&amp', '&amp', 1],
    ['&toString;', '&toString;', 1],
  ])('%j is %j', (raw, text, unknown) => {
    expect(resolveReferences(raw)).toEqual({ text, unknown });
  });
});

describe('an XML text is refused', () => {
  it.each([
    ['', 'not-well-formed'],
    ['text', 'not-well-formed'],
    ['<a/><b/>', 'not-well-formed'],
    ['<a></b>', 'not-well-formed'],
    ['<a b="1"c="2"/>', 'not-well-formed'],
    ['<a b="1" b="2"/>', 'not-well-formed'],
    ['<a><!-- -- --></a>', 'not-well-formed'],
    ['<a><!--></a>', 'not-well-formed'],
    ['<a><![CDATA[</a>', 'not-well-formed'],
    ['<a>\u0000</a>', 'invalid-unicode'],
    ['<a>\ud800</a>', 'invalid-unicode'],
    ['<!DOCTYPE a><a/>', 'forbidden-doctype'],
    ['<a><!DOCTYPE a></a>', 'forbidden-doctype'],
    ['<a><!ENTITY b "c"></a>', 'forbidden-doctype'],
    ['<p:a/>', 'not-well-formed'],
  ])('as %j', (text, code) => {
    expect(fault(text)).toBe(code);
  });
});

/** What others see of the same text: names with their namespaces, places, texts. */
function bySaxes(text: string): string[] | undefined {
  const parser = new SaxesParser({ xmlns: true, position: true });
  const seen: string[] = [];
  let broken = false;
  let words = '';
  const flush = (): void => {
    if (words !== '') seen.push(JSON.stringify(words));
    words = '';
  };
  parser.on('error', () => {
    broken = true;
  });
  parser.on('doctype', () => {
    broken = true;
  });
  parser.on('text', (found) => {
    words += found;
  });
  parser.on('cdata', (found) => {
    words += found;
  });
  parser.on('opentag', ({ local, uri, attributes }) => {
    flush();
    const given = Object.values(attributes).map(({ name, value }) => `${name}=${value}`);
    seen.push(`<${uri} ${local} ${given.join(' ')}`);
  });
  parser.on('closetag', ({ local }) => {
    flush();
    seen.push(`/${local} ${parser.position}`);
  });
  parser.write(text).close();
  return broken ? undefined : seen;
}

function byUs(text: string): string[] | undefined {
  const read = readXml(text, { content: true });
  if ('fault' in read) return undefined;
  const seen: string[] = [];
  let words = '';
  const flush = (): void => {
    if (words !== '') seen.push(JSON.stringify(words));
    words = '';
  };
  const tell = (node: XmlNode): void => {
    if ('text' in node) words += node.text;
    if (!('name' in node)) return;
    flush();
    const given = [...node.attributes].map(([name, value]) => `${name}=${value}`);
    seen.push(`<${node.namespace} ${node.name} ${given.join(' ')}`);
    for (const inner of node.content) tell(inner);
    flush();
    seen.push(`/${node.name} ${node.end}`);
  };
  tell(read.root);
  return seen;
}

const pieces = [
  '<a>',
  '</a>',
  '<a x="1">',
  '<b/>',
  '<p:a>',
  '</p:a>',
  '<p:a xmlns:p="urn:1">',
  '<b xmlns="urn:2">',
  '</b>',
  '<c y=\'"\' z="&lt;&#65;"/>',
  'text',
  ' & ',
  '&amp;',
  '&nbsp;',
  '<!-- c -->',
  '<!--',
  '-->',
  '<![CDATA[<x>]]>',
  ']]>',
  '<?p q?>',
  '<!DOCTYPE a>',
  '<a',
  '\r\n',
  '\r',
  '>',
  '"',
  ' ',
];

// saxes is a parser of others that follows XML 1.0 and its namespaces and reports every departure.
describe('beside saxes', () => {
  const compare = (text: string): void => {
    const theirs = bySaxes(text);
    expect({ text, seen: byUs(text) }).toEqual({ text, seen: theirs });
  };

  it.each(['<!--<!-->', '<!-- <!-->', '<!--<!-- -->', '<!--->', '<!-->', '<!---->'])(
    'sees the same in %s',
    (comment) => {
      compare(`<r>${comment}</r>`);
      compare(`<r>${comment}text<b/></r>`);
    },
  );

  it('sees the same in texts put together at random, well-formed or not', () => {
    const inside = fc.array(fc.constantFrom(...pieces), { maxLength: 8 });
    fc.assert(
      fc.property(inside, (parts) => compare(`<r xmlns:p="urn:0">${parts.join('')}</r>`)),
      { numRuns: sampled(1000, 3000), seed: 20_261_128 },
    );
  });

  const element = fc.letrec<{ element: string }>((tie) => ({
    element: fc
      .tuple(
        fc.constantFrom('a', 'p:b', 'q:c'),
        fc.constantFrom('', ' xmlns:q="urn:3"', ' xmlns="urn:4" k="v"', ' p:k="&amp;"'),
        fc.array(
          fc.oneof(
            { depthSize: 'small', withCrossShrink: true },
            fc.constantFrom('', 'word', '&#x41;', '<![CDATA[&]]>', '<!-- - -->', '<?i?>'),
            tie('element'),
          ),
          { maxLength: 4 },
        ),
      )
      .map(([name, attributes, inner]) => `<${name}${attributes}>${inner.join('')}</${name}>`),
  })).element;

  it('sees the same in well-formed texts', () => {
    fc.assert(
      fc.property(element, (inner) => compare(`<r xmlns:p="urn:0" xmlns:q="urn:1">${inner}</r>`)),
      { numRuns: sampled(400, 1000), seed: 20_261_128 },
    );
  });
});

describe('beside fast-xml-parser', () => {
  it('sees the same texts', () => {
    const text = '<a><b c="1">x<d>y</d></b><b> z </b></a>';
    const parsed = new XMLParser({ ignoreAttributes: false, trimValues: false }).parse(text);
    const [first, second] = root(text, { content: true }).children;
    expect(first?.content[0]).toEqual({ text: parsed.a.b[0]['#text'] });
    expect(second?.content[0]).toEqual({ text: parsed.a.b[1] });
  });
});
