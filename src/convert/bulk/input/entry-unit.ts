import { fromJson } from '../../../fhir/json/from-json.ts';
import { hasErrors } from '../../../issues/issue.ts';
import { issue } from '../../issue.ts';
import { cellNotes, type RawUnit } from '../../record/record.ts';
import { decodeBytes } from './decode-unit.ts';
import type { Line } from './line-splitter.ts';

/** The unit that a line holds; `raw` is all that must be there. A line that is none is quarantined. */
export function entryUnit({ text: bytes, number, cut }: Line): RawUnit {
  const { text } = decodeBytes(bytes, 'utf-8');
  const at = { line: number };
  if (cut) {
    const found = issue('too-large', [], { reason: 'line' }, { source: at });
    return { raw: text, at, issues: [found] };
  }
  const { value, issues } = fromJson(text, { budget: { depth: 20 } });
  const unit = hasErrors(issues) ? undefined : asUnit(value, number);
  if (unit !== undefined) return unit;
  // A table's row without its columns would be told as one that has too many cells.
  const reason =
    isObject(value) && 'header' in value && typeof value['raw'] === 'string'
      ? 'header'
      : 'quarantine';
  const found = issue(
    'malformed-record',
    reason === 'header' ? ['header'] : [],
    { reason },
    {
      source: at,
    },
  );
  return { raw: text, at, issues: [found] };
}

function asUnit(value: unknown, number: number): RawUnit | undefined {
  if (!isObject(value)) return undefined;
  const { raw, at, header, lines, filled, notes } = value;
  if (typeof raw !== 'string') return undefined;
  if (header !== undefined && !isTexts(header)) return undefined;
  return {
    raw,
    at: placeOf(at, number),
    ...(isTexts(header) && { header }),
    ...(isNumbers(lines) && { lines }),
    ...(isFilled(filled) && { filled }),
    ...(areNotes(notes) && { notes }),
  };
}

/** The place in the input that the unit was cut from, or else the line that it stands in now. */
function placeOf(at: unknown, number: number): RawUnit['at'] {
  if (!isObject(at)) return { line: number };
  const { line, sheet } = at;
  const isLine = typeof line === 'number' && Number.isInteger(line) && line > 0;
  return { line: isLine ? line : number, ...(typeof sheet === 'string' && { sheet }) };
}

function isObject(value: unknown): value is { readonly [name: string]: unknown } {
  return typeof value === 'object' && value !== null;
}

function isTexts(value: unknown): value is string[] {
  return Array.isArray(value) && value.every((item) => typeof item === 'string');
}

function isNumbers(value: unknown): value is number[] {
  return Array.isArray(value) && value.every((item) => Number.isInteger(item));
}

/** For each row a list of objects of which a test holds. */
function areRows(
  value: unknown,
  isOne: (one: { readonly [name: string]: unknown }) => boolean,
): boolean {
  return (
    Array.isArray(value) &&
    value.every(
      (row) => Array.isArray(row) && row.every((one: unknown) => isObject(one) && isOne(one)),
    )
  );
}

function isFilled(value: unknown): value is NonNullable<RawUnit['filled']> {
  return areRows(
    value,
    ({ column, line, text, note }) =>
      Number.isInteger(column) &&
      Number.isInteger(line) &&
      typeof text === 'string' &&
      (note === undefined || isNote(note)),
  );
}

function areNotes(value: unknown): value is NonNullable<RawUnit['notes']> {
  return areRows(
    value,
    ({ column, of, note }) => Number.isInteger(column) && typeof of === 'string' && isNote(note),
  );
}

function isNote(note: unknown): boolean {
  return (cellNotes as readonly unknown[]).includes(note); // of any type, to be looked for
}
