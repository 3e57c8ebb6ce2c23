import { atDomain, atNarrative } from '../fault-kinds.ts';
import type { NamedFault } from '../places.ts';
import { core } from './core.ts';
/** XHTML that the narrative takes or refuses, and what stands for it. */
export const oddNarratives: readonly NamedFault[] = [
  ...Object.entries(narratives()).map(
    ([name, inner]) => [`narrative-${name}`, atNarrative({ div: inner })] as const,
  ),
  [
    'narrative-of-extension',
    atNarrative({
      div: undefined,
      _div: { extension: [{ url: core('data-absent-reason'), valueCode: 'unknown' }] },
    }),
  ],
  [
    'narrative-as-text',
    atDomain((it) => (it['text'] = '<div xmlns="http://www.w3.org/1999/xhtml">x</div>')),
  ],
  ['narrative-of-status-empty', atNarrative({ status: 'empty' })],
];

function narratives(): Record<string, string> {
  const div = (inner: string, attributes = ''): string =>
    `<div xmlns="http://www.w3.org/1999/xhtml"${attributes}>${inner}</div>`;
  return {
    'with-image': div('<img src="#x" alt="a"/>'),
    'with-image-of-data': div('<img src="data:image/png;base64,QUJD" alt="a"/>'),
    'with-image-without-text': div('<img src="http://vineyard.example/a.png"/>'),
    'with-image-alone': div('<img alt="a"/>'),
    'with-script-link': div('<a href="javascript:alert(1)">x</a>'),
    'with-empty-link': div('<a href="">x</a>'),
    'with-link-target': div('<a href="http://vineyard.example" target="_blank">x</a>'),
    'with-iframe': div('<iframe src="http://vineyard.example"/>'),
    'with-object': div('<object data="x"/>'),
    'with-link-element': div('<link rel="stylesheet" href="x"/>x'),
    'with-base': div('<base href="x"/>x'),
    'with-font': div('<font color="red">x</font>'),
    'with-svg': div('<svg xmlns="http://www.w3.org/2000/svg"/>x'),
    'with-nested-paragraph': div('<p><p>x</p></p>'),
    'with-list-in-paragraph': div('<p><ul><li>x</li></ul></p>'),
    'with-table-in-paragraph': div('<p><table><tr><td>x</td></tr></table></p>'),
    'with-div-in-span': div('<span><div>x</div></span>'),
    'with-item-outside-list': div('<li>x</li>'),
    'with-cell-outside-row': div('<table><td>x</td></table>'),
    'with-row-outside-table': div('<tr><td>x</td></tr>'),
    'with-text-in-list': div('<ul>x<li>y</li></ul>'),
    'with-heading-7': div('<h7>x</h7>'),
    'with-section': div('<section>x</section>'),
    'with-table-whole': div(
      '<table class="grid"><caption>c</caption><thead><tr><th scope="col">a</th></tr></thead><tbody><tr><td colspan="2">b</td></tr></tbody></table>',
    ),
    'with-colgroup': div('<table><colgroup><col/></colgroup><tr><td>x</td></tr></table>'),
    'with-br-of-content': div('a<br>b</br>'),
    'with-comment': div('<!-- a -->x'),
    'with-cdata': div('<![CDATA[x]]>'),
    'with-number-entity': div('&#160;&#xA0;x'),
    'with-nbsp': div('&nbsp;x'),
    'with-bare-ampersand': div('a & b'),
    'with-less-than': div('a < b'),
    'with-style-attribute': div('<p style="color: red">x</p>'),
    'with-style-url': div('<p style="background: url(http://vineyard.example/a)">x</p>'),
    'with-class-and-id': div('<p class="a" id="b">x</p>'),
    'with-id-twice': div('<p id="b">x</p><p id="b">y</p>'),
    'with-data-attribute': div('<p data-x="1">x</p>'),
    'with-aria': div('<p aria-label="x" role="note">x</p>'),
    'with-lang': div('x', ' lang="de" xml:lang="de"'),
    'with-xml-space': div('<pre xml:space="preserve">x</pre>'),
    'with-namespace-prefix': '<h:div xmlns:h="http://www.w3.org/1999/xhtml">x</h:div>',
    'of-image-alone': div('<img src="#a" alt=""/>'),
    'of-break-alone': div('<br/>'),
    'of-no-break-space-alone': div('&#160;'),
    'with-declaration': `<?xml version="1.0"?>${div('x')}`,
    'with-space-before': ` ${div('x')}`,
    'with-text-before': `x${div('x')}`,
    'with-doctype': `<!DOCTYPE html>${div('x')}`,
    'in-capitals': '<DIV xmlns="http://www.w3.org/1999/xhtml">x</DIV>',
    'with-paragraph-in-capitals': div('<P>x</P>'),
    'with-attribute-in-capitals': div('<p CLASS="x">x</p>'),
    'with-unquoted-attribute': div('<p class=x>x</p>'),
    'with-attribute-twice': div('<p class="x" class="y">x</p>'),
    'with-crossed-tags': div('<b><i>x</b></i>'),
    'with-details': div('<details><summary>a</summary>x</details>'),
    'with-map': div('<map name="m" id="m"><area shape="rect" coords="0,0,1,1" href="#"/></map>x'),
    'with-quote': div('<blockquote cite="http://vineyard.example">x</blockquote><q>y</q>'),
    'with-small-words': div(
      '<small>a</small><big>b</big><tt>c</tt><sub>d</sub><sup>e</sup><abbr>f</abbr><code>g</code>',
    ),
    'with-strike': div('<s>a</s><u>b</u><strike>c</strike><center>d</center>'),
    'with-ins-and-del': div('<ins>a</ins><del>b</del>'),
    'with-definitions': div('<dl><dt>a</dt><dd>b</dd></dl>'),
    'with-label': div('<label>a</label>'),
    'with-button': div('<button>a</button>'),
  };
}
