export { flatHead, flatLine, fromFlatCell } from './flat-csv.ts';
export { type FlatColumn, type FlatRow, type FlatState, flatColumns } from './flat-row.ts';
export { type FlatOptions, toFlat } from './to-flat.ts';
