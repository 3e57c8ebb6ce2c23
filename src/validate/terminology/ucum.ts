import { atoms, prefixes } from '../tables/ucum.ts';

/**
 * One unit that UCUM defines: 1 where it takes prefixes; its size in base units, 0 where it is no
 * multiple of them; its powers of metre, second, gram, radian, kelvin, coulomb and candela.
 */
export type UcumAtom = readonly [metric: 0 | 1, size: number, dimension: string];

/** What a unit is worth in base units; `size` is 0 where it cannot be compared. */
export interface UnitSize {
  readonly size: number;
  readonly dimension: readonly number[];
}

const atomByCode: ReadonlyMap<string, UcumAtom> = /*@__PURE__*/ new Map(Object.entries(atoms));
const prefixByCode: ReadonlyMap<string, number> = /*@__PURE__*/ new Map(Object.entries(prefixes));

/** Longer codes are not units that anyone has written down. */
const longest = 255;
const deepest = 20;

interface Cursor {
  readonly text: string;
  at: number;
  depth: number;
}

/**
 * The size of a case-sensitive UCUM code, or `undefined` where it is none.
 * @see https://ucum.org/ucum section 2, the grammar in table 1 of the annex
 */
export function unitSize(code: string): UnitSize | undefined {
  if (code.length === 0 || code.length > longest) return undefined;
  const cursor = { text: code, at: 0, depth: 0 };
  const leading = code.charAt(0) === '/';
  if (leading) cursor.at = 1;
  const found = term(cursor);
  if (found === undefined || cursor.at !== code.length) return undefined;
  return leading ? power(found, -1) : found;
}

const one: UnitSize = { size: 1, dimension: [] };

function term(cursor: Cursor): UnitSize | undefined {
  let found = component(cursor);
  while (found !== undefined) {
    const operator = cursor.text.charAt(cursor.at);
    if (operator !== '.' && operator !== '/') return found;
    cursor.at += 1;
    const next = component(cursor);
    found = next && product(found, operator === '/' ? power(next, -1) : next);
  }
  return found;
}

function component(cursor: Cursor): UnitSize | undefined {
  if (cursor.text.charAt(cursor.at) === '(') return group(cursor);
  const symbol = readSymbol(cursor);
  const unit = symbol === '' ? one : simpleUnit(symbol);
  const annotated = skipAnnotation(cursor);
  if (annotated === undefined || (symbol === '' && !annotated)) return undefined;
  return unit;
}

function group(cursor: Cursor): UnitSize | undefined {
  if (cursor.depth >= deepest) return undefined;
  cursor.at += 1;
  cursor.depth += 1;
  const inner = term(cursor);
  cursor.depth -= 1;
  if (cursor.text.charAt(cursor.at) !== ')') return undefined;
  cursor.at += 1;
  return inner;
}

const symbolForm = /(?:\[[\x21-\x7E]*?\]|[^\s./(){}[\]"])+/y;

/** The characters up to the next operator; brackets hold anything. */
function readSymbol(cursor: Cursor): string {
  symbolForm.lastIndex = cursor.at;
  const found = symbolForm.exec(cursor.text)?.[0] ?? '';
  cursor.at += found.length;
  return found;
}

const annotationForm = /\{[\x21-\x7A\x7C\x7E]*\}/y;

/** Whether there was one; `undefined` where it is malformed. */
function skipAnnotation(cursor: Cursor): boolean | undefined {
  if (cursor.text.charAt(cursor.at) !== '{') return false;
  annotationForm.lastIndex = cursor.at;
  const found = annotationForm.exec(cursor.text)?.[0];
  if (found === undefined) return undefined;
  cursor.at += found.length;
  return true;
}

function simpleUnit(symbol: string): UnitSize | undefined {
  if (/^\d+$/.test(symbol)) return { size: Number(symbol), dimension: [] };
  const [, code = '', exponent = '1'] = /^(.*[^\d+-])([+-]?\d+)?$/.exec(symbol) ?? [];
  const unit = namedUnit(code);
  return unit && power(unit, Number(exponent));
}

function namedUnit(code: string): UnitSize | undefined {
  const atom = atomByCode.get(code);
  if (atom !== undefined) return sizeOf(atom, 1);
  for (const length of [1, 2]) {
    const factor = prefixByCode.get(code.slice(0, length));
    const rest = factor === undefined ? undefined : atomByCode.get(code.slice(length));
    if (factor !== undefined && rest?.[0] === 1) return sizeOf(rest, factor);
  }
  return undefined;
}

function sizeOf([, size, dimension]: UcumAtom, factor: number): UnitSize {
  return {
    size: size * factor,
    dimension: dimension === '' ? [] : dimension.split(' ').map(Number),
  };
}

function power({ size, dimension }: UnitSize, exponent: number): UnitSize {
  return {
    size: size === 0 ? 0 : size ** exponent,
    dimension: dimension.map((each) => each * exponent),
  };
}

function product(one: UnitSize, other: UnitSize): UnitSize {
  const length = Math.max(one.dimension.length, other.dimension.length);
  const dimension = Array.from(
    { length },
    (_, at) => (one.dimension[at] ?? 0) + (other.dimension[at] ?? 0),
  );
  return { size: one.size * other.size, dimension };
}

/** How many of `other` one `unit` is; `undefined` where the two cannot be compared. */
export function factorBetween(unit: string, other: string): number | undefined {
  if (unit === other) return 1;
  const [from, to] = [unitSize(unit), unitSize(other)];
  if (from === undefined || to === undefined || from.size === 0 || to.size === 0) return undefined;
  const { dimension } = product(from, power(to, -1));
  return dimension.every((each) => each === 0) ? from.size / to.size : undefined;
}
