/** Why a text is not taken as a number. */
export type NumberProblem = 'not-a-number' | 'decimal-mark';

export type Comparator = '<' | '<=' | '>=' | '>';

export interface NumberText {
  /** In the form of a Decimal of the model: `.5` becomes `0.5`, `4,50` becomes `4.50`. */
  readonly value: string;
  readonly comparator?: Comparator;
  /** What stands behind the number, trimmed. */
  readonly suffix?: string;
}

const parts = /^(<=|>=|[<>≤≥])?\s*([+\-−]?)([\d.,]+)\s*([\p{L}%°'"].*)?$/su;
const comparators: ReadonlyMap<string, Comparator> = new Map([
  ['<', '<'],
  ['>', '>'],
  ['<=', '<='],
  ['>=', '>='],
  ['≤', '<='],
  ['≥', '>='],
]);

/**
 * The number that a text holds, or why it holds none. A number with the other decimal mark, with
 * marks for thousands or with leading zeros is refused: each has a second reading.
 */
export function readNumber(text: string, decimalMark: '.' | ','): NumberText | NumberProblem {
  const match = parts.exec(text.trim());
  if (match === null) return 'not-a-number';
  const [, comparator, sign, digits = '', suffix] = match;
  const other = decimalMark === '.' ? ',' : '.';
  if (digits.includes(other)) return 'decimal-mark';
  const [whole = '', fraction, ...more] = digits.split(decimalMark);
  if (more.length > 0) return 'decimal-mark';
  if (whole === '' && !fraction) return 'not-a-number';
  if (fraction === '' || /^0\d/.test(whole) || whole.length > 18 || (fraction ?? '').length > 17) {
    return 'not-a-number';
  }
  const negative = sign === '-' || sign === '−';
  const value = `${negative ? '-' : ''}${whole || '0'}${fraction === undefined ? '' : `.${fraction}`}`;
  const bound = comparator === undefined ? undefined : comparators.get(comparator);
  return {
    value,
    ...(bound !== undefined && { comparator: bound }),
    ...(suffix !== undefined && suffix.trim() !== '' && { suffix: suffix.trim() }),
  };
}
