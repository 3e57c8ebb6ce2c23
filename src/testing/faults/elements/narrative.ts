import { type DataFault, dataFaults, type Fault } from '../fault.ts';
import { every, setting } from '../place.ts';
import { invariant, section } from '../rules.ts';

const xhtml = 'http://www.w3.org/1999/xhtml';
const rule = section('xhtml', 'narrative.html#xhtml');

/** Faults of the XHTML that people read. */
export const narrativeFaults: readonly Fault[] = dataFaults('narrative', [
  inDiv('script', 'a script', '<script>alert(1)</script>'),
  inDiv('style-sheet', 'a style sheet', '<style>p { color: red }</style>'),
  inDiv('linked-style-sheet', 'a link to a style sheet', '<link rel="stylesheet" href="a.css"/>'),
  inDiv('frame', 'a frame', '<iframe src="https://harbour-clinic.example/"></iframe>'),
  inDiv('form', 'a form', '<form><p>mole</p></form>'),
  inDiv('input', 'an input field', '<p>mole <input type="text"/></p>'),
  inDiv('object', 'an embedded object', '<object data="mole.svg"></object>'),
  inDiv('heading-of-page', 'the title of a page', '<title>mole</title>'),
  inDiv('event-attribute', 'an event handler', '<p onclick="alert(1)">mole</p>'),
  inDiv('unknown-attribute', 'an attribute that is not allowed', '<p data-side="left">mole</p>'),
  inDiv('unknown-element', 'an element that HTML does not have', '<mole>left</mole>'),
  inDiv('html5-element', 'an element that came after HTML 4.0', '<section><p>mole</p></section>'),
  inDiv('element-in-capitals', 'an element in capitals', '<P>mole</P>'),
  inDiv(
    'image-with-script',
    'a script behind an image',
    '<img src="x" onerror="alert(1)" alt="x"/>',
  ),
  whole('not-well-formed', 'an element that is not closed', `<div xmlns="${xhtml}"><p>mole</div>`),
  whole('bare-ampersand', 'an ampersand that is not escaped', `<div xmlns="${xhtml}">a & b</div>`),
  whole(
    'unknown-entity',
    'an entity that XHTML does not have',
    `<div xmlns="${xhtml}">&mole;</div>`,
  ),
  whole('no-namespace', 'no namespace', '<div><p>mole</p></div>'),
  whole(
    'other-namespace',
    'the namespace of something else',
    '<div xmlns="http://www.w3.org/2000/svg"><p>mole</p></div>',
  ),
  whole('root-no-div', 'a paragraph as the outermost element', `<p xmlns="${xhtml}">mole</p>`),
  whole(
    'two-roots',
    'two outermost elements',
    `<div xmlns="${xhtml}">a</div><div xmlns="${xhtml}">b</div>`,
  ),
  whole('plain-text', 'no element at all', 'mole of the left cheek'),
  whole(
    'doctype',
    'a document type with an entity',
    `<!DOCTYPE div [<!ENTITY m "mole">]><div xmlns="${xhtml}"><p>&m;</p></div>`,
  ),
  {
    ...whole('nothing-in-it', 'an empty element', `<div xmlns="${xhtml}"></div>`),
    rule: invariant('txt-2', 'Narrative'),
    code: 'invariant',
  },
  {
    ...whole('only-space-in-it', 'only white space', `<div xmlns="${xhtml}"> <p> </p> </div>`),
    rule: invariant('txt-2', 'Narrative'),
    code: 'invariant',
  },
]);

function inDiv(name: string, title: string, content: string): DataFault {
  const row = whole(name, title, `<div xmlns="${xhtml}"><p>mole</p>${content}</div>`);
  return { ...row, rule: invariant('txt-1', 'Narrative'), code: 'invariant' };
}

function whole(name: string, title: string, div: string): DataFault {
  return {
    id: `narrative-${name}`,
    title: `a narrative with ${title}`,
    rule,
    code: 'invalid',
    plant: setting(every('text'), 'div', div),
  };
}
