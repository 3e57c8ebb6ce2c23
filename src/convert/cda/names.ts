import type { XmlElement, XmlNode } from '../xml/tree.ts';
import { isElement } from '../xml/tree.ts';

/** @see http://hl7.org/cda CDA R2, data types: the code systems and templates that are told apart here */
export const LOINC_OID = '2.16.840.1.113883.6.1';

/** C-CDA Physical Exam Section, with or without the extension of its version (2015-08-01). */
export const PHYSICAL_EXAM_TEMPLATE = '2.16.840.1.113883.10.20.2.10';

/** LOINC "Physical findings Narrative", the code of that section. */
export const PHYSICAL_FINDINGS = '29545-1';

/**
 * The element with every name cut to its local part: CDA elements stand in one namespace, whatever
 * prefix a document gives it. `sdtc:` extensions and `xsi:type` keep theirs.
 */
export function withoutPrefixes(element: XmlElement): XmlElement {
  return {
    ...element,
    name: localName(element.name),
    children: element.children.map((node) => (isElement(node) ? withoutPrefixes(node) : node)),
  };
}

function localName(name: string): string {
  return name.startsWith('sdtc:') ? name : name.slice(name.indexOf(':') + 1);
}

/** Child elements, all or those of one name. */
export function childElements(parent: XmlElement, name?: string): XmlElement[] {
  const found: XmlElement[] = [];
  for (const node of parent.children) {
    if (isElement(node) && (name === undefined || node.name === name)) found.push(node);
  }
  return found;
}

export function childElement(parent: XmlElement, name: string): XmlElement | undefined {
  return childElements(parent, name)[0];
}

export function isTextNode(node: XmlNode): node is { readonly text: string } {
  return 'text' in node;
}
