import type { Path } from '../../issues/path.ts';
import type { XmlElement } from '../../xml/tree.ts';

/** Tells where in an XML text the element of a path begins, or the nearest one around it. */
export function placesInXml(root: XmlElement): (path: Path) => number {
  const byName = new Map<XmlElement, Map<string, XmlElement[]>>();
  const named = (parent: XmlElement, name: string): readonly XmlElement[] => {
    let known = byName.get(parent);
    if (known === undefined) {
      known = new Map();
      for (const child of parent.children) {
        const before = known.get(child.name);
        if (before === undefined) known.set(child.name, [child]);
        else before.push(child);
      }
      byName.set(parent, known);
    }
    return known.get(name) ?? [];
  };
  return (path) => {
    let at = root;
    for (let step = 0; step < path.length; step++) {
      const name = path[step];
      if (typeof name !== 'string') continue;
      const index = path[step + 1];
      const found = named(resourceIn(at), name.replace(/^_/, ''));
      const next = found[typeof index === 'number' ? index : 0];
      if (next === undefined) break;
      at = next;
    }
    return at.start;
  };
}

/** The resource in an element that holds one: only resources begin with a capital letter. */
function resourceIn(element: XmlElement): XmlElement {
  const [inner] = element.children;
  return inner !== undefined && /^[A-Z]/.test(inner.name) ? inner : element;
}
