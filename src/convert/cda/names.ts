import { isElement, type XmlElement, type XmlNode } from '../../xml/tree.ts';

/** @see http://hl7.org/cda CDA R2, data types: the code systems and templates that are told apart here */
export const LOINC_OID = '2.16.840.1.113883.6.1';

/** C-CDA Physical Exam Section, with or without the extension of its version (2015-08-01). */
export const PHYSICAL_EXAM_TEMPLATE = '2.16.840.1.113883.10.20.2.10';

/** LOINC "Physical findings Narrative", the code of that section. */
export const PHYSICAL_FINDINGS = '29545-1';

/** Namespace of CDA. @see CDA R2, section 1.4 */
export const CDA_NAMESPACE = 'urn:hl7-org:v3';

/** Namespace of the extensions that HL7 publishes for CDA. @see https://hl7.org/cda */
const SDTC_NAMESPACE = 'urn:hl7-org:sdtc';

/**
 * The element with every name as CDA has it, by namespace and not by prefix: the local part for the
 * namespace of the document,
 * `sdtc:` for HL7's extensions, and `{namespace}name` for all that is foreign, so that it is never
 * taken for CDA.
 */
export function namedByCda(element: XmlElement, own = element.namespace): XmlElement {
  const content = element.content.map((node) => (isElement(node) ? namedByCda(node, own) : node));
  return { ...element, name: cdaName(element, own), content, children: content.filter(isElement) };
}

function cdaName({ name, namespace }: XmlElement, own: string): string {
  if (namespace === own) return name;
  return namespace === SDTC_NAMESPACE ? `sdtc:${name}` : `{${namespace}}${name}`;
}

/** Child elements, all or those of one name. */
export function childElements(parent: XmlElement, name?: string): readonly XmlElement[] {
  return name === undefined ? parent.children : parent.children.filter((one) => one.name === name);
}

export function childElement(parent: XmlElement, name: string): XmlElement | undefined {
  return childElements(parent, name)[0];
}

export function isTextNode(node: XmlNode): node is { readonly text: string } {
  return 'text' in node;
}
