import { isSame } from '../../../data/plain-data.ts';
import { isObject } from '../../walk/json.ts';
import { childrenOf, evaluate, isOfType } from './evaluate.ts';
import {
  bool,
  type Context,
  distinct,
  type Frame,
  type Item,
  type Items,
  isEqual,
  numberOf,
  one,
  truth,
  Undecided,
} from './items.ts';
import type { Node } from './parse.ts';

type Call = (input: Items, args: readonly Node[], frame: Frame) => Items;

/**
 * Functions by name, each as FHIRPath defines it; what is not here leaves a rule undecided.
 * @see https://hl7.org/fhirpath/N1/#functions
 * @see https://hl7.org/fhir/R4/fhirpath.html#functions
 */
export const calls: ReadonlyMap<string, Call> = new Map<string, Call>([
  ['empty', (input) => bool(input.length === 0)],
  ['exists', (input, args, frame) => bool(matching(input, args, frame).length > 0)],
  ['where', (input, args, frame) => matching(input, args, frame)],
  ['all', (input, args, frame) => bool(input.every((item, at) => holds(item, at, args, frame)))],
  ['not', (input) => (input.length === 0 ? [] : bool(truth(input) === false))],
  ['count', (input) => [{ value: input.length }]],
  ['select', (input, args, frame) => input.flatMap((item, at) => each(item, at, args, frame))],
  ['repeat', repeat],
  ['first', (input) => input.slice(0, 1)],
  ['last', (input) => input.slice(-1)],
  ['tail', (input) => input.slice(1)],
  ['single', (input) => (input.length === 0 ? [] : [one(input)])],
  ['skip', (input, args, frame) => input.slice(amount(args, frame))],
  ['take', (input, args, frame) => input.slice(0, Math.max(0, amount(args, frame)))],
  ['distinct', (input) => distinct(input)],
  ['isDistinct', (input) => bool(distinct(input).length === input.length)],
  ['allTrue', (input) => bool(input.every(({ value }) => value === true))],
  ['anyTrue', (input) => bool(input.some(({ value }) => value === true))],
  ['allFalse', (input) => bool(input.every(({ value }) => value === false))],
  ['anyFalse', (input) => bool(input.some(({ value }) => value === false))],
  ['subsetOf', (input, args, frame) => bool(within(input, argument(args, frame)))],
  ['supersetOf', (input, args, frame) => bool(within(argument(args, frame), input))],
  ['intersect', (input, args, frame) => intersect(input, argument(args, frame))],
  ['exclude', (input, args, frame) => without(input, argument(args, frame))],
  ['union', (input, args, frame) => distinct([...input, ...argument(args, frame)])],
  ['combine', (input, args, frame) => [...input, ...argument(args, frame)]],
  ['iif', iif],
  ['trace', (input) => input],
  ['ofType', (input, args) => input.filter((item) => isOfType(item, typeIn(args)))],
  ['as', (input, args) => input.filter((item) => isOfType(item, typeIn(args)))],
  ['is', (input, args) => (input.length === 0 ? [] : bool(isOfType(one(input), typeIn(args))))],
  ['hasValue', (input) => bool(input.length === 1 && isPlain(input[0]?.value))],
  ['getValue', (input) => input.filter(({ value }) => isPlain(value))],
  ['extension', extension],
  ['resolve', resolve],
  ['children', (input, _, { context }) => input.flatMap((item) => children(item, context.types))],
  ['descendants', descendants],
  ['startsWith', text((value, start) => value.startsWith(start))],
  ['endsWith', text((value, end) => value.endsWith(end))],
  ['contains', text((value, part) => value.includes(part))],
  ['matches', text(matches)],
  ['matchesFull', text((value, pattern) => matches(value, `^(?:${pattern})$`))],
  ['indexOf', (input, args, frame) => indexOf(input, args, frame)],
  ['length', (input) => input.map((item) => ({ value: [...textIn(item)].length }))],
  ['lower', (input) => input.map((item) => ({ value: textIn(item).toLowerCase() }))],
  ['upper', (input) => input.map((item) => ({ value: textIn(item).toUpperCase() }))],
  ['trim', (input) => input.map((item) => ({ value: textIn(item).trim() }))],
  ['substring', substring],
  ['toString', (input) => input.map((item) => ({ value: String(plainIn(item)) }))],
  ['toInteger', (input) => input.flatMap(toInteger)],
]);

function each(item: Item, index: number, [node]: readonly Node[], { context }: Frame): Items {
  if (node === undefined) throw new Undecided('no criterion');
  return evaluate(node, [item], { context, index, self: item });
}

function holds(item: Item, index: number, args: readonly Node[], frame: Frame): boolean {
  return truth(each(item, index, args, frame)) === true;
}

function matching(input: Items, args: readonly Node[], frame: Frame): Items {
  return args.length === 0 ? input : input.filter((item, at) => holds(item, at, args, frame));
}

function argument([node]: readonly Node[], frame: Frame): Items {
  if (node === undefined) throw new Undecided('no argument');
  // Arguments that are not criteria are taken at `$this`, not at what the function stands on.
  return evaluate(node, [frame.self], frame);
}

function amount(args: readonly Node[], frame: Frame): number {
  return numberOf(one(argument(args, frame)));
}

function repeat(input: Items, args: readonly Node[], frame: Frame): Items {
  const found: Item[] = [];
  let open: Items = input;
  while (open.length > 0) {
    open = open.flatMap((item, at) => each(item, at, args, frame));
    for (const item of open) found.push(item);
  }
  return found;
}

function within(some: Items, all: Items): boolean {
  return some.every((item) => all.some((other) => isEqual(item, other)));
}

function intersect(left: Items, right: Items): Items {
  return distinct(left.filter((item) => right.some((other) => isEqual(item, other))));
}

function without(left: Items, right: Items): Items {
  return left.filter((item) => !right.some((other) => isSame(item.value, other.value)));
}

function iif(input: Items, [test, then, otherwise]: readonly Node[], frame: Frame): Items {
  if (test === undefined || then === undefined) throw new Undecided('no criterion');
  if (truth(evaluate(test, input, frame)) === true) return evaluate(then, input, frame);
  return otherwise === undefined ? [] : evaluate(otherwise, input, frame);
}

function typeIn([node]: readonly Node[]): string {
  if (node?.is === 'name') return node.name;
  if (node?.is === 'dot' && node.right.is === 'name') return node.right.name;
  throw new Undecided('no type');
}

function isPlain(value: unknown): boolean {
  return value !== undefined && !isObject(value);
}

function extension(input: Items, args: readonly Node[], frame: Frame): Items {
  const { value: url } = one(argument(args, frame));
  return input
    .flatMap((item) => childrenOf(item, 'extension', frame.context.types))
    .filter(({ value }) => isObject(value) && value['url'] === url);
}

function resolve(input: Items, _: readonly Node[], { context }: Frame): Items {
  return input.flatMap(({ value }) => {
    const reference = isObject(value) ? value['reference'] : value;
    const found = typeof reference === 'string' ? context.resolve(reference) : undefined;
    return found === undefined ? [] : [{ value: found }];
  });
}

function children(item: Item, types: Context['types']): Items {
  const { value } = item;
  if (!isObject(value)) throw new Undecided('children of a primitive');
  const names = new Set(Object.keys(value).map((key) => key.replace(/^_/, '')));
  names.delete('resourceType');
  return [...names].flatMap((name) => childrenOf(item, name, types));
}

function descendants(input: Items, _: readonly Node[], { context }: Frame): Items {
  const found: Item[] = [];
  let open: Items = input;
  while (open.length > 0) {
    // Primitives have no elements but ids and extensions, which nobody asks for here.
    open = open
      .filter(({ value }) => isObject(value))
      .flatMap((item) => children(item, context.types));
    context.budget -= open.length;
    if (context.budget < 0) throw new Undecided('too long');
    for (const item of open) found.push(item);
  }
  return found;
}

function plainIn({ value }: Item): string | number | boolean {
  if (typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean') {
    return value;
  }
  throw new Undecided('no plain value');
}

function textIn(item: Item): string {
  const value = plainIn(item);
  if (typeof value !== 'string') throw new Undecided('no text');
  return value;
}

function text(test: (value: string, other: string) => boolean): Call {
  return (input, args, frame) => {
    if (input.length === 0) return [];
    const others = argument(args, frame);
    if (others.length === 0) return [];
    return bool(test(textIn(one(input)), textIn(one(others))));
  };
}

/** A part of the text is enough, as in FHIRPath 2: https://hl7.org/fhirpath/N1/#matchesregex--string--boolean */
function matches(value: string, pattern: string): boolean {
  // Published patterns escape marks that need it not, such as `\@`, which Unicode mode refuses.
  const expression = regularExpression(pattern, 'su') ?? regularExpression(pattern, 's');
  if (expression === undefined) throw new Undecided('no regular expression here');
  return expression.test(value);
}

function regularExpression(pattern: string, flags: string): RegExp | undefined {
  try {
    return new RegExp(pattern, flags);
  } catch {
    return undefined;
  }
}

function indexOf(input: Items, args: readonly Node[], frame: Frame): Items {
  if (input.length === 0) return [];
  const part = textIn(one(argument(args, frame)));
  return [{ value: textIn(one(input)).indexOf(part) }];
}

function substring(input: Items, [start, length]: readonly Node[], frame: Frame): Items {
  if (input.length === 0 || start === undefined) return [];
  const whole = textIn(one(input));
  const from = amount([start], frame);
  if (from < 0 || from >= whole.length) return [];
  const end = length === undefined ? whole.length : from + amount([length], frame);
  return [{ value: whole.slice(from, end) }];
}

function toInteger(item: Item): Items {
  const value = plainIn(item);
  if (typeof value === 'boolean') return [{ value: value ? 1 : 0 }];
  if (typeof value === 'string' && /^[+-]?\d+$/.test(value)) return [{ value: Number(value) }];
  return typeof value === 'number' && Number.isInteger(value) ? [{ value }] : [];
}
