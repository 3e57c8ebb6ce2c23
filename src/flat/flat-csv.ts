import { type FlatRow, flatColumnNames } from './flat-row.ts';

/** First line of the table as CSV. */
export const flatHead = /*@__PURE__*/ `${flatColumnNames.join(',')}\r\n`;

/**
 * Writes a row as a line of CSV (RFC 4180, UTF-8, no byte order mark). A text that a spreadsheet could
 * take for a formula, since it begins with `=`, `+`, `-`, `@`, a tab or a line break, gets a `'` in
 * front, and so does one that begins with `'` itself; a plain decimal stays as it is. Taking one `'`
 * off the front of a cell gives the text back: see {@link fromFlatCell}.
 *
 * @param row From `toFlat`.
 * @returns The line with its end.
 * @example
 * const outcome = toFlat(exam);
 * if (outcome.ok) console.log(flatHead + outcome.value.map(flatLine).join(''));
 * @see https://www.rfc-editor.org/rfc/rfc4180
 */
export function flatLine(row: FlatRow): string {
  return `${flatColumnNames.map((name) => cell(row[name])).join(',')}\r\n`;
}

/**
 * Gives the text of a cell of {@link flatLine}, as a CSV parser read it.
 *
 * @param text The cell without the quotes of CSV.
 * @returns The text as it stands in the row.
 * @example
 * const note = fromFlatCell("'=1+1");
 */
export function fromFlatCell(text: string): string {
  return text.startsWith("'") ? text.slice(1) : text;
}

/** @see https://owasp.org/www-community/attacks/CSV_Injection */
function cell(text: string): string {
  const isFormula = /^[=+\-@\t\r\n']/.test(text) && !/^-?\d+(\.\d+)?$/.test(text);
  const safe = isFormula ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
