import type { Part } from './split.ts';

/** What a place holder of a pattern takes. */
type Taken = 'number' | 'word' | 'text';

type Step = { readonly literal: string } | { readonly take: Taken; readonly name: string };

/** Steps of a pattern such as `MRD1 {mrd1:number} mm`, or why there are none. */
export function patternSteps(pattern: string): readonly Step[] | undefined {
  const steps: Step[] = [];
  let from = 0;
  for (const match of pattern.matchAll(/\{([^{}:]{1,100}):(number|word|text)\}/g)) {
    if (match.index > from) steps.push({ literal: pattern.slice(from, match.index) });
    // Two place holders without anything between them could be told apart in several ways.
    else if (steps.length > 0) return undefined;
    const [whole, name = '', take] = match;
    steps.push({ take: take as Taken, name }); // one of the three by the expression
    from = match.index + whole.length;
  }
  if (from < pattern.length) steps.push({ literal: pattern.slice(from) });
  const isOpen = steps.some((step) => 'literal' in step && /[{}]/.test(step.literal));
  return isOpen || !steps.some((step) => 'take' in step) ? undefined : steps;
}

const forms = { number: /[<>]?[+-]?\d+(?:[.,]\d+)?/y, word: /[\p{L}\p{N}+-]+/uy } as const;

/**
 * The parts that a pattern takes of a text; undefined where it does not fit the whole of it. Each step
 * goes on where the last one ended and never back, so that the time is linear. White space of any
 * length is one space; a text ends before the first mark that follows it in the pattern.
 */
export function pick(text: string, steps: readonly Step[]): readonly Part[] | undefined {
  const parts: Part[] = [];
  let at = spaceEnd(text, 0);
  for (const [index, step] of steps.entries()) {
    if ('literal' in step) {
      const end = literalEnd(text, at, step.literal);
      if (end === undefined) return undefined;
      at = end;
      continue;
    }
    const end = takenEnd(text, at, step.take, steps[index + 1]);
    if (end === undefined) return undefined;
    let last = end;
    while (last > at && /\s/.test(text[last - 1] ?? '')) last -= 1;
    if (last === at) return undefined;
    parts.push({ name: step.name, start: at, end: last });
    at = end;
  }
  return spaceEnd(text, at) === text.length ? parts : undefined;
}

function takenEnd(
  text: string,
  at: number,
  take: Taken,
  next: Step | undefined,
): number | undefined {
  if (take !== 'text') {
    const form = forms[take];
    form.lastIndex = at;
    return form.test(text) ? form.lastIndex : undefined;
  }
  if (next === undefined || !('literal' in next)) return text.length;
  const [mark = ''] = next.literal.trim();
  const found = mark === '' ? text.slice(at).search(/\s/) + at : text.indexOf(mark, at);
  return found < at ? undefined : found;
}

/** End of a literal in a text, its white space of any length; undefined where it does not stand there. */
function literalEnd(text: string, from: number, literal: string): number | undefined {
  let at = from;
  for (const word of literal.split(/(\s+)/)) {
    if (word === '') continue;
    if (word.trim() === '') at = spaceEnd(text, at);
    else if (text.startsWith(word, at)) at += word.length;
    else return undefined;
  }
  return at;
}

function spaceEnd(text: string, from: number): number {
  let at = from;
  while (at < text.length && /\s/.test(text[at] ?? '')) at += 1;
  return at;
}
