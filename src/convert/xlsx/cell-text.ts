import type { CellNote } from '../record/record.ts';
import type { NumberForm } from './number-format.ts';
import { elapsedTime, serialDate } from './serial-date.ts';

/** A cell as a sheet writes it. */
export interface WrittenCell {
  /** Attribute `t`: `s`, `str`, `inlineStr`, `b`, `e`, `d`, or a number. */
  readonly type: string;
  /** Undefined where there is no value, or an empty one of a number. */
  readonly value: string | undefined;
  readonly form: NumberForm;
  /** Undefined where the cell has no formula. */
  readonly formula: string | undefined;
}

export interface CellText {
  readonly text: string;
  readonly note?: CellNote;
}

/**
 * A cell as text, with what is to be known of it. Digits stay as they are stored, a number that a
 * spreadsheet writes with 17 digits is the one that it shows with 15.
 */
export function cellText(cell: WrittenCell, is1904: boolean): CellText {
  const { type, value, formula } = cell;
  if (value === undefined) {
    return formula === undefined ? { text: '' } : { text: `=${formula}`, note: 'no-result' };
  }
  const found = valueText(type, value, cell.form, is1904);
  if (found.note !== undefined || formula === undefined) return found;
  return { ...found, note: 'formula' };
}

function valueText(type: string, value: string, form: NumberForm, is1904: boolean): CellText {
  switch (type) {
    case 's':
    case 'str':
    case 'inlineStr':
    case 'd':
      return { text: value };
    case 'e':
      return { text: value, note: 'error-cell' };
    case 'b':
      return { text: value === '1' || value === 'true' ? 'TRUE' : 'FALSE' };
    default:
      return numberText(value.trim(), form, is1904);
  }
}

function numberText(stored: string, form: NumberForm, is1904: boolean): CellText {
  const number = Number(stored);
  if (!/^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,3})?$/.test(stored) || !Number.isFinite(number)) {
    return { text: stored, note: 'lost-digits' };
  }
  switch (form.form) {
    case 'date':
      return readOr(serialDate(number, form, is1904), stored);
    case 'elapsed':
      return readOr(elapsedTime(number), stored);
    default: {
      const text = decimal(stored, number);
      if (text === undefined) return { text: stored, note: 'lost-digits' };
      if (form.form === 'percent') return { text: `${hundredfold(text)}%` };
      const isWhole = /^\d+$/.test(text);
      return { text: form.form === 'digits' && isWhole ? text.padStart(form.least, '0') : text };
    }
  }
}

function readOr(text: string | undefined, stored: string): CellText {
  return text === undefined ? { text: stored, note: 'no-date' } : { text };
}

/** Without powers of ten; undefined for whole numbers of more digits than a spreadsheet keeps. */
function decimal(stored: string, number: number): string | undefined {
  if (Math.abs(number) >= 1e15) return undefined;
  const digits = stored.replace(/^[+-]?0*\.?0*/, '').replace('.', '');
  if (!/[eE]/.test(stored) && digits.length <= 15) return stored.replace(/^\+/, '');
  const shown = Number(number.toPrecision(15));
  const text = String(shown);
  return text.includes('e') ? shown.toFixed(20).replace(/0+$/, '').replace(/\.$/, '') : text;
}

/** A decimal with its mark moved by two places. */
function hundredfold(text: string): string {
  const [, sign = '', whole = '', part = ''] = /^(-?)(\d*)\.?(\d*)$/.exec(text) ?? [];
  const moved = `${whole}${part.padEnd(2, '0').slice(0, 2)}`.replace(/^0+(?=\d)/, '');
  const rest = part.slice(2);
  return `${sign}${moved === '' ? '0' : moved}${rest === '' ? '' : `.${rest}`}`;
}
