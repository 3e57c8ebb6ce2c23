export { type CellCounter, createCellCounter, type SmallCell } from './cells.ts';
export { type DeidentifyOptions, deidentifiedLabels, deidentify } from './deidentify.ts';
