import { isDeclaration } from '../../xml/namespaces.ts';
import { isElement, type XmlElement } from '../../xml/tree.ts';

/** Names that a mapping has for namespaces, by their URI. */
export type OwnNames = ReadonlyMap<string, string>;

export function ownNames(namespaces: { readonly [name: string]: string }): OwnNames {
  return new Map(Object.entries(namespaces).map(([name, uri]) => [uri, name]));
}

/**
 * The element with every name by its namespace, in the words of the mapping: `w:exam`, and
 * `{urn:other}exam` where the mapping has none for it. Prefixes of the text say nothing.
 */
export function namedByMapping(element: XmlElement, names: OwnNames): XmlElement {
  const content = element.content.map((node) =>
    isElement(node) ? namedByMapping(node, names) : node,
  );
  const renamed = new Map(
    [...element.attributes.keys()].map((name) => [name, attributeName(name, element, names)]),
  );
  const inOwn = <Value>(all: ReadonlyMap<string, Value>): Map<string, Value> =>
    new Map([...all].map(([name, value]) => [renamed.get(name) ?? name, value]));
  return {
    ...element,
    written: nameIn(element.namespace, element.name, names),
    attributes: inOwn(element.attributes),
    attributeNamespaces: inOwn(element.attributeNamespaces),
    content,
    children: content.filter(isElement),
  };
}

/** An attribute without a prefix is in no namespace. @see https://www.w3.org/TR/xml-names/#defaulting */
function attributeName(name: string, element: XmlElement, names: OwnNames): string {
  const namespace = element.attributeNamespaces.get(name);
  if (namespace === undefined || isDeclaration(name)) return name;
  return nameIn(namespace, name.slice(name.indexOf(':') + 1), names);
}

function nameIn(namespace: string, name: string, names: OwnNames): string {
  if (namespace === '') return name;
  const own = names.get(namespace);
  if (own === undefined) return `{${namespace}}${name}`;
  return own === '' ? name : `${own}:${name}`;
}

/** A step of a path as the splitter finds it: by its local name, whatever its prefix. */
export function anyPrefix(step: string): string {
  return `*:${step.slice(step.indexOf(':') + 1)}`;
}
