/** Parts of a date as read, as digits. */
export interface DateParts {
  readonly year?: string;
  /** Two digits of a year whose century is not written. */
  readonly shortYear?: string;
  readonly month?: string;
  readonly day?: string;
  readonly hour?: string;
  readonly minute?: string;
  /** With the fraction as written. */
  readonly second?: string;
  readonly zone?: string;
}

export interface DateFormat {
  readonly text: string;
  readonly read: (text: string) => DateParts | undefined;
  /** The same moment written in this form; used to find forms that can be mistaken for each other. */
  readonly write: (parts: Required<DateParts>) => string;
}

const monthNames: readonly string[] = [
  'jan',
  'feb',
  'mar',
  'apr',
  'may',
  'jun',
  'jul',
  'aug',
  'sep',
  'oct',
  'nov',
  'dec',
];

interface Token {
  readonly part: keyof DateParts;
  readonly pattern: string;
  /** Written without a leading zero. */
  readonly short?: true;
}

/** `M`, `D` and `H` take one digit or two; the doubled forms take two. */
const tokens: ReadonlyMap<string, Token> = new Map([
  ['YYYY', { part: 'year', pattern: '\\d{4}' }],
  ['YY', { part: 'shortYear', pattern: '\\d{2}' }],
  ['MMM', { part: 'month', pattern: '[A-Za-z]{3}' }],
  ['MM', { part: 'month', pattern: '\\d{2}' }],
  ['M', { part: 'month', pattern: '\\d{1,2}', short: true }],
  ['DD', { part: 'day', pattern: '\\d{2}' }],
  ['D', { part: 'day', pattern: '\\d{1,2}', short: true }],
  ['HH', { part: 'hour', pattern: '\\d{2}' }],
  ['H', { part: 'hour', pattern: '\\d{1,2}', short: true }],
  ['mm', { part: 'minute', pattern: '\\d{2}' }],
  ['ss', { part: 'second', pattern: '\\d{2}(?:\\.\\d{1,9})?' }],
  ['Z', { part: 'zone', pattern: 'Z|[+-]\\d{2}:?\\d{2}' }],
]);

const splitFormat = /YYYY|YY|MMM|MM|M|DD|D|HH|H|mm|ss|Z|[^A-Za-z]|T/g;

/** The form that a text such as `DD/MM/YYYY HH:mm` describes; undefined if it describes none. */
export function dateFormat(text: string): DateFormat | undefined {
  const pieces = text.match(splitFormat) ?? [];
  if (pieces.join('') !== text) return undefined;
  const used = pieces.flatMap((piece) => tokens.get(piece)?.part ?? []);
  if (new Set(used).size !== used.length || !isComplete(used)) return undefined;
  const pattern = pieces
    .map((piece) => {
      const token = tokens.get(piece);
      return token ? `(${token.pattern})` : piece.replace(/[\\^$.*+?()[\]{}|/-]/g, '\\$&');
    })
    .join('');
  const whole = new RegExp(`^${pattern}$`);
  return {
    text,
    read: (input) => {
      const match = whole.exec(input);
      if (match === null) return undefined;
      const found = Object.fromEntries(used.map((part, at) => [part, match[at + 1] ?? '']));
      return withMonthNumber(found);
    },
    write: (parts) => pieces.map((piece) => written(piece, parts)).join(''),
  };
}

/** A year must stand there, and each part needs the next larger one. */
function isComplete(used: readonly (keyof DateParts)[]): boolean {
  const has = (part: keyof DateParts): boolean => used.includes(part);
  if (has('year') === has('shortYear')) return false;
  const needs: readonly [keyof DateParts, keyof DateParts][] = [
    ['day', 'month'],
    ['hour', 'day'],
    ['hour', 'minute'],
    ['minute', 'hour'],
    ['second', 'minute'],
    ['zone', 'hour'],
  ];
  return needs.every(([part, larger]) => !has(part) || has(larger));
}

function withMonthNumber(parts: DateParts): DateParts | undefined {
  const name = parts.month;
  if (name === undefined || /^\d/.test(name)) return parts;
  const at = monthNames.indexOf(name.toLowerCase());
  return at < 0 ? undefined : { ...parts, month: String(at + 1).padStart(2, '0') };
}

function written(piece: string, parts: Required<DateParts>): string {
  const token = tokens.get(piece);
  if (token === undefined) return piece;
  if (piece === 'MMM') return monthNames[Number(parts.month) - 1] ?? '';
  return token.short ? String(Number(parts[token.part])) : parts[token.part];
}
