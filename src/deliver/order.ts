/** Something that may refer to others, by their places in the same list. */
export interface Referring {
  readonly refersTo: readonly number[];
}

/**
 * Groups of places in an order in which everything stands after what it refers to. A group is one
 * place, or several that refer to one another in a circle. Between places that do not depend on each
 * other the order is that of `first`.
 * @see Tarjan, Depth-first search and linear graph algorithms, SIAM J. Comput. 1 (1972), 146-160
 */
export function inOrderOfReference(
  list: readonly Referring[],
  first: readonly number[],
): readonly (readonly number[])[] {
  const groups: number[][] = [];
  const seen: (number | undefined)[] = list.map(() => undefined);
  const lowest: number[] = list.map(() => 0);
  const open: number[] = [];
  const isOpen = new Set<number>();
  let count = 0;

  const enter = (at: number): { at: number; next: number } => {
    seen[at] = count;
    lowest[at] = count;
    count += 1;
    open.push(at);
    isOpen.add(at);
    return { at, next: 0 };
  };
  const leave = (at: number): void => {
    if (lowest[at] !== seen[at]) return;
    const group: number[] = [];
    for (let member = open.pop(); member !== undefined; member = open.pop()) {
      isOpen.delete(member);
      group.push(member);
      if (member === at) break;
    }
    groups.push(group.reverse());
  };
  const lower = (at: number, to: number | undefined): void => {
    lowest[at] = Math.min(lowest[at] ?? 0, to ?? 0);
  };

  const visit = (start: number): void => {
    // A list of steps in place of calls, since a chain of references can be long.
    const steps = [enter(start)];
    for (let step = steps.at(-1); step !== undefined; step = steps.at(-1)) {
      const target = list[step.at]?.refersTo[step.next];
      step.next += 1;
      if (target === undefined) {
        steps.pop();
        leave(step.at);
        const above = steps.at(-1);
        if (above !== undefined) lower(above.at, lowest[step.at]);
      } else if (seen[target] === undefined) {
        steps.push(enter(target));
      } else if (isOpen.has(target)) {
        lower(step.at, seen[target]);
      }
    }
  };

  for (const start of first) if (seen[start] === undefined) visit(start);
  return groups;
}
