/** Rows and columns that a sheet can have: ECMA-376 leaves it open, spreadsheets have A1 to XFD1048576. */
export const MOST_ROWS = 1_048_576;
export const MOST_COLUMNS = 16_384;

/** Letters of a column, counted from 1: `AB` for 28. */
export function columnLetters(column: number): string {
  let letters = '';
  for (let rest = column; rest > 0; rest = Math.floor((rest - 1) / 26)) {
    letters = String.fromCharCode(65 + ((rest - 1) % 26)) + letters;
  }
  return letters;
}

/** Column and row of a cell such as `AB12`, both from 1; undefined for anything else. */
export function cellPlace(
  name: string,
): { readonly column: number; readonly row: number } | undefined {
  const found = /^([A-Z]{1,3})([1-9]\d{0,6})$/.exec(name);
  if (found === null) return undefined;
  const [, letters = '', digits] = found;
  const column = [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0);
  const row = Number(digits);
  return column <= MOST_COLUMNS && row <= MOST_ROWS ? { column, row } : undefined;
}
