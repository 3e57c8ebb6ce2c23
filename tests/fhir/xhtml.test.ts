import fc from 'fast-check';
import { XMLParser } from 'fast-xml-parser';
import { expect, it } from 'vitest';
import { escapeXhtml, narrativeDiv } from '../../src/fhir/xhtml.ts';

// fast-xml-parser is the reference: what is escaped must come back as it was.
const parser = new XMLParser({
  ignoreAttributes: false,
  parseTagValue: false,
  parseAttributeValue: false,
  trimValues: false,
});

it('text comes back from an XML parser as it was, as content and as attribute', () => {
  const text = fc.string({
    unit: fc.constantFrom('&', '<', '>', '"', "'", ';', '#', 'a', 'é', ' '),
  });
  fc.assert(
    fc.property(text, (value) => {
      fc.pre(value.trim() !== '');
      const { div } = parser.parse(
        `<div title="${escapeXhtml(value)}">${escapeXhtml(value)}</div>`,
      );
      expect(div).toEqual({ '#text': value, '@_title': value });
    }),
  );
});

it('the div of a narrative has the XHTML namespace', () => {
  const { div } = parser.parse(narrativeDiv('<p>a</p>'));
  expect(div).toEqual({ '@_xmlns': 'http://www.w3.org/1999/xhtml', p: 'a' });
});
