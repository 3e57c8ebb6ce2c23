/** @see https://www.w3.org/TR/xml-names/#ns-decl */
const XML = 'http://www.w3.org/XML/1998/namespace';

/** Attributes about the markup itself. @see https://www.w3.org/TR/xmlschema-1/#xsi.nil */
export const XSI = 'http://www.w3.org/2001/XMLSchema-instance';

/** Whether an attribute declares a namespace. */
export function isDeclaration(attribute: string): boolean {
  return attribute === 'xmlns' || attribute.startsWith('xmlns:');
}

/** The part of a name before its colon; empty for none. */
export function prefixOf(name: string): string {
  return name.slice(0, Math.max(name.indexOf(':'), 0));
}

export function localName(name: string): string {
  return name.slice(name.indexOf(':') + 1);
}

/**
 * The attribute of a namespace, whatever its prefix in the text. `usual` is its name with the usual
 * prefix, taken as it is where the text declares no such prefix.
 */
export function attributeIn(
  { attributes, attributeNamespaces }: Attributed,
  namespace: string,
  usual: string,
): string | undefined {
  for (const [name, found] of attributeNamespaces) {
    if (found === namespace && localName(name) === localName(usual)) return attributes.get(name);
  }
  return attributeNamespaces.has(usual) ? undefined : attributes.get(usual);
}

interface Attributed {
  readonly attributes: ReadonlyMap<string, string>;
  readonly attributeNamespaces: ReadonlyMap<string, string>;
}

/**
 * Namespaces by prefix at one place of a text, the default one under the empty prefix. Each prefix has
 * a stack of its own, so that what an element declares costs as much as it writes, however many
 * declarations stand around it.
 */
export class Namespaces {
  readonly #bound = new Map<string, string[]>([
    ['', ['']],
    ['xml', [XML]],
  ]);

  /** Declares what these attributes declare. Gives the prefixes for {@link leave}. */
  enter(attributes: ReadonlyMap<string, string>): readonly string[] {
    let declared: string[] | undefined;
    for (const [name, uri] of attributes) {
      if (!isDeclaration(name)) continue;
      const prefix = name.slice('xmlns:'.length);
      const stack = this.#bound.get(prefix);
      if (stack === undefined) this.#bound.set(prefix, [uri]);
      else stack.push(uri);
      declared ??= [];
      declared.push(prefix);
    }
    return declared ?? none;
  }

  leave(declared: readonly string[]): void {
    for (const prefix of declared) this.#bound.get(prefix)?.pop();
  }

  /** Undefined where nothing around declares the prefix. */
  of(prefix: string): string | undefined {
    return this.#bound.get(prefix)?.at(-1);
  }
}

const none: readonly string[] = [];
