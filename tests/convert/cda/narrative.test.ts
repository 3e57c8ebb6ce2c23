import { describe, expect, it } from 'vitest';
import { disagreements } from '../../../src/convert/cda/conflict.ts';
import { narrativeIndex, narrativeText } from '../../../src/convert/cda/narrative.ts';
import { readXml } from '../../../src/xml/reader.ts';
import type { XmlElement } from '../../../src/xml/tree.ts';

function element(text: string): XmlElement {
  const read = readXml(text, { content: true });
  if (!('root' in read)) throw new Error(read.fault.facts.reason);
  return read.root;
}

// Elements of the narrative block: CDA R2, StrucDoc.Text.
describe('narrative as text', () => {
  it.each([
    ['<text>plain</text>', 'plain'],
    ['<text>a<br/>b</text>', 'a\nb'],
    ['<text><paragraph>a</paragraph><paragraph>b</paragraph></text>', 'a\nb'],
    ['<text><list><item>a</item><item>b <sup>2</sup></item></list></text>', 'a\nb 2'],
    ['<text><list><caption>c</caption><item>a</item></list></text>', 'c\na'],
    [
      '<text><table><tr><th>a</th><td>b</td></tr><tr><td/><td>d</td></tr></table></text>',
      'a | b\n| d',
    ],
    ['<text>  a \n\t b  </text>', 'a b'],
    ['<text>a <content revised="delete">not</content> b</text>', 'a [deleted: not] b'],
    ['<text><content revised="insert">now</content></text>', 'now'],
    ['<text><footnote ID="f">n</footnote><linkHtml href="x">link</linkHtml></text>', 'nlink'],
    ['<text/>', ''],
  ])('%s', (text, plain) => {
    expect(narrativeText(element(text))).toBe(plain);
  });

  it('is found by ID, at any depth, the first of two', () => {
    const find = narrativeIndex(
      element(
        '<text>x<list ID="l"><item ID="i">a <b ID="b">c</b></item></list><b ID="b">d</b></text>',
      ),
    );
    expect([find('l'), find('i'), find('b'), find('toString')]).toEqual([
      'a c',
      'a c',
      'c',
      undefined,
    ]);
  });
});

// Common practice, no source: what a reader would notice at once.
describe('narrative against its entry', () => {
  it.each([
    ['MRD1 4 mm', { number: '4' }, []],
    ['MRD1 4.0 mm', { number: '4' }, []],
    ['MRD1 4,5 mm', { number: '4.5' }, []],
    ['MRD1 3 mm', { number: '4' }, ['number']],
    ['MRD1 low', { number: '4' }, []],
    ['left 4 or 5', { number: '5', side: 'left' }, []],
    ['left cheek', { side: 'right' }, ['side']],
    ['left and right', { side: 'right' }, []],
    ['cheek', { side: 'right' }, []],
    ['no rash', { negated: true }, []],
    ['no rash', { negated: false }, ['negation']],
    ['rash', { negated: true }, ['negation']],
    ['nose red', { negated: false }, []],
    ['no rash', {}, []],
    [
      'no lump left, 3 mm',
      { number: '4', side: 'right', negated: false },
      ['number', 'side', 'negation'],
    ],
  ] as const)('%j and %j: %j', (narrative, claim, parts) => {
    expect(disagreements(narrative, claim)).toEqual(parts);
  });
});
