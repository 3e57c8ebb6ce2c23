/**
 * Puts all of `more` at the end of `list`. `push(...more)` passes each as an argument of its own, and
 * some hundred thousand of them overflow the stack; tests/layers.test.ts keeps it out.
 */
export function append<Item>(list: Item[], more: Iterable<Item>): void {
  for (const item of more) list.push(item);
}
