import { atNarrative } from '../fault-kinds.ts';
import type { NamedFault } from '../places.ts';
/** The status and the XHTML of the narrative. */
export const narrativeFaults: readonly NamedFault[] = [
  ['narrative-without-status', atNarrative({ status: undefined })],
  ['narrative-of-unknown-status', atNarrative({ status: 'written' })],
  ['narrative-without-div', atNarrative({ div: undefined })],
  ['narrative-in-plain-text', atNarrative({ div: 'Yearly check' })],
  ['narrative-without-namespace', atNarrative({ div: '<div>Yearly check</div>' })],
  [
    'narrative-of-spaces',
    atNarrative({ div: '<div xmlns="http://www.w3.org/1999/xhtml"> </div>' }),
  ],
  ['narrative-of-nothing', atNarrative({ div: '<div xmlns="http://www.w3.org/1999/xhtml"/>' })],
  [
    'narrative-of-a-paragraph',
    atNarrative({ div: '<p xmlns="http://www.w3.org/1999/xhtml">x</p>' }),
  ],
  [
    'narrative-with-form',
    atNarrative({ div: '<div xmlns="http://www.w3.org/1999/xhtml"><form>x</form></div>' }),
  ],
  [
    'narrative-with-onclick',
    atNarrative({ div: '<div xmlns="http://www.w3.org/1999/xhtml"><p onclick="x">x</p></div>' }),
  ],
  [
    'narrative-with-unknown-attribute',
    atNarrative({ div: '<div xmlns="http://www.w3.org/1999/xhtml"><p colour="x">x</p></div>' }),
  ],
  [
    'narrative-with-unknown-element',
    atNarrative({ div: '<div xmlns="http://www.w3.org/1999/xhtml"><banana>x</banana></div>' }),
  ],
  [
    'narrative-not-closed',
    atNarrative({ div: '<div xmlns="http://www.w3.org/1999/xhtml"><p>x</div>' }),
  ],
  [
    'narrative-with-style-element',
    atNarrative({ div: '<div xmlns="http://www.w3.org/1999/xhtml"><style>p{}</style>x</div>' }),
  ],
  [
    'narrative-with-input',
    atNarrative({ div: '<div xmlns="http://www.w3.org/1999/xhtml"><input type="text"/>x</div>' }),
  ],
  [
    'narrative-with-link-in-the-page',
    atNarrative({
      div: '<div xmlns="http://www.w3.org/1999/xhtml"><a href="#nowhere">x</a></div>',
    }),
  ],
  [
    'narrative-with-link-of-spaces',
    atNarrative({
      div: '<div xmlns="http://www.w3.org/1999/xhtml"><a href="http://a b">x</a></div>',
    }),
  ],
  [
    'narrative-with-mdash',
    atNarrative({ div: '<div xmlns="http://www.w3.org/1999/xhtml">a &mdash; b</div>' }),
  ],
  [
    'narrative-with-unknown-reference',
    atNarrative({ div: '<div xmlns="http://www.w3.org/1999/xhtml">a &banana; b</div>' }),
  ],
  [
    'narrative-after-div',
    atNarrative({ div: '<div xmlns="http://www.w3.org/1999/xhtml">a</div><div>b</div>' }),
  ],
];
