import type { Random } from '../../../src/testing/random.ts';

/** Stands in inputs where a patient's words would; no issue, message or path may hold it. */
export const canary = 'Muster-Geheim';

type Holder = Record<string | number, unknown>;

/** Values that careless code trips over. */
const oddities: readonly (() => unknown)[] = [
  () => null,
  () => undefined,
  () => '',
  () => 0,
  () => -1,
  () => 1e308,
  () => Number.NaN,
  () => true,
  () => [],
  () => ({}),
  () => [null],
  () => [[]],
  () => canary,
  () => `${canary} <b>&"'\u0000\u202e`,
  () => ({ [canary]: canary }),
  () => JSON.parse('{"__proto__":{"polluted":true},"constructor":{"prototype":{"polluted":true}}}'),
  () => 'http://snomed.info/sct',
  () => '2024-02-31',
  () => '9'.repeat(400),
  () => ' a'.repeat(300),
  () => '\ud800',
  () => 'toString',
  () => 10n,
  () => Symbol(canary),
  () => () => canary,
  () => new Date(Number.NaN),
  () => new Map([[canary, canary]]),
  () => Object.create(null),
];

/** How much there is to damage: objects and lists, or characters. */
export function sizeOf(input: unknown): number {
  return typeof input === 'string' ? input.length : holders(input).length;
}

function holders(value: unknown, found: Holder[] = [], level = 0): Holder[] {
  if (typeof value !== 'object' || value === null || level > 60) return found;
  found.push(value as Holder); // an object or a list, read by any of its names
  for (const member of Object.values(value)) holders(member, found, level + 1);
  return found;
}

function copied(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(copied);
  if (typeof value !== 'object' || value === null) return value;
  if (value instanceof Map) return new Map(value);
  // Its own properties are not copied: an object that stood in two places could come to hold itself.
  if (value instanceof Date) return new Date(value);
  const copy = Object.create(Object.getPrototypeOf(value));
  for (const name of Object.keys(value)) {
    Object.defineProperty(copy, name, {
      value: copied((value as Holder)[name]),
      writable: true,
      enumerable: true,
      configurable: true,
    });
  }
  return copy;
}

/** One of a list, which may hold undefined. */
function one<Item>(list: readonly Item[], random: Random): Item {
  return list[random.int(0, list.length - 1)] as Item; // the place is one of the list
}

interface Place {
  readonly holder: Holder;
  readonly name: string;
  /** The whole input, and another one. */
  readonly root: unknown;
  readonly other: unknown;
  readonly random: Random;
}

/** A part of an input, which may be a text or nothing. */
function partOf(input: unknown, random: Random): unknown {
  const member = one(holders(input), random);
  return copied(one([member, ...Object.values(member ?? {})], random));
}

/** Kinds of damage at one place; an oddity is as likely as two of the others. */
const damages: readonly ((place: Place) => void)[] = [
  ({ holder, name }) => delete holder[name],
  ({ holder, name }) => {
    holder[`${name}x`] = copied(holder[name]);
  },
  ({ holder, name, other, random }) => {
    holder[name] = partOf(other, random);
  },
  ({ holder, name, root, random }) => {
    holder[name] = partOf(root, random);
  },
  ({ holder, name, random }) => {
    const value = holder[name];
    holder[name] = typeof value === 'string' ? damagedText(value, canary, random) : [value];
  },
  ({ holder, name }) => {
    holder[canary] = copied(holder[name]);
  },
  ({ holder, name }) => {
    const value = holder[name];
    if (Array.isArray(value)) holder[name] = [...value, ...value.slice(0, 3).map(copied)];
    else holder[name] = [value];
  },
  ({ holder, name, random }) => {
    holder[name] = random.pick(oddities)();
  },
  ({ holder, name, random }) => {
    holder[name] = random.pick(oddities)();
  },
];

/** A damaged copy; a part of another input may be put into it. */
export function damagedData(data: unknown, other: unknown, random: Random): unknown {
  const root: Holder = { data: copied(data) };
  const rounds = random.chance(0.7) ? 1 : random.int(2, 6);
  for (let round = 0; round < rounds; round++) {
    const holder = random.pick(holders(root));
    const names = Object.keys(holder);
    if (names.length === 0) holder[canary] = canary;
    else random.pick(damages)({ holder, name: random.pick(names), root, other, random });
  }
  return root['data'];
}

const pieces: readonly string[] = [
  '"',
  '\\',
  '{',
  '}',
  '[',
  ']',
  ',',
  ':',
  '<',
  '>',
  '&',
  '</',
  '/>',
  '<!--',
  '-->',
  '<![CDATA[',
  ']]>',
  '&#x0;',
  '&#xD800;',
  '&amp;',
  '&x;',
  '<!DOCTYPE a [<!ENTITY x "y">]>',
  '<?xml version="1.0"?>',
  '|',
  '^',
  '~',
  '\\&',
  '\\F\\',
  '\\X0A\\',
  '\r',
  '\n',
  '\r\n',
  '\t',
  '\u0000',
  '\ufeff',
  '\u202e',
  '\ud800',
  'null',
  '__proto__',
  '1e999',
  '-0',
  '0.10',
  '//',
  '/*',
  '*/',
  ';',
  '=',
  canary,
];

export function damagedText(text: string, other: string, random: Random): string {
  let made = text;
  const rounds = random.int(1, 5);
  for (let round = 0; round < rounds; round++) {
    const at = random.int(0, made.length);
    const to = Math.min(made.length, at + random.int(0, random.chance(0.8) ? 4 : 400));
    const kind = random.int(0, 4);
    if (kind === 0) made = made.slice(0, at) + made.slice(to);
    else if (kind === 1) made = made.slice(0, at) + random.pick(pieces) + made.slice(at);
    else if (kind === 2)
      made = made.slice(0, at) + made.slice(at, to).repeat(random.int(2, 5)) + made.slice(to);
    else if (kind === 3) {
      const from = random.int(0, other.length);
      made = made.slice(0, at) + other.slice(from, from + random.int(1, 200)) + made.slice(to);
    } else made = made.slice(0, at) + random.pick(pieces) + made.slice(to);
  }
  return made.length > 200_000 ? made.slice(0, 200_000) : made;
}
