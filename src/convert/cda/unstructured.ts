import type { Issue } from '../../issues/issue.ts';
import type { XmlElement } from '../../xml/tree.ts';
import { issue } from '../issue.ts';
import type { Field, LegacyRecord } from '../record/record.ts';
import { textContent } from '../xml/records.ts';
import { type PlaceOf, readFields } from './fields.ts';
import { childElement } from './names.ts';

/**
 * The body of an unstructured document. One of plain text, as it is or in Base64, is the field
 * `nonXMLBody/text` and a record as that of any section; of a picture, a PDF or a file elsewhere nothing
 * can be read, which is told.
 * @see C-CDA R2.1, Unstructured Document (2.16.840.1.113883.10.20.22.1.10)
 */
export function unstructuredBody(
  body: XmlElement,
  placeOf: PlaceOf,
  keeps: boolean,
): { readonly record: LegacyRecord; readonly issues: readonly Issue[] } {
  const at = placeOf(body.start);
  const fields = readFields(body, placeOf, new Set(['text']), 'nonXMLBody');
  const text = childElement(body, 'text');
  if (text === undefined) return { record: { kind: 'nonXMLBody', fields, at }, issues: [] };
  const plain = plainText(text);
  const attributes = readFields(
    { ...text, content: [], children: [] },
    placeOf,
    new Set(),
    'nonXMLBody/text',
  );
  const content: Field[] = [
    ...text.children.flatMap((child) =>
      readFields(child, placeOf, new Set(), `nonXMLBody/text/${child.name}`),
    ),
  ];
  const words: Field = {
    name: 'nonXMLBody/text',
    text: plain ?? textContent(text.content).trim(),
    at: placeOf(text.start),
  };
  const all = [...fields, ...attributes, ...content, words];
  if (plain !== undefined && keeps)
    return { record: { kind: 'nonXMLBody', fields: all, at }, issues: [] };
  const facts = { reason: plain === undefined ? 'unstructured' : 'unstructured-text' } as const;
  const problem = issue('unsupported-message', [], facts, { source: at });
  return { record: { kind: 'nonXMLBody', fields: all, at, aside: [] }, issues: [problem] };
}

/** The text of a body of plain text; nothing for any other kind. */
function plainText(text: XmlElement): string | undefined {
  const type = text.attributes.get('mediaType')?.trim().toLowerCase() ?? 'text/plain';
  if (type !== 'text/plain' || text.children.length > 0) return undefined;
  const words = textContent(text.content).trim();
  if (words === '') return undefined;
  if (text.attributes.get('representation')?.trim() !== 'B64') return words;
  return fromBase64(words.replace(/\s+/g, ''));
}

function fromBase64(text: string): string | undefined {
  try {
    const bytes = Uint8Array.from(atob(text), (mark) => mark.charCodeAt(0));
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes).trim();
  } catch {
    return undefined;
  }
}
