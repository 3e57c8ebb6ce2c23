/** A concept with what it is a case of, the nearest first. */
interface Placed {
  readonly code: string;
  readonly property: readonly { readonly code: string; readonly [value: string]: unknown }[];
}

type Nested<T extends Placed> = T & { readonly concept?: readonly Nested<T>[] };

/**
 * Concepts below the first of their parents, in their order; those without one at the top. A server
 * that knows no `parent` property sees the hierarchy too.
 * @see https://hl7.org/fhir/R4/codesystem.html#hierarchy
 */
export function nested<T extends Placed>(concepts: readonly T[]): Nested<T>[] {
  const below = new Map<unknown, T[]>();
  for (const concept of concepts) {
    const parent = concept.property.find(({ code }) => code === 'parent')?.['valueCode'];
    below.set(parent, [...(below.get(parent) ?? []), concept]);
  }
  const made = (parent: string | undefined): Nested<T>[] =>
    (below.get(parent) ?? []).map((concept) => {
      const inner = made(concept.code);
      return { ...concept, ...(inner.length > 0 && { concept: inner }) };
    });
  return made(undefined);
}
