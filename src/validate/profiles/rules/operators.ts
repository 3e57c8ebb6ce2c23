import { bool, distinct, type Item, type Items, isEqual, isTime, one, Undecided } from './items.ts';

/** Operators of truth; the right side is asked only where it counts. */
export function logic(
  op: 'and' | 'or' | 'xor' | 'implies',
  left: boolean | undefined,
  rightOf: () => boolean | undefined,
): Items {
  if (op === 'and' && left === false) return bool(false);
  if (op === 'or' && left === true) return bool(true);
  if (op === 'implies' && left === false) return bool(true);
  const right = rightOf();
  if (op === 'and') return right === false ? bool(false) : known(left, right, left && right);
  if (op === 'or') return right === true ? bool(true) : known(left, right, left || right);
  if (op === 'implies') return right === true ? bool(true) : known(left, right, right);
  return known(left, right, left !== right);
}

function known(
  left: boolean | undefined,
  right: boolean | undefined,
  value: boolean | undefined,
): Items {
  return left === undefined || right === undefined || value === undefined ? [] : bool(value);
}

/** The other operators of FHIRPath, on both sides as evaluated. */
export function operator(op: string, left: Items, right: Items): Items {
  switch (op) {
    case '|':
      return distinct([...left, ...right]);
    case '=':
    case '!=': {
      if (left.length === 0 || right.length === 0) return [];
      return bool(sameLists(left, right) === (op === '='));
    }
    case '~':
    case '!~':
      return bool(alike(left, right) === (op === '~'));
    case 'in':
      return left.length === 0 ? [] : bool(right.some((each) => isEqual(each, one(left))));
    case 'contains':
      return right.length === 0 ? [] : bool(left.some((each) => isEqual(each, one(right))));
    case '&':
      return [{ value: textOrNone(left) + textOrNone(right) }];
    default:
      return left.length === 0 || right.length === 0 ? [] : arithmetic(op, one(left), one(right));
  }
}

function textOrNone(items: Items): string {
  if (items.length === 0) return '';
  const { value } = one(items);
  if (typeof value !== 'string') throw new Undecided('no text');
  return value;
}

function arithmetic(op: string, { value: a }: Item, { value: b }: Item): Items {
  if (typeof a === 'string' && typeof b === 'string') {
    if (op === '+') return [{ value: a + b }];
    return comparison(op, textOrder(a, b));
  }
  if (typeof a !== 'number' || typeof b !== 'number') throw new Undecided('no numbers');
  const result = arithmetics.get(op)?.(a, b);
  if (result === undefined) return comparison(op, a - b);
  return Number.isFinite(result) ? [{ value: result }] : [];
}

/** Division by nothing is empty. @see https://hl7.org/fhirpath/N1/#math-2 */
const arithmetics: ReadonlyMap<string, (a: number, b: number) => number> = new Map([
  ['+', (a: number, b: number) => a + b],
  ['-', (a: number, b: number) => a - b],
  ['*', (a: number, b: number) => a * b],
  ['/', (a: number, b: number) => a / b],
  ['mod', (a: number, b: number) => a % b],
  ['div', (a: number, b: number) => Math.trunc(a / b)],
]);

/** Dates that are told to different precision, or in different zones, are left to a whole engine. */
function textOrder(a: string, b: string): number {
  const years = /^\d{4}$/;
  const dates = (isTime(a) || years.test(a)) && (isTime(b) || years.test(b));
  if (dates && (a.length !== b.length || a.slice(19) !== b.slice(19))) {
    throw new Undecided('dates of different precision');
  }
  return a < b ? -1 : a > b ? 1 : 0;
}

function comparison(op: string, order: number): Items {
  if (op === '<') return bool(order < 0);
  if (op === '<=') return bool(order <= 0);
  if (op === '>') return bool(order > 0);
  if (op === '>=') return bool(order >= 0);
  throw new Undecided(op);
}

function sameLists(left: Items, right: Items): boolean {
  if (left.length !== right.length) return false;
  return left.every((each, at) => isEqual(each, right[at] ?? { value: undefined }));
}

function alike(left: Items, right: Items): boolean {
  if (left.length !== right.length) return false;
  const plain = (item: Item): Item =>
    typeof item.value === 'string' ? { value: item.value.trim().toLowerCase() } : item;
  return left.every((each) => right.some((other) => isEqual(plain(each), plain(other))));
}
