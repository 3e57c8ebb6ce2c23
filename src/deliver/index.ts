export { type CutOptions, cutBundle } from './cut.ts';
