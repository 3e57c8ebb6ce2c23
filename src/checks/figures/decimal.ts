/**
 * A decimal number held exactly: `digits` times ten to the power of `-scale`. JavaScript numbers can
 * not hold 0.1, so a difference such as 6.5 - 6.4 would miss its threshold.
 */
export interface Exact {
  readonly digits: bigint;
  readonly scale: number;
}

const DECIMAL_FORM = /^-?\d{1,40}(\.\d{1,40})?$/;

/** The number that a decimal text stands for, with its precision; undefined when it is not a decimal. */
export function exact(text: string): Exact | undefined {
  if (!DECIMAL_FORM.test(text)) return undefined;
  const point = text.indexOf('.');
  if (point < 0) return { digits: BigInt(text), scale: 0 };
  return { digits: BigInt(text.replace('.', '')), scale: text.length - point - 1 };
}

/** A whole number. */
export function whole(value: number | bigint): Exact {
  return { digits: BigInt(value), scale: 0 };
}

export function add(a: Exact, b: Exact): Exact {
  const scale = Math.max(a.scale, b.scale);
  return { digits: digitsAt(a, scale) + digitsAt(b, scale), scale };
}

export function subtract(a: Exact, b: Exact): Exact {
  return add(a, { digits: -b.digits, scale: b.scale });
}

export function multiply(a: Exact, b: Exact): Exact {
  return { digits: a.digits * b.digits, scale: a.scale + b.scale };
}

export function absolute(a: Exact): Exact {
  return a.digits < 0n ? { digits: -a.digits, scale: a.scale } : a;
}

/** Negative when `a` is less than `b`, zero when they are equal, positive when it is more. */
export function compare(a: Exact, b: Exact): number {
  const difference = subtract(a, b).digits;
  if (difference === 0n) return 0;
  return difference < 0n ? -1 : 1;
}

/**
 * `a / b` rounded to `places` decimals, half to even; `exactly` says that nothing was rounded off.
 * Undefined for a division by zero.
 */
export function divide(
  a: Exact,
  b: Exact,
  places: number,
): { readonly value: Exact; readonly exactly: boolean } | undefined {
  if (b.digits === 0n) return undefined;
  const scale = Math.max(a.scale, b.scale);
  const top = digitsAt(a, scale) * 10n ** BigInt(places);
  const bottom = digitsAt(b, scale);
  const negative = top < 0n !== bottom < 0n;
  const over = top < 0n ? -top : top;
  const under = bottom < 0n ? -bottom : bottom;
  const rest = over % under;
  let digits = over / under;
  if (rest * 2n > under || (rest * 2n === under && digits % 2n === 1n)) digits += 1n;
  return { value: { digits: negative ? -digits : digits, scale: places }, exactly: rest === 0n };
}

/** Without zeros at the end of the fraction: 18.750 becomes 18.75. */
export function trimmed(a: Exact): Exact {
  let { digits, scale } = a;
  while (scale > 0 && digits % 10n === 0n) {
    digits /= 10n;
    scale -= 1;
  }
  return { digits, scale };
}

/** The number as text, with as many decimals as its precision asks. */
export function decimalText(a: Exact): string {
  if (a.scale <= 0) return String(a.digits * 10n ** BigInt(-a.scale));
  const negative = a.digits < 0n;
  const text = String(negative ? -a.digits : a.digits).padStart(a.scale + 1, '0');
  const point = text.length - a.scale;
  return `${negative ? '-' : ''}${text.slice(0, point)}.${text.slice(point)}`;
}

/** As {@link decimalText}, with a plus sign for a gain. */
export function signedText(a: Exact): string {
  return a.digits > 0n ? `+${decimalText(a)}` : decimalText(a);
}

function digitsAt(a: Exact, scale: number): bigint {
  return a.digits * 10n ** BigInt(scale - a.scale);
}
